"""The schema is one by its meta-schema, takes every good page and refuses bad ones."""

from pathlib import Path

import pytest
import yaml
from jsonschema import Draft7Validator

from underhoist.check import check
from underhoist.schema import json_schema, known_ids

ROOT = Path(__file__).parents[2]
DEMO = ROOT / "procedures"
GOOD = [DEMO, ROOT / "tests/good/smallest", ROOT / "tests/good/two-families"]
TEMPLATE = ROOT / "src/underhoist/start/template/procedures"


def front(path):
    """The front matter as an editor's YAML reader sees it: numbers are numbers."""
    return yaml.safe_load(path.read_text(encoding="utf-8-sig").split("---\n")[1])


def errors(schema, page):
    return [error.message for error in Draft7Validator(schema).iter_errors(page)]


@pytest.fixture(scope="module")
def known():
    return known_ids(check(DEMO).manual)


@pytest.mark.parametrize("with_ids", [False, True])
def test_it_is_a_schema_by_its_meta_schema(with_ids, known):
    schema = json_schema(known if with_ids else None)
    Draft7Validator.check_schema(schema)
    assert schema["$schema"] == Draft7Validator.META_SCHEMA["$id"]


@pytest.mark.parametrize("folder", [*GOOD, TEMPLATE], ids=lambda folder: folder.name)
def test_every_good_page_passes_with_and_without_the_manual_s_ids(folder):
    pages = [path for path in folder.rglob("*.md") if path.read_bytes().startswith(b"---\n")]
    assert len(pages) >= 6
    manual = check(folder / "pages" if (folder / "pages").is_dir() else folder).manual
    for schema in (json_schema(), json_schema(known_ids(manual))):
        assert [(path.name, errors(schema, front(path))) for path in pages] == [
            (path.name, []) for path in pages
        ]


PROCEDURE = front(ROOT / "tests/good/smallest/kestrel-3/set-band.md")
FAMILY = front(ROOT / "tests/good/smallest/families/kestrel-3.md")
BAD = {
    "unknown key": {**PROCEDURE, "minuets": 25},
    "missing key": {key: value for key, value in PROCEDURE.items() if key != "area"},
    "unknown kind": {**PROCEDURE, "kind": "proceedure"},
    "choice": {**PROCEDURE, "who": "master"},
    "too few minutes": {**PROCEDURE, "minutes": 0},
    "not a whole number": {**PROCEDURE, "minutes": 2.5},
    "an id with capitals": {**PROCEDURE, "tools": ["Wrench"]},
    "nothing written": {**PROCEDURE, "area": None},
    "unit missing": {**FAMILY, "fasteners": {"a": {"name": "A", "torque": 120}}},
    "unit missing, as text": {**FAMILY, "fasteners": {"a": {"name": "A", "torque": "120"}}},
    "no range": {
        **FAMILY,
        "shift_windows": {"shift": "1-2", "throttle": "light", "speed": "9 km/h"},
    },
    "a name that is no id": {**FAMILY, "fasteners": {"A B": {"name": "A", "torque": "9 lbf*ft"}}},
    "a key of another kind": {**FAMILY, "minutes": 25},
    "key of a part": {**FAMILY, "parts": {"seal": {"nam": "Seal"}}},
}


@pytest.mark.parametrize("name", BAD)
def test_what_one_page_alone_shows_to_be_wrong_is_refused(name):
    assert errors(json_schema(), PROCEDURE) == errors(json_schema(), FAMILY) == []
    assert errors(json_schema(), BAD[name])


def test_the_bad_manuals_of_the_check_fail_where_a_schema_can_tell():
    """The other pages there are refused before a schema sees them, or for more than one page."""
    told = {}
    for path in sorted((ROOT / "tests/bad").rglob("*.md")):
        try:
            page = front(path)
        except (yaml.YAMLError, UnicodeDecodeError, IndexError, RecursionError):
            continue
        told[f"{path.parent.name}/{path.name}"] = bool(errors(json_schema(), page))
    assert any(told.values())
    for name, is_bad in told.items():
        codes = {each.code for each in findings(name)}
        if codes & {"unknown-key", "missing-key", "wrong-value", "unit-missing"}:
            assert is_bad, name


def findings(name):
    (path,) = (ROOT / "tests/bad").rglob(name)
    manual = next(each for each in path.parents if (each / "expected.txt").exists())
    file = path.relative_to(manual).as_posix()
    return [each for each in check(manual).findings if each.at.file == file]


def test_the_manual_s_ids_are_the_only_ones(known):
    schema = json_schema(known)
    page = front(DEMO / "kestrel-3/rear-seal.md")
    assert errors(schema, page) == []
    assert errors(schema, {**page, "tools": ["no-such-tool"]})
    assert errors(json_schema(), {**page, "tools": ["no-such-tool"]}) == []
    assert errors(schema, {**page, "unit_family": "any"}) == []


def test_a_torque_is_known_by_its_short_and_its_whole_id(known):
    assert {"band-seat", "kestrel-3/band-seat"} <= set(known["torque"])
    assert {"rear-seal", "kestrel-3/rear-seal"} <= set(known["part"])


def test_a_grade_may_be_a_number_to_yaml():
    fastener = {"name": "A", "torque": "9 lbf*ft", "grade": 8.8}
    assert errors(json_schema(), {**FAMILY, "fasteners": {"a": fastener}}) == []
    assert errors(json_schema(), {**FAMILY, "fasteners": {"a": {**fastener, "grade": 8.9}}})
