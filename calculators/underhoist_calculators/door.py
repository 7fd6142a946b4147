"""The one door to every calculator: texts in, plain data, HTML and text out.

The command line, the build and the browser worker all come through here.
"""

from collections.abc import Mapping
from typing import Any, cast

from attrs import asdict, frozen

from underhoist_calculators import html, text
from underhoist_calculators.answer import Answer
from underhoist_calculators.declare import Calculator
from underhoist_calculators.entries import Errors, Wrong, example_entries, read_entries, text_of
from underhoist_calculators.inputs import EntryError
from underhoist_calculators.shelf import get


@frozen
class Outcome:
    """What one run came to: an answer, or what is wrong with which entries."""

    calculator: Calculator
    entries: Mapping[str, str]
    answer: Answer | None
    errors: Errors


def work(name: str, entries: Mapping[str, str]) -> Outcome:
    """Run a calculator; raises `NoSuchCalculatorError`, and nothing for bad entries."""
    calculator = get(name)
    inputs, errors = read_entries(calculator, entries)
    if errors:
        return Outcome(calculator, entries, None, errors)
    try:
        return Outcome(calculator, entries, calculator.run(inputs), {})
    except EntryError as error:
        field = calculator.field(error.field)
        written = text_of(field, entries) if field else ""
        wrong = {error.field: Wrong(written, error.wrong, error.mend)}
        return Outcome(calculator, entries, None, wrong)


def run(name: str, entries: Mapping[str, str]) -> dict[str, Any]:
    """Run a calculator and give plain data: ok, errors, answer, answer_html, answer_text.

    `entries` maps field names to texts, and `<field>.unit` to the unit chosen for a bare number.
    """
    outcome = work(name, entries)
    return {
        "ok": outcome.answer is not None,
        "errors": {field: asdict(wrong) for field, wrong in outcome.errors.items()},
        "answer": _plain(asdict(outcome.answer)) if outcome.answer else None,
        "answer_html": html.answer(outcome.calculator, outcome.answer, outcome.errors),
        "answer_text": text.answer(outcome.calculator, outcome.answer, outcome.errors),
    }


def describe(name: str) -> dict[str, Any]:
    """Give the declaration of a calculator as plain data, for lists and help."""
    calculator = get(name)
    kept = asdict(calculator, filter=lambda attribute, _: attribute.name != "run")
    return {**_plain(kept), "example": example(name)}


def _plain(value: Any) -> Any:  # noqa: ANN401 - any nesting of plain data
    """Turn tuples into lists, as JSON and the browser know them."""
    if isinstance(value, Mapping):
        pairs = cast("Mapping[str, Any]", value)
        return {key: _plain(inner) for key, inner in pairs.items()}
    if isinstance(value, tuple):
        return [_plain(inner) for inner in cast("tuple[Any, ...]", value)]
    return value


def example(name: str) -> dict[str, str]:
    """Give the entries of the worked example that an empty form shows."""
    return example_entries(get(name))


def form(name: str, entries: Mapping[str, str] | None = None) -> str:
    """Give the form of a calculator, filled with the entries or with its example."""
    return html.form(get(name), entries)
