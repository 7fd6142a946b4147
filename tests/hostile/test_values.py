"""Any text as a quantity, a range or a tyre's size: its value, or a clear error; never a guess."""

import math
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tries import tries
from underhoist_calculators import all_calculators, door
from underhoist_calculators.tyre import read_tyre
from underhoist_calculators.units import (
    KINDS,
    UnitError,
    kind_of,
    read_quantity,
    read_span,
    show,
    units_of,
)

from underhoist.labels.address import base_address
from underhoist.project import Unusable

CODES = {
    "not-a-number", "unit-missing", "unit-unknown", "unit-ambiguous", "unit-wrong-kind",
    "impossible-range",
}  # fmt: skip
PIECES = (
    *"0123459.,/+-−–' \"%°eExX", "12", "1 1/2", "½", "⅟", "２", "٣", "𝟙", "²", "₂", "①", "Ⅻ", "1e5",
    "1e-3", "1e999", "9" * 400, "0" * 300, "nan", "NaN", "inf", "Infinity", "0x10", "1_000", " to ",
    "\u2009", "\u200b", "\u202e", "\x00", "\u0660", "lbf·ft", "lbf ft", "ft-lb", "in lb", "in. lb.",
    "inch pounds", "N·m", "N•m", "Nm", "kg/cm²", "qt", "qt US", "psi", "inHg", "°C", "degF", "mm",
    "μm", "µm", "in", "ｍｍ", "mс", "K", "\u212a", "turns", "km/h", "205/70 R 14", "31x10.5 R 15",
)  # fmt: skip
TEXTS = st.lists(st.sampled_from(PIECES), max_size=7).map("".join) | st.text(max_size=40)
NUMBERS = st.decimals(-1000, 1000, places=3).map(lambda number: f"{number:f}")
KIND = st.sampled_from([None, *KINDS])


def told(error):
    """Whether the error says what is wrong and how to mend it, in sentences."""
    assert error.code in CODES
    assert error.wrong.endswith(".") and len(error.wrong) < 300
    assert error.mend.startswith("Write ") and error.mend.endswith((".", "?"))
    assert "nan" not in error.mend.casefold().split()


def plain_number(text):
    """The number of a text without fraction and power, by its digits alone; else None."""
    if set("/eE") & set(text) or any("<fraction>" in unicodedata.decomposition(c) for c in text):
        return None
    kept = "".join(
        str(unicodedata.decimal(c)) if c.isdecimal() else "." * (c == ".") for c in text.strip()
    )
    try:
        return float(kept.rstrip("."))
    except ValueError:
        return None


@tries(500)
@given(TEXTS, KIND)
def test_a_quantity_or_an_error(text, kind):
    try:
        found = read_quantity(text, kind)
    except UnitError as error:
        told(error)
        return
    assert math.isfinite(found.magnitude)
    number = plain_number(text)
    assert number is None or abs(found.magnitude) == pytest.approx(number)


@tries(300)
@given(TEXTS, KIND)
def test_a_range_or_an_error(text, kind):
    try:
        found = read_span(text, kind)
    except UnitError as error:
        told(error)
        return
    assert math.isfinite(found.low.magnitude) and math.isfinite(found.high.magnitude)
    assert found.low <= found.high


@tries(300)
@given(NUMBERS, st.sampled_from(sorted(KINDS)), st.data())
def test_what_is_written_comes_back(number, kind, data):
    unit = data.draw(st.sampled_from(list(units_of(kind))))
    found = read_quantity(f"{number} {unit.symbol}", kind)
    assert found.magnitude == pytest.approx(float(number), abs=1e-12)
    assert kind_of(read_quantity(show(found), kind)) == kind_of(found)


@tries(300)
@given(TEXTS | st.tuples(*[st.sampled_from(PIECES)] * 5).map(" ".join))
def test_a_tyre_or_an_error(text):
    try:
        tyre = read_tyre(text)
    except UnitError as error:
        told(error)
        return
    assert 1.2 <= tyre.circumference.m_as("metre") <= 4


RAISED = "A number is written with plain digits, neither raised, lowered nor in a circle."


@pytest.mark.parametrize("text", ["10² mm", "2³ N·m", "1₂ mm", "①", "1① turns", "1⁻³ mm", "² N·m"])
def test_a_raised_digit_is_no_digit(text):
    for read in (read_quantity, read_span):
        with pytest.raises(UnitError) as caught:
            read(text)
        assert caught.value.wrong == RAISED


def test_a_raised_digit_of_a_unit_is_one():
    assert show(read_quantity("2 kg/cm²", "pressure")) == "2 kgf/cm²"


@pytest.mark.parametrize("text", ["9 N·m" + " " * 200 + "or 12 N·m", "0" * 300 + "5", "1" * 201])
def test_nothing_is_cut_off_a_long_text(text):
    with pytest.raises(UnitError) as caught:
        read_quantity(text)
    assert caught.value.wrong == "This is too long for a quantity."


NAMES = [calculator.name for calculator in all_calculators()]


@tries(150)
@given(st.sampled_from(NAMES), st.data())
def test_any_entries_of_a_calculator_come_to_an_answer_or_errors(name, data):
    """What an address can hold: some fields and units of the form, some of none, any text."""
    known = list(door.example(name))
    field = st.sampled_from([*known, *(f"{each}.unit" for each in known), "__proto__", ""])
    entries = data.draw(st.dictionaries(field, TEXTS, max_size=4))
    result = door.run(name, {**door.example(name), **entries})
    assert result["ok"] != bool(result["errors"])
    for error in result["errors"].values():
        assert error["wrong"].endswith(".") and error["mend"].endswith(".")
    assert not {"nan", "inf", "-inf", "Traceback"} & set(result["answer_text"].split())
    assert "<script" not in result["answer_html"]


ADDRESSES = st.lists(
    st.sampled_from([
        "https://", "http://", "HTTPS://", "javascript:", "java\tscript:", "//", "manual", ".", "/",
        "example.org", "localhost", "127.0.0.1", "[::1]", "[", "]", "@", ":", ":99999", "?", "#",
        "..", " ", "\n", "\\", "ex\u0430mple", "\u202e", "%00",
    ]),
    max_size=6,
).map("".join)  # fmt: skip


@tries(300)
@given(ADDRESSES | st.text(max_size=30))
def test_a_label_leads_to_a_sound_address_or_none(text):
    try:
        address = base_address(text)
    except Unusable as error:
        assert str(error).endswith(".")
        return
    assert address.startswith("https://") and address.endswith("/")
    assert address.isprintable() and not set(' "<>\\') & set(address)
