"""Python looks for garbage again after such work, and not within it."""

import gc

import pytest

from underhoist.uncollected import uncollected


@pytest.fixture(autouse=True)
def thawed():
    """What a test froze is looked at again by those that follow."""
    yield
    gc.unfreeze()


def test_nobody_looks_within_or_at_what_was_made_there():
    with uncollected():
        assert not gc.isenabled()
        made = [[] for _ in range(100)]
    assert gc.isenabled()
    assert gc.get_freeze_count() > len(made)


def test_it_stays_off_where_it_was_off():
    gc.disable()
    try:
        with uncollected():
            pass
        assert not gc.isenabled()
    finally:
        gc.enable()


def test_it_is_on_again_after_a_failure():
    with pytest.raises(KeyError), uncollected():
        raise KeyError
    assert gc.isenabled()
