"""Things kept in parts come back as they were, and only what changed is written again."""

import pytest

from underhoist.rebuild.parted import DamagedError, Index, Parted

NAMES = [f"jobs/{number}.md" for number in range(1_000)]


@pytest.fixture
def index(tmp_path):
    things = Parted(tmp_path, Index())
    for name in NAMES:
        things[name] = [name]
    return things.keep(tmp_path)


def test_all_comes_back_in_its_order(tmp_path, index):
    assert list(Parted(tmp_path, index).items()) == [(name, [name]) for name in NAMES]


def test_one_change_writes_one_part(tmp_path, index):
    things = Parted(tmp_path, index)
    things[NAMES[7]] = "another"
    after = things.keep(tmp_path)
    assert len(set(after.parts.values()) - set(index.parts.values())) == 1
    found = dict(Parted(tmp_path, after))
    assert found == {name: [name] for name in NAMES} | {NAMES[7]: "another"}


def test_what_was_taken_out_stays_out(tmp_path, index):
    things = Parted(tmp_path, index)
    assert things.pop(NAMES[7]) == [NAMES[7]]
    assert NAMES[7] not in things
    after = Parted(tmp_path, things.keep(tmp_path))
    assert list(after) == [name for name in NAMES if name != NAMES[7]]
    with pytest.raises(KeyError):
        after[NAMES[7]]


def test_names_are_kept_in_another_order(tmp_path, index):
    things = Parted(tmp_path, index)
    things.order(reversed(NAMES))
    assert list(Parted(tmp_path, things.keep(tmp_path))) == NAMES[::-1]


def test_only_what_is_asked_for_is_read(tmp_path, index):
    for name in set(index.parts.values()) - {index.parts[index.names[NAMES[0]]]}:
        (tmp_path / name).unlink()
    things = Parted(tmp_path, index)
    assert things[NAMES[0]] == [NAMES[0]]
    assert len(things) == len(NAMES)
    with pytest.raises(DamagedError):
        dict(things)
