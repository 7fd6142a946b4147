"""A seeded share of benchmarks/fuzz.py: changed manuals come to findings or to pages."""

import random

import pytest
from mutated import Tried

SHARE = 40


@pytest.fixture(scope="module")
def outcomes():
    """Any exception fails here, with the seed in its local names."""
    tried = Tried()
    return [tried.one(random.Random(seed)) for seed in range(SHARE)]  # noqa: S311


def test_each_is_stopped_or_becomes_a_site(outcomes):
    assert all((each.stops > 0) != (each.pages > 30) for each in outcomes)


def test_both_come_about(outcomes):
    stopped = sum(each.stops > 0 for each in outcomes)
    assert 8 < stopped < SHARE - 8


def test_no_page_keeps_the_reader_long(outcomes):
    """The benchmark holds 50 ms; here others may have the processor meanwhile."""
    assert max(each.seconds_to_read for each in outcomes) < 0.5
