"""A procedure as schema.org HowTo: what is said, in which order, by the vocabulary's own types."""

import json
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from underhoist.check import check
from underhoist.pages import make_site
from underhoist.pages.howto import duration
from underhoist.pages.procedure import procedure_sheet

ROOT = Path(__file__).parents[2]
CONTEXT = "https://schema.org"


@pytest.fixture(scope="module")
def demo():
    """The JSON-LD of every procedure of the demo manual, with the procedure."""
    checked = check(ROOT / "procedures")
    site = make_site(checked.manual, ROOT / "procedures", name="Demo")
    return [(each, procedure_sheet(site, each)) for each in site.manual.procedures.values()]


def test_a_procedure_whole(pages):
    data = json.loads(pages["jobs/set-band/"].data)
    steps = data.pop("step")
    assert data == {
        "@context": CONTEXT,
        "@type": "HowTo",
        "name": "Set the band",
        "description": 'Takes up the band\'s clearance & makes "second" clean.',
        "inLanguage": "en-GB",
        "totalTime": "PT25M",
        "image": ["../../drawings/adjuster.svg"],
        "tool": [
            {"@type": "HowToTool", "name": "Inch-pound wrench", "url": "../../tools/inch-wrench/"},
            {"@type": "HowToTool", "name": "Foot-pound wrench", "url": "../../tools/foot-wrench/"},
            {"@type": "HowToTool", "name": "Hammer", "url": "../../tools/hammer/"},
        ],
        "supply": [
            {"@type": "HowToSupply", "name": "Dunmere D2"},
            {"@type": "HowToSupply", "name": "Rags"},
            {"@type": "HowToSupply", "name": "Rear seal"},
        ],
    }
    hot = {"@type": "HowToTip", "text": "WARNING. Fluid scalds. Let it cool."}
    chips = {"@type": "HowToTip", "text": "NOTICE. A chip flies. Cover it."}
    cautions, first, second, *_ = steps
    assert cautions == {
        "@type": "HowToSection", "name": "Cautions", "itemListElement": [hot, chips]
    }  # fmt: skip
    assert first == {
        "@type": "HowToStep",
        "position": 1,
        "text": "Wipe the case.",
        "url": "#step-1",
        "itemListElement": [hot, {"@type": "HowToDirection", "text": "Wipe the case."}],
    }
    assert second == {
        "@type": "HowToStep", "position": 2, "text": "Turn the screw in. Record it.",
        "url": "#step-2",
    }  # fmt: skip


def test_only_procedures_have_it(pages):
    told = {sheet.kind for sheet in pages.values() if sheet.data}
    assert told == {"procedure"}


def test_steps_are_numbered_in_order_and_their_addresses_exist(demo):
    for procedure, sheet in demo:
        steps = [each for each in json.loads(sheet.data)["step"] if each["@type"] == "HowToStep"]
        assert [each["position"] for each in steps] == list(range(1, len(sheet.steps) + 1))
        for each in steps:
            assert f'id="{each["url"][1:]}"' in sheet.html, procedure.id


def test_a_text_cannot_end_the_block(changed):
    site = changed("jobs/set-band.md", ("title: Set the band", 'title: "</script><!-- & \u2028"'))
    data = procedure_sheet(site, site.manual.procedures["set-band"]).data
    assert not re.search("[<>&\u2028]", data)
    assert json.loads(data)["name"].startswith("</script><!-- &")


@pytest.mark.parametrize(
    ("minutes", "written"), [(1, "PT1M"), (25, "PT25M"), (60, "PT1H"), (90, "PT1H30M")]
)
def test_duration(minutes, written):
    """ISO 8601, 4.4.3.2: PT, hours and minutes that are not zero. From memory."""
    assert duration(minutes) == written


TYPES = 'import type { HowTo, WithContext } from "schema-dts";\n'


def types_say(folder, declared):
    """What tsc says of these constants by the vocabulary's types; nothing where all is well."""
    file = folder / "howto.ts"
    file.write_text(TYPES + declared, encoding="utf-8")
    shutil.copy(ROOT / "tests/pages/howto.tsconfig.json", folder / "tsconfig.json")
    (folder / "node_modules").symlink_to(ROOT / "node_modules")
    node = shutil.which("node", path=str(ROOT / ".venv/bin")) or "node"
    tsc = ROOT / "node_modules/typescript/bin/tsc"
    ran = subprocess.run(
        [node, str(tsc), "-p", str(folder)], capture_output=True, text=True, check=False
    )  # fmt: skip
    return ran.stdout


def as_constant(number, data):
    """A declaration with the data as a literal, so that tsc refuses properties it does not know."""
    return f"export const howto{number}: WithContext<HowTo> = {data};\n"


def shape(value, key=""):
    """All that a type looks at: any text is as good as another, and so is what has one shape."""
    if isinstance(value, dict):
        return {name: shape(each, name) for name, each in value.items()}
    if isinstance(value, list):
        made = {json.dumps(shape(each)): shape(each) for each in value}
        return list(made.values())
    return "text" if isinstance(value, str) and not key.startswith("@") else value


def positions_alike(data):
    """The data with every step at place 1, for the shapes of two steps are else never one."""
    return re.sub(r'"position": ?\d+', '"position": 1', data)


def test_every_procedure_obeys_the_vocabulary(demo, tmp_path):
    """schema-dts is schema.org's vocabulary as types: it knows each class and its properties.

    Each shape is written down once; the compiler takes long over the large types.
    """
    assert len(demo) >= 25
    read = (json.loads(positions_alike(sheet.data)) for _, sheet in demo)
    shapes = {json.dumps(shape(each)) for each in read}
    declared = "".join(as_constant(n, each) for n, each in enumerate(sorted(shapes)))
    assert declared.count("HowToStep") >= len(shapes)
    assert types_say(tmp_path, declared) == ""


@pytest.mark.parametrize(
    "wrong",
    ['"tools": []', '"totalTime": 25', '"step": [{"@type": "HowToStpe", "text": "Wipe."}]',
     '"supply": [{"@type": "HowToSupply", "nmae": "Rags"}]'],
)  # fmt: skip
def test_the_vocabulary_refuses_what_it_does_not_know(wrong, tmp_path):
    data = f'{{"@context": "{CONTEXT}", "@type": "HowTo", "name": "Band", {wrong}}}'
    assert "error TS" in types_say(tmp_path, as_constant(0, data))
