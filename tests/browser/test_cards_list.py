"""The list of cards on a phone: kept summaries, verified by the number of events, and a search."""

from __future__ import annotations

import pytest
from card_hands import begun_card, go_to, open_cards, tick_off
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


@pytest.fixture
def page(empty_page):
    """A test begins with an empty phone."""
    return empty_page


# Cards as they lie in the record: each with a procedure of its own manual and some ticks and undos.
MANY = """async ([root, cards, each]) => {
    const { takeIn } = await import(root + "assets/cards/record/merge.js");
    const procedure = await (await fetch(root + "cards/data/set-band.json")).json();
    const device = crypto.randomUUID();
    let sequence = 0;
    for (let at = 0; at < cards; at += 1) {
        const card = crypto.randomUUID();
        const made = [];
        const does = (kind, value) => {
            sequence += 1;
            const time = Date.UTC(2026, 0, 1) + 60_000 * (at < 2 ? 0 : at);
            const id = crypto.randomUUID();
            made.push({ id, schema: 1, device, sequence, clock: sequence, previous: "", hash: id,
                at: new Date(time).toISOString(), who: "RB", card, kind, value, revision: "" });
            return id;
        };
        const name = at % 2 ? "Ashby Fairway" : "Tern Carrier";
        const vehicle = { family: "kestrel-3", family_title: "Kestrel 3", tyre: "", axle: "",
            identification: `${name} ${String(at).padStart(2, "0")}`, odometer: "1 km" };
        does("start", { vehicle, complaint: at % 3 ? "Leaves a pöol" : "Shifts late", fault: "" });
        const job = does("add", { procedure });
        while (made.length < each) {
            const tick = does("tick", { job, step: 1 + (made.length % 12) });
            if (made.length < each) does("undo", { of: tick });
        }
        await takeIn(made);
    }
}"""

# How often events were read, in whatever way, while the list was made; and the list.
READS = """async (root) => {
    const { cardsInBrief } = await import(root + "assets/cards/record/summaries.js");
    let reads = 0;
    const back = [];
    for (const kind of [IDBIndex, IDBObjectStore]) {
        for (const name of ["get", "getAll", "getAllRecords", "openCursor"]) {
            const real = kind.prototype[name];
            if (!real) continue; // only newer browsers have them all
            kind.prototype[name] = function (...words) {
                reads += (this.objectStore ?? this).name === "events";
                return real.apply(this, words);
            };
            back.push(() => { kind.prototype[name] = real; });
        }
    }
    const briefs = await cardsInBrief();
    for (const put of back) put();
    return [reads, briefs.map(({ name }) => name)];
}"""


def entries(page):
    """The cards in the list."""
    return page.locator("#cards .uh-contents > li")


def test_only_cards_with_new_events_are_read_again(page, site_url):
    card = begun_card(page, site_url, "set-band")
    page.evaluate(MANY, [site_url, 5, 20])
    open_cards(page, site_url)
    expect(entries(page)).to_have_count(6)
    assert page.evaluate(READS, site_url)[0] == 0
    go_to(page, site_url, card, 1)
    tick_off(page)
    assert page.evaluate(READS, site_url)[0] == 1
    open_cards(page, site_url)
    expect(entries(page).first).to_contain_text("Left: 11 of 12 steps.")


def test_the_list_keeps_its_order_also_where_two_began_at_once(page, site_url):
    open_cards(page, site_url)
    page.evaluate(MANY, [site_url, 6, 3])
    names = page.evaluate(READS, site_url)[1]
    numbers = [name.partition(" · ")[0][-2:] for name in names]
    assert numbers[:4] == ["05", "04", "03", "02"]
    assert {*numbers[4:]} == {"00", "01"}
    assert page.evaluate(READS, site_url)[1] == names


def test_more_than_ten_cards_can_be_searched(page, site_url):
    open_cards(page, site_url)
    page.evaluate(MANY, [site_url, 10, 3])
    open_cards(page, site_url)
    page.reload()
    expect(entries(page)).to_have_count(10)
    assert page.get_by_label("Look for a card").count() == 0
    page.evaluate(MANY, [site_url, 4, 3])
    page.reload()
    search = page.get_by_label("Look for a card")
    search.fill("pool  ASHBY")
    expect(entries(page)).to_have_count(4)
    expect(page.get_by_text("4 cards", exact=True)).to_be_visible()
    search.fill("gearbox")
    expect(entries(page)).to_have_count(0)
    expect(page.get_by_text("No card on this phone has “gearbox” in it.")).to_be_visible()
    search.fill("")
    expect(entries(page)).to_have_count(14)
    assert search.bounding_box()["height"] >= 44
