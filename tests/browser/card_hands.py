"""What a person does on a job card, for the tests and the benchmark."""

from __future__ import annotations

from playwright.sync_api import expect

IDENTIFICATION = "Marlow Drover, green"
COMPLAINT = "It hangs on in first and leaves a puddle"


FRESH = """async ({ root, procedures, initials }) => {
    const { append, remember } = await import(root + "assets/cards/record/store.js");
    const { draft } = await import(root + "assets/cards/record/events.js");
    const card = crypto.randomUUID();
    const does = (kind, value) => append(draft({ card, who: initials, kind, value }));
    await remember("initials", initials);
    const vehicle = {
        family: "kestrel-3", family_title: "Kestrel 3", identification: "Marlow Drover, green",
        tyre: "", axle: "", odometer: "84210 km",
    };
    await does("start", { vehicle, complaint: "It shifts up late", fault: "" });
    for (const id of procedures) {
        const procedure = await (await fetch(root + "cards/data/" + id + ".json")).json();
        await does("add", { procedure });
    }
    return card;
}"""


TURN = """hash => {
    document.querySelector("#cards > *").dataset.left = "";
    if (location.hash === hash) dispatchEvent(new HashChangeEvent("hashchange"));
    else location.hash = hash;
}"""

# What is stored is said aloud in the same breath in which the card moves on or asks.
IS_TICKED = """() => {
  const said = document.querySelector(".uh-card__work > [aria-live]").textContent;
  // A reading's word may still come in after the tick was pressed.
  return document.querySelector(".uh-card__ask") || (said && !said.startsWith("Recorded"));
}"""


def open_cards(page, site_url, hash_=""):
    """Open the cards' page and wait until the phone's storage has been looked at."""
    page.goto(f"{site_url}cards/{hash_}")
    page.wait_for_selector("#cards[data-ready]")


def start_card(page, site_url, *procedures, initials="RB"):
    """Start a card with these procedures and no others that come along; returns its id.

    The first step is on the screen.
    """
    open_cards(page, site_url, "#new")
    if page.get_by_text("Who are you?").is_visible():
        page.get_by_label("Your initials").fill(initials)
        page.get_by_role("button", name="Keep").click()
    page.get_by_label("Unit family").select_option("kestrel-3")
    page.get_by_label("Identification").fill(IDENTIFICATION)
    page.get_by_label("Odometer").fill("84210 km")
    page.get_by_label("In the owner’s words").fill(COMPLAINT)
    page.get_by_role("button", name="Start the card").click()
    expect(page.get_by_role("heading", name="Add procedures")).to_be_visible()
    for summary in page.locator(".uh-card__form summary").all():
        summary.click()
    for id_ in procedures:
        page.locator(f"input[value={id_}]").check()
    ticked = page.locator("input[name=procedure]:checked")
    while along := set(ticked.evaluate_all("all => all.map(({ value }) => value)")) - {*procedures}:
        page.locator(f"input[value={along.pop()}]").uncheck()
    page.get_by_role("button", name="Add to the card").click()
    page.get_by_role("link", name="Begin with the first step").click()
    expect(tick(page)).to_be_visible()
    return page.evaluate("location.hash").split("/")[1]


COPY = "cards of underhoist, second copy"
"""The store of the second copy."""

LOSE = """name => new Promise((done) => {
    indexedDB.deleteDatabase(name).onsuccess = () => done();
})"""
"""What becomes of a database that the browser takes for damaged."""


def on_the_site(page, site_url):
    """Be somewhere on the site where its modules can be called and next to nothing is loaded."""
    page.goto(f"{site_url}cards/data/index.json")


def fresh_card(page, site_url, *procedures, initials="RB"):
    """Store a card with these procedures, nothing of it done or shown; returns its id."""
    on_the_site(page, site_url)
    asked = {"root": site_url, "procedures": procedures, "initials": initials}
    return page.evaluate(FRESH, asked)


def begun_card(page, site_url, *procedures, initials="RB"):
    """The same as `fresh_card`, its first step on the screen; quicker than `start_card`."""
    card = fresh_card(page, site_url, *procedures, initials=initials)
    open_cards(page, site_url, f"#card/{card}/1")
    expect(tick(page)).to_be_visible()
    return card


def tick(page):
    """The tick at the thumb."""
    return page.locator("button.uh-tick")


def take_time(page):
    """Set the page's clock on: a tap within 450 ms of the last tick is not taken as the next."""
    page.evaluate(
        """() => {
            const now = performance.now.bind(performance);
            performance.now = () => now() + 460;
        }"""
    )


def tick_off(page):
    """Tick the step in hand and wait until it is stored and the card has moved on or asks."""
    take_time(page)
    aloud = page.locator(".uh-card__work > [aria-live]")
    aloud.evaluate("node => { node.textContent = ''; }")
    tick(page).click()
    page.wait_for_function(IS_TICKED)


def sign_check(page, initials):
    """Sign the second check that the card asks for."""
    page.get_by_label("Second check: initials of whoever looks").fill(initials)
    page.get_by_role("button", name="Sign the check").click()


def tick_and_sign(page, position, steps, other="SL"):
    """Tick the step at this position of one procedure, second check and all."""
    title = page.locator(".uh-card__title")
    expect(title).to_have_text(f"Step {position} of {steps}")
    tick_off(page)
    if page.get_by_role("button", name="Sign the check").is_visible():
        sign_check(page, other)


def go_to(page, site_url, card, step):
    """Show the step at this position of the card, counted from 1."""
    turn_to(page, f"#card/{card}/{step}")
    expect(tick(page)).to_be_visible()


def turn_to(page, hash_):
    """Show another view of the cards' page, which is open."""
    page.evaluate(TURN, hash_)
    page.locator("#cards > [data-left]").wait_for(state="detached")


def stored_events(page, site_url):
    """Every event in the database, in order, read through a connection of its own."""
    return page.evaluate(
        """async () => {
            const opening = indexedDB.open("underhoist-cards");
            const database = await new Promise((done, fail) => {
                opening.onsuccess = () => done(opening.result);
                opening.onerror = () => fail(opening.error);
            });
            const asking = database.transaction("events").objectStore("events").getAll();
            const events = await new Promise((done, fail) => {
                asking.onsuccess = () => done(asking.result);
                asking.onerror = () => fail(asking.error);
            });
            database.close();
            return events.sort((a, b) => a.clock - b.clock);
        }"""
    )


def chain_is_whole(page, site_url):
    """Whether the page's own check finds every device's chain unbroken."""
    return page.evaluate(
        """async (root) => {
            const { brokenLink } = await import(root + "assets/cards/record/events.js");
            const { allEvents } = await import(root + "assets/cards/record/store.js");
            const events = await allEvents();
            const devices = [...new Set(events.map(({ device }) => device))];
            const own = (device) => events.filter((event) => event.device === device);
            const broken = await Promise.all(devices.map((device) => brokenLink(own(device))));
            return broken.every((link) => link === null);
        }""",
        site_url,
    )
