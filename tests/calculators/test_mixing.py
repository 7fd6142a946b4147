"""Renewal of the fluid against published values (tests/published/fluid_renewal.json)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import bdtr
from underhoist_calculators import door
from underhoist_calculators.mixing import changes_for, new_share

SHARES = st.floats(0.02, 0.98)


@pytest.mark.parametrize("case", ["FV-35", "FV-36"])
def test_published_share(case, published):
    entries, expected, _ = published("fluid_renewal", case)
    found = new_share(entries["fraction_changed"], entries["changes"])
    assert found == pytest.approx(expected, rel=1e-12)


def test_published_share_of_real_volumes(published):
    entries, expected, _ = published("fluid_renewal", "FV-41")
    found = new_share(entries["drained"] / entries["total"], entries["changes"])
    assert found == pytest.approx(expected, rel=1e-12)


def test_published_number_of_changes(published):
    entries, expected, _ = published("fluid_renewal", "FV-40")
    assert changes_for(entries["fraction_changed"], entries["wanted_new_share"]) == expected


@pytest.mark.parametrize(
    ("changed", "wanted", "changes"),
    [
        (0.5, 0.75, 2),
        (0.5, 0.7501, 3),
        (0.5, 0.875, 3),
        (0.9, 0.5, 1),
        (1, 0.99, 1),
        (0.1, 0.19, 2),
    ],
)
def test_a_share_reached_exactly_needs_no_further_change(changed, wanted, changes):
    assert changes_for(changed, wanted) == changes


@pytest.mark.parametrize(("changed", "wanted"), [(0, 0.5), (1.1, 0.5), (0.5, 0), (0.5, 1)])
def test_shares_that_make_no_sense(changed, wanted):
    with pytest.raises(ValueError, match="The share changed must be above 0"):
        changes_for(changed, wanted)


@given(SHARES, st.integers(0, 20))
def test_agrees_with_the_binomial_law(changed, changes):
    # A drop of fluid stays old only if it is missed every time.
    assert new_share(changed, changes) == pytest.approx(1 - bdtr(0, changes, changed))


@given(SHARES, SHARES)
def test_enough_changes_and_not_one_too_many(changed, wanted):
    changes = changes_for(changed, wanted)
    assert new_share(changed, changes) >= wanted - 1e-9
    assert changes == 1 or new_share(changed, changes - 1) < wanted + 1e-9


@given(SHARES, st.integers(1, 15))
def test_the_inverse_of_the_inverse(changed, changes):
    wanted = new_share(changed, changes)
    if wanted < 1 - 1e-6:
        assert changes_for(changed, wanted) == changes


@given(SHARES, st.integers(1, 19), st.floats(0.001, 0.01))
def test_more_is_never_less(changed, changes, more):
    assert new_share(changed, changes) < new_share(changed, changes + 1) or changed > 0.8
    assert new_share(changed, changes) <= new_share(changed + more, changes)


def run(**entries):
    return door.run("renewal", {"drained": "4.2 L", "dry-fill": "8.6 L", **entries})


def test_the_table_goes_one_change_further():
    rows = run(wanted="90 %")["answer"]["tables"][0]["rows"]
    assert rows[0] == ["1 change", "49 %", "4.2 L"]
    assert rows[-1] == ["5 changes", "96 %", "21.0 L"]


def test_the_table_ends_with_what_is_allowed():
    assert len(run(changes="20")["answer"]["tables"][0]["rows"]) == 20


def test_one_change_is_one_change():
    answer = run(changes="1")["answer"]
    assert answer["summary"] == "1 change makes 49 % new, with 4.2 L of fluid."
    assert answer["warnings"] == []


def test_much_fluid_for_little_is_warned_of():
    assert run(wanted="95 %")["answer"]["warnings"] == [
        "This uses 2.4 times what the unit holds. Draining the converter as well takes fewer "
        "changes."
    ]


def test_twice_what_the_unit_holds_is_not_warned_of():
    assert run(drained="4.3 L", changes="4")["answer"]["warnings"] == []


def test_a_unit_that_is_emptied():
    answer = run(drained="8.6 L", wanted="95 %")["answer"]
    assert answer["values"]["changes"]["value"] == 1
    assert answer["summary"].startswith("1 change makes 100 % new")


@pytest.mark.parametrize(
    ("entries", "field", "wrong"),
    [
        ({}, "wanted", "Neither a wanted share nor a number of changes is written."),
        ({"wanted": "90 %", "changes": "3"}, "changes",
         "A wanted share and a number of changes are both written."),
        ({"changes": "2.5"}, "changes", "2.5 is not a whole number."),
        ({"wanted": "99 %", "drained": "0.5 L"}, "wanted", "99 % would take 77 changes."),
        ({"changes": "1", "drained": "8.7 L"}, "drained",
         "8.7 L is more than the whole unit holds, 8.6 L."),
    ],
)  # fmt: skip
def test_refused(entries, field, wrong):
    errors = run(**entries)["errors"]
    assert set(errors) == {field}
    assert errors[field]["wrong"] == wrong


def test_a_share_without_a_sign_is_a_plain_ratio():
    assert run(wanted="0.9")["answer"]["values"]["changes"]["value"] == 4


def test_published_drain_of_more_than_the_total_is_refused(published):
    entries, expected, _ = published("fluid_expansion", "FV-42")
    assert expected == "error: drained volume exceeds total"
    told = {
        "drained": f"{entries['drained']} L",
        "dry-fill": f"{entries['total']} L",
        "changes": str(entries["changes"]),
    }
    assert list(door.run("renewal", told)["errors"]) == ["drained"]
