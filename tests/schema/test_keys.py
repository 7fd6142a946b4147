"""Model, schema and the page of keys stay in step: each key of each class stands in all three."""

import re
from collections.abc import Mapping
from html import unescape
from pathlib import Path
from types import UnionType
from typing import Annotated, Union, get_args, get_origin

import attrs
import pytest
from underhoist_calculators.units import KINDS as QUANTITIES
from underhoist_calculators.units import Quantity

from underhoist.check import check
from underhoist.model import values
from underhoist.pages import make_site
from underhoist.pages.front_matter import front_matter_sheets
from underhoist.place import Place
from underhoist.schema import Keys, Many, One, at, form_of, json_schema, keys_of
from underhoist.schema.forms import EXAMPLES
from underhoist.source import KINDS
from underhoist.source.nodes import Scalar
from underhoist.source.scalars import placed_reader
from underhoist.source.structure import GIVEN

SMALLEST = Path(__file__).parents[1] / "good" / "smallest"
MARKED = [
    kind for name, kind in vars(values).items()
    if name[0].isupper() and hasattr(kind, "__metadata__")
]  # fmt: skip


def classes(kind):
    """Every attrs class that the front matter of a kind is made of, found without the tree."""
    if attrs.has(kind):
        if kind.__module__ in (values.__name__, Place.__module__):
            return
        yield kind
        for each in attrs.fields(kind):
            if each.name not in GIVEN:
                yield from classes(each.type)
    elif get_origin(kind) in (Union, UnionType, tuple, Mapping) or get_args(kind):
        for each in get_args(kind):
            yield from classes(each)


def names(kind):
    return {each.name for each in attrs.fields(kind) if each.name not in GIVEN}


def schema_names(schema):
    """Every property of a schema, at any depth."""
    if isinstance(schema, dict):
        yield from schema.get("properties", {})
        for each in schema.values():
            yield from schema_names(each)
    elif isinstance(schema, list):
        for each in schema:
            yield from schema_names(each)


@pytest.fixture(scope="module")
def pages():
    site = make_site(check(SMALLEST).manual, SMALLEST, name="A", demo=False)
    return {each.address.split("/")[-2]: str(each.html) for each in front_matter_sheets(site)}


@pytest.mark.parametrize("kind", KINDS)
def test_every_key_of_the_model_is_in_the_schema_and_on_the_page(kind, pages):
    wanted = {name for each in classes(KINDS[kind]) for name in names(each)}
    assert "title" in wanted
    assert set(schema_names(json_schema()["definitions"][kind])) == wanted | {"kind"}
    paths = re.findall(r'<th scope="row"><code>(.*?)</code>', pages[kind])
    assert {path.split(" › ")[-1] for path in map(unescape, paths)} == wanted | {"kind"}


@pytest.mark.parametrize("kind", KINDS)
def test_every_help_text_stands_in_the_schema_and_on_the_page(kind, pages):
    schema = json_schema()["definitions"][kind]["properties"]
    for attribute in attrs.fields(KINDS[kind]):
        if attribute.name not in GIVEN:
            assert schema[attribute.name]["description"] == attribute.metadata["help"]
            assert attribute.metadata["help"] in unescape(pages[kind])


@pytest.mark.parametrize("kind", KINDS)
def test_a_key_is_needed_where_the_model_has_no_default(kind):
    needed = {each.name for each in attrs.fields(KINDS[kind]) if each.default is attrs.NOTHING}
    assert {key.name for key in keys_of(kind).keys if key.needed} == (needed - set(GIVEN)) | {
        "kind"
    }


@pytest.mark.parametrize("kind", MARKED, ids=str)
def test_every_example_is_read_by_the_model_s_own_reader(kind):
    example = form_of(kind).example
    if example:
        assert (
            placed_reader(kind)(Scalar(example, Place("a.md", 1, 1), "a"), None).written == example
        )
    else:
        assert kind in (
            *(values.Id, values.IdPath, values.ShiftName, values.WordName),
            *(values.CalculatorName, values.PatternName, values.ReadingName),
        )


def test_a_kind_of_quantity_without_usual_figures_has_an_example_of_its_first_unit():
    kind = Annotated[Quantity, values.Measure("mass")]
    example = form_of(kind).example
    assert "mass" not in EXAMPLES
    assert placed_reader(kind)(Scalar(example, Place("a.md", 1, 1), "a"), None).written == "1 kg"


def test_the_usual_figures_are_of_kinds_that_there_are():
    assert EXAMPLES.keys() - {None} <= QUANTITIES


def test_a_type_without_a_mark_is_refused():
    with pytest.raises(TypeError, match="no form for"):
        form_of(dict)


def test_a_path_leads_through_lists_and_chosen_names():
    family = keys_of("unit-family")
    assert isinstance(at(family, ["fluid", "level"]), Keys)
    assert isinstance(at(family, ["fasteners", "any-name", "torque"]), One)
    assert isinstance(at(family, ["parts", "seal", "variants", "measures", "bore"]), One)
    assert isinstance(at(family, ["parts", "seal", "variants"]), Many)
    assert at(family, ["fluid", "levle"]) is None
    assert at(family, ["title", "deeper"]) is None


def test_there_is_no_other_kind():
    with pytest.raises(KeyError):
        keys_of("proceedure")
