"""The list of cards on a phone: kept summaries, verified by the number of events, and a search."""

from __future__ import annotations

import pytest
from card_hands import fresh_card, go_to, open_cards, stored_events, tick_off, turn_to
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


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


# One more event of a card, as it comes from elsewhere: no page has the card open.
ARRIVES = """async ([root, card]) => {
    const { append } = await import(root + "assets/cards/record/store.js");
    const { draft } = await import(root + "assets/cards/record/events.js");
    await append(draft({ card, who: "SL", kind: "fetch", value: { thing: "rags" } }));
}"""

# Until it is kept how a card stands at so many events; false where that is not soon.
KEPT = """async ([root, card, events]) => {
    const { withDatabase } = await import(root + "assets/cards/record/database.js");
    const until = performance.now() + 10_000;
    while (performance.now() < until) {
        const kept = await withDatabase((database) => database.get("summaries", card));
        if (kept?.events === events) return true;
        await new Promise((done) => setTimeout(done, 50));
    }
    return false;
}"""

# What is kept of how a card stands says this from now on.
SAYS = """async ([root, card, change]) => {
    const { withDatabase } = await import(root + "assets/cards/record/database.js");
    await withDatabase(async (database) => {
        const kept = await database.get("summaries", card);
        kept.brief.left = "As somebody else left it.";
        await database.put("summaries", { ...kept, ...change });
    });
}"""


def test_only_cards_with_new_events_are_read_again(page, site_url):
    card = fresh_card(page, site_url, "set-band")
    page.evaluate(MANY, [site_url, 5, 20])
    open_cards(page, site_url)
    expect(entries(page)).to_have_count(6)
    assert page.evaluate(READS, site_url)[0] == 0
    page.evaluate(ARRIVES, [site_url, card])
    assert page.evaluate(READS, site_url)[0] == 1
    assert page.evaluate(READS, site_url)[0] == 0


def test_a_card_that_was_open_need_not_be_read_again(page, site_url):
    card = fresh_card(page, site_url, "set-band")
    open_cards(page, site_url)
    expect(entries(page)).to_contain_text(["Left: 12 of 12 steps."])
    go_to(page, site_url, card, 1)
    tick_off(page)
    assert page.evaluate(KEPT, [site_url, card, 3])
    assert len(stored_events(page, site_url)) == 3
    assert page.evaluate(READS, site_url)[0] == 0
    turn_to(page, "#")
    expect(entries(page)).to_contain_text(["Left: 11 of 12 steps."])


@pytest.mark.parametrize("change", [{"events": 2}, {"events": 4}, {"shape": 1}, {"shape": 99}])
def test_what_is_kept_of_a_card_is_shown_only_where_it_fits_the_events(page, site_url, change):
    card = fresh_card(page, site_url, "set-band")
    page.evaluate(ARRIVES, [site_url, card])
    open_cards(page, site_url)
    expect(entries(page)).to_contain_text(["Left: 12 of 12 steps."])
    page.evaluate(SAYS, [site_url, card, {}])
    page.reload()
    expect(entries(page)).to_contain_text(["As somebody else left it."])
    page.evaluate(SAYS, [site_url, card, change])
    page.reload()
    expect(entries(page)).to_contain_text(["Left: 12 of 12 steps."])


def test_a_card_is_in_the_list_also_where_nothing_is_kept_of_it(page, site_url):
    fresh_card(page, site_url, "set-band")
    open_cards(page, site_url)
    page.evaluate(MANY, [site_url, 2, 3])
    page.reload()
    expect(entries(page)).to_have_count(3)


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
