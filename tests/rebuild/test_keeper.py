"""What is made anew after a change is what a whole new build would make, and no more."""

import random
import shutil
from pathlib import Path

import pytest
from attrs import frozen

from underhoist.check import FolderChecker
from underhoist.pages import make_site, sheets
from underhoist.pages.every import Maker, makers
from underhoist.rebuild import Keeper

MANUAL = Path(__file__).parents[1] / "pages" / "manual"


class Kept:
    """A manual in a folder with what was made of it."""

    def __init__(self, folder: Path) -> None:
        shutil.copytree(MANUAL, folder)
        self.folder = folder
        self.checker = FolderChecker(folder)
        self.made_anew: list[str] = []
        self.keeper = Keeper(self._makers)
        self.renew(frozenset())

    def _makers(self, site):
        for maker in makers(site.manual):
            yield Maker(maker.name, self._noted(maker))

    def _noted(self, maker):
        def make(site):
            self.made_anew.append(maker.name)
            return maker.make(site)

        return make

    def site(self):
        return make_site(self.checker.checked().manual, self.folder, name="A manual")

    def renew(self, touched):
        self.made_anew.clear()
        return list(self.keeper.renew(self.site(), touched))

    def change(self, file, old, new):
        path = self.folder / file
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new, 1), encoding="utf-8")
        return self.renew(self.checker.refresh())


@pytest.fixture
def kept(tmp_path):
    return Kept(tmp_path / "manual")


CHANGES = [
    ("jobs/set-band.md", "Wipe the case.", "Polish the case."),
    ("jobs/set-band.md", "title: Set the band", "title: Adjust the band"),
    ("jobs/set-band.md", "minutes: 25", "minutes: 35"),
    ("jobs/set-band.md", "before: [raise]\n", ""),
    ("jobs/set-band.md", "tools: [inch-wrench, ", "tools: [lamp, inch-wrench, "),
    ("families/wren-2.md", "torque: 120 lbf*in", "torque: 118 lbf*in"),
    ("families/wren-2.md", "title: Wren 2", "title: Wren 2a"),
    ("families/wren-2.md", "name: Rear seal", "name: Output seal"),
    ("hazards/hot-fluid.md", "harm: ", "harm: Badly: "),
    ("tools/inch-wrench.md", "title: ", "title: Small "),
    ("faults/late.md", "title: ", "title: Often "),
    ("index.md", "title: ", "title: The "),
    ("drawings/adjuster.svg", 'viewBox="0 0 ', 'viewBox="0 0 1'),
]


def everything(site):
    return {sheet.address: sheet for sheet in sheets(site)}


@pytest.mark.parametrize("change", CHANGES, ids=lambda change: change[1])
def test_a_change_gives_what_a_new_build_gives(kept, change):
    before = dict(kept.keeper.things)
    batches = kept.change(*change)
    wanted = everything(kept.site())
    assert kept.keeper.things == wanted
    told = {thing.address for batch in batches for thing in batch.made}
    assert told == {address for address in wanted if wanted[address] != before.get(address)}
    assert told, "the change shows nowhere"


def test_many_changes_one_after_the_other(kept):
    chance = random.Random(4)  # noqa: S311 - which change comes next is no secret
    for file, old, new in chance.sample(CHANGES, len(CHANGES)):
        kept.change(file, old, new)
        back = chance.random() < 0.5
        if back:
            kept.change(file, new, old)
    assert kept.keeper.things == everything(kept.site())


def test_pages_that_come_and_go(kept):
    (kept.folder / "tools/lamp.md").rename(kept.folder / "tools/light.md")
    batches = kept.renew(kept.checker.refresh())
    assert kept.keeper.things == everything(kept.site())
    assert [address for batch in batches for address in batch.gone] == ["tools/lamp/"]


def test_pages_that_show_nothing_of_a_change_are_left_alone(kept):
    kept.change("jobs/set-band.md", "Wipe the case.", "Polish the case.")
    assert kept.made_anew[0] == "jobs/set-band.md"
    assert not {"jobs/raise.md", "tools/lamp.md"} & set(kept.made_anew)
    kept.renew(frozenset())
    assert kept.made_anew == []


def test_stopping_half_way_loses_nothing(kept):
    file = "families/wren-2.md"
    path = kept.folder / file
    path.write_text(path.read_text().replace("title: Wren 2", "title: Wren 2a"))
    kept.made_anew.clear()
    touched = kept.checker.refresh()
    batches = kept.keeper.renew(kept.site(), touched)
    next(batches)
    batches.close()
    kept.change("jobs/set-band.md", "Wipe the case.", "Polish the case.")
    assert kept.keeper.things == everything(kept.site())


@frozen
class Thing:
    address: str
    text: str


def test_a_maker_that_fails_leaves_what_it_made(kept):
    texts = ["good"]

    def make(site):
        list(site.manual.tools)
        if texts[-1] == "bad":
            raise KeyError("bad")
        return [Thing("a/", texts[-1])]

    keeper = Keeper[object, Thing](lambda _: [Maker("a", make)], forgiving=True)
    list(keeper.renew(kept.site()))
    texts.append("bad")
    (kept.folder / "tools/lamp.md").unlink()
    kept.checker.refresh()
    assert [batch.made for batch in keeper.renew(kept.site())] == [(), ()]
    assert keeper.things == {"a/": Thing("a/", "good")}
    assert keeper.failed == {"a"}


def test_a_failure_is_passed_on_where_nothing_is_to_be_forgiven(kept):
    def make(site):
        raise KeyError(site.name)

    with pytest.raises(KeyError, match="A manual"):
        list(Keeper[object, Thing](lambda _: [Maker("a", make)]).renew(kept.site()))


def test_of_two_for_one_address_the_first_has_it(kept):
    both = [Maker(name, lambda _, name=name: [Thing("a/", name)]) for name in ("one", "two")]
    keeper = Keeper[object, Thing](lambda _: both)
    list(keeper.renew(kept.site()))
    assert keeper.things == {"a/": Thing("a/", "one")}
