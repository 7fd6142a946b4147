"""A card with something of everything on it, for what comes out of a card."""

from __future__ import annotations

from pathlib import Path

from card_hands import COMPLAINT, IDENTIFICATION, on_the_site, open_cards

STORE = Path(__file__).with_suffix(".js").read_text(encoding="utf-8").partition("\n")[2]
PROCEDURES = ("extract-fluid", "drop-pan", "fit-pan-gasket", "set-band", "staged-refill")
WRITTEN = {"extracted": "3", "pan-remainder": "1", "total-in": "4.6", "turns-to-seat": "3"}
"""Readings by their short id: 0.6 litres more went in than came out, and one is outside."""
VEHICLE = {
    "family": "kestrel-3", "family_title": "Kestrel 3", "identification": IDENTIFICATION,
    "tyre": "215/75 R 15", "axle": "3.50", "odometer": "84210 km", "between_marks": "0.5 L",
}  # fmt: skip
FINDINGS = [
    ["The rear joint has play", "before driving", "advised", "Joint kit ordered."],
    ["The hose from the manifold was cracked", "this visit", "done", ""],
    ["Fine metal on the magnet", "next service", "declined", "He sells it soon."],
    ["The pan has an old dent", "to know", "", ""],
]


def filled_card(page, site_url, procedures=PROCEDURES, **what):
    """Store a whole card and return its id; nothing of it is shown yet.

    `what` may name steps to `skip` ("drop-pan 3"), things that stay `off`, `findings`, `photos` of
    the first step (whether each picture is on this phone), and say that second checks are not made
    (`unchecked`).
    """
    on_the_site(page, site_url)
    about = {"vehicle": VEHICLE, "complaint": COMPLAINT, **what}
    asked = {"root": site_url, "procedures": list(procedures), "readings": WRITTEN, "what": about}
    return page.evaluate(STORE, asked)


def show(page, site_url, card, part):
    """Show one view of a card in a page that was opened anew."""
    page.goto("about:blank")
    open_cards(page, site_url, f"#card/{card}/{part}")
