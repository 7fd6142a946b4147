"""Forms and answers as HTML, made at build time and again in the browser, always escaped."""

from collections.abc import Iterable, Mapping
from html import escape
from itertools import groupby

from attrs import frozen

from underhoist_calculators.answer import Answer, Plate, Table, Working
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.entries import Errors, Wrong, example_entries, split_unit, text_of
from underhoist_calculators.units import unit_named, unit_symbol, unit_words
from underhoist_calculators.unrounded import unrounded

ACROSS = 36
"""Characters of a table that fit across a phone of 360 px."""

GAP = 2
"""Characters that the space between two columns takes."""


@frozen
class Filling:
    """What stands in the fields, and whether it is only the worked example."""

    entries: Mapping[str, str]
    is_example: bool


def form(calculator: Calculator, entries: Mapping[str, str] | None = None) -> str:
    """Write the form, filled with `entries` or with the worked example."""
    is_example = entries is None
    filling = Filling(example_entries(calculator) if entries is None else entries, is_example)
    groups = groupby(calculator.fields, key=lambda field: field.group)
    body = "".join(
        (_folded if title in calculator.folded else _group)(title, tuple(fields), filling)
        for title, fields in groups
    )
    name = escape(calculator.name)
    return (
        f'<form class="uh-calc" data-calculator="{name}" novalidate>{body}'
        '<button class="uh-button" type="submit">Work it out</button></form>'
    )


def answer(calculator: Calculator, given: Answer | None, errors: Errors) -> str:
    """Write the answer, or which entries to mend first."""
    inside = _answer(calculator, given) if given else _to_mend(calculator, errors)
    return (
        '<section class="uh-answer" aria-live="polite" aria-label="Answer">' + inside + "</section>"
    )


def _folded(title: str, fields: tuple[Field, ...], filling: Filling) -> str:
    """Put a group away under a line that says what it holds."""
    holds = " ".join(_held(field, filling) for field in fields)
    inside = "".join(_field(field, filling) for field in fields)
    return (
        f'<details class="uh-more uh-more--given"><summary>{escape(title)}: '
        f'<span class="uh-more__holds">{holds}</span></summary>{inside}</details>'
    )


def _held(field: Field, filling: Filling) -> str:
    """Write one field's label and value; the style hides it, comma and all, while it is empty."""
    typed = text_of(field, filling.entries)
    shown = next((choice.label for choice in field.choices if choice.name == typed), typed)
    label = f"{field.label[0].lower()}{field.label[1:]}"
    value = f'<span data-value-of="{escape(field.name)}">{escape(shown)}</span>'
    return f'<span class="uh-more__hold">{escape(label)} {value}</span>'


def _group(title: str, fields: tuple[Field, ...], filling: Filling) -> str:
    """Write one group; rows with nothing in them are put away in a details element."""
    shown: list[str] = []
    put_away: list[str] = []
    for row, members in groupby(fields, key=lambda field: field.row or field.name):
        row_fields = tuple(members)
        inside = "".join(_field(field, filling) for field in row_fields)
        if row_fields[0].row is None:
            shown.append(inside)
            continue
        css = "uh-fieldset uh-fieldset--row"
        whole = f'<fieldset class="{css}"><legend>{escape(row)}</legend>{inside}</fieldset>'
        filled = any(text_of(field, filling.entries) for field in row_fields)
        (shown if filled else put_away).append(whole)
    return (
        f'<fieldset class="uh-fieldset"><legend>{escape(title)}</legend>'
        f"{''.join(shown)}{_others(title, put_away)}</fieldset>"
    )


def _others(title: str, rows: Iterable[str]) -> str:
    """Put away the rows that hold nothing."""
    inside = "".join(rows)
    summary = f"<summary>{escape(title)}: the others</summary>"
    return f'<details class="uh-more">{summary}{inside}</details>' if inside else ""


def _field(field: Field, filling: Filling) -> str:
    """Write one field: label, entry, unit, help and the place for what is wrong."""
    name = escape(field.name)
    known = field.required or field.row is not None
    optional = "" if known else ' <span class="uh-field__optional">if known</span>'
    return (
        f'<div class="uh-field"><label for="{name}">{escape(field.label)}{optional}</label>'
        f'<div class="uh-field__entry">{_entry(field, filling)}</div>'
        f'<p class="uh-field__help" id="{name}-help">{escape(field.help)}</p>'
        f'<p class="uh-field__error" id="{name}-error"></p></div>'
    )


def _entry(field: Field, filling: Filling) -> str:
    """Write the control itself, with a list of units where there is a choice."""
    name, typed = escape(field.name), text_of(field, filling.entries)
    marked = " data-example" if filling.is_example and field.example else ""
    common = f'name="{name}" id="{name}" aria-describedby="{name}-help {name}-error"{marked}'
    if field.choices:
        options = "".join(
            _option(choice.name, choice.label, choice.name == typed) for choice in field.choices
        )
        blank = "" if field.required else _option("", "Not known", not typed)
        return f"<select {common}>{blank}{options}</select>"
    number, unit = split_unit(field, typed)
    keyboard = "decimal" if field.units and not field.span and not field.words else "text"
    control = (
        f'<input type="text" {common} value="{escape(number)}" '
        f'inputmode="{keyboard}" autocomplete="off">'
    )
    return control + _units(field, unit)


def _units(field: Field, chosen: str) -> str:
    """Write the list of units, each in full."""
    if not field.units:
        return ""
    options = "".join(
        _option(unit_symbol(unit), _unit_label(field, unit), unit == chosen) for unit in field.units
    )
    label = escape(f"Unit of {field.label[0].lower()}{field.label[1:]}")
    return f'<select name="{escape(field.name)}.unit" aria-label="{label}">{options}</select>'


def _unit_label(field: Field, unit: str) -> str:
    """Write the unit in full with its symbol; in a row of many fields only the symbol."""
    named = unit_named(unit)
    symbol, words = unit_symbol(unit), unit_words(unit)
    if field.row is not None:
        return symbol
    return words if named is None or symbol in {words, named.one} else f"{words} ({symbol})"


def _option(value: str, label: str, chosen: bool) -> str:
    selected = " selected" if chosen else ""
    return f'<option value="{escape(value)}"{selected}>{escape(label)}</option>'


def _answer(calculator: Calculator, given: Answer) -> str:
    parts = (
        f'<p class="uh-answer__summary">{escape(given.summary)}</p>',
        "".join(_plate(plate) for plate in given.plates),
        "".join(f'<p class="uh-warn">{escape(warning)}</p>' for warning in given.warnings),
        f'<figure class="uh-plot">{given.picture}</figure>' if given.picture else "",
        _list("uh-do", "What to do", given.do, ordered=True),
        "".join(_table(table) for table in given.tables),
        _working(given.working),
        _list("uh-sources", "Sources", calculator.sources),
        _list("uh-limits", "Limits", calculator.limits),
    )
    return "".join(parts)


def _plate(plate: Plate) -> str:
    others = "".join(f"<li>{escape(other)}</li>" for other in plate.others)
    number = f'<data class="uh-plate__number" value="{plate.exact.value!r}">{escape(plate.number)}'
    parts = (
        f'<span class="uh-plate__name">{escape(plate.name)}</span>',
        f'{number}</data><span class="uh-plate__unit">{escape(plate.unit)}</span>',
        f'<ul class="uh-plate__others">{others}</ul>' if others else "",
        f'<p class="uh-plate__note">{escape(plate.note)}</p>' if plate.note else "",
        _exact(plate),
    )
    return f'<figure class="uh-plate">{"".join(parts)}</figure>'


def _exact(plate: Plate) -> str:
    """Put the unrounded values one tap away, with or without a script."""
    items = "".join(f"<li>{escape(each)}</li>" for each in unrounded(plate))
    summary = "<summary>Exact value</summary>"
    return f'<details class="uh-plate__exact">{summary}<ul>{items}</ul></details>' if items else ""


def _table(table: Table) -> str:
    """Write the table; one that fits across a phone stays a table there."""
    heads = "".join(f'<th scope="col">{escape(head)}</th>' for head in table.heads)
    rows = "".join(f"<tr>{_cells(table.heads, row)}</tr>" for row in table.rows)
    css = "uh-table uh-table--narrow" if _is_narrow(table) else "uh-table"
    return (
        f'<table class="{css}"><caption>{escape(table.title)}</caption>'
        f"<thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"
    )


def _is_narrow(table: Table) -> bool:
    """Say whether the columns fit side by side at 360 px; headings may break between words."""
    columns = zip(*(map(len, row) for row in table.rows), strict=True)
    longest = (max(map(len, head.split())) for head in table.heads)
    widths = [max(word, *cells) for word, cells in zip(longest, columns, strict=True)]
    return sum(widths) + GAP * (len(widths) - 1) <= ACROSS


def _cells(heads: Iterable[str], row: Iterable[str]) -> str:
    return "".join(
        f'<td data-label="{escape(head)}">{escape(cell)}</td>'
        for head, cell in zip(heads, row, strict=True)
    )


def _working(lines: tuple[Working, ...]) -> str:
    """Write the working as a handbook does: formula, numbers put in, result."""
    if not lines:
        return ""
    items = "".join(
        f'<li><p class="uh-working__what">{escape(line.what)}</p>'
        f'<p class="uh-working__formula">{escape(line.formula)}</p>'
        f'<p class="uh-working__numbers">= {escape(line.numbers)}</p>'
        f'<p class="uh-working__result">= {escape(line.result)}</p></li>'
        for line in lines
    )
    return f'<section><h2>Working</h2><ol class="uh-working">{items}</ol></section>'


def _list(css: str, title: str, items: Iterable[str], *, ordered: bool = False) -> str:
    """Write a titled list, or nothing where there are no items."""
    inside = "".join(f"<li>{escape(item)}</li>" for item in items)
    kind = "ol" if ordered else "ul"
    return (
        f'<section class="{css}"><h2>{title}</h2><{kind}>{inside}</{kind}></section>'
        if inside
        else ""
    )


def _to_mend(calculator: Calculator, errors: Errors) -> str:
    """List what is wrong, each linked to its field."""
    items = "".join(f"<li>{_mend(calculator, name, wrong)}</li>" for name, wrong in errors.items())
    return (
        '<p class="uh-answer__summary">No answer yet. Mend these entries first.</p>'
        f'<ul class="uh-answer__mend">{items}</ul>'
    )


def _mend(calculator: Calculator, name: str, wrong: Wrong) -> str:
    field = calculator.field(name)
    said = escape(f"{wrong.wrong} {wrong.mend}")
    return f'<a href="#{escape(name)}">{escape(field.label)}</a>: {said}' if field else said
