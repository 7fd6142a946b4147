"""Work that is divided among processes comes to what it comes to in one."""

import os
from pathlib import Path
from threading import Event, Thread

import pytest
from in_parts import THINGS, apart, found, killed, shared_out, who, without_room, wrong

from underhoist.check import check
from underhoist.divided import THREADS, divided

BAD = Path(__file__).parent / "bad"

doubles = pytest.mark.skipif(
    not THREADS.exists() or (os.process_cpu_count() or 1) < 2, reason="one process does it all"
)


def things(did):
    return [thing for _, part in did for thing in part]


@pytest.mark.parametrize("least", [1, 3, 5, 6, 100])
def test_each_thing_is_in_one_part_and_they_keep_their_order(least):
    did = divided(who, THINGS, least)
    assert things(did) == list(THINGS)
    assert len(did) == 1 or all(len(part) >= least for _, part in did)


def test_nothing_is_one_part():
    assert divided(list, ()) == [[]]


@doubles
def test_the_parts_are_done_by_as_many_processes():
    own, did = apart(shared_out)
    processes = [process for process, _ in did]
    assert processes[0] == own
    assert len(set(processes)) == len(processes) > 1
    assert things(did) == list(THINGS)


def test_few_things_are_done_in_this_process():
    assert divided(who, THINGS) == [who(THINGS)]


def test_a_process_with_threads_is_not_doubled():
    done = Event()
    thread = Thread(target=done.wait)
    thread.start()
    try:
        assert divided(who, THINGS, 1) == [who(THINGS)]
    finally:
        done.set()
        thread.join()


@doubles
@pytest.mark.parametrize("mishap", [killed, without_room])
def test_what_a_double_did_not_make_is_made_here(mishap):
    own, did = apart(mishap)
    assert len(did) > 1
    assert {process for process, _ in did} == {own}
    assert things(did) == list(THINGS)


def test_an_error_is_raised_here_as_it_was():
    with pytest.raises(ValueError):
        apart(wrong)


@pytest.mark.parametrize("folder", ["many-at-once", "misspelt-links"])
def test_the_rules_find_the_same_in_parts(folder):
    assert apart(found, BAD / folder) == check(BAD / folder).findings
