"""Where the search stands as HTML: what is known, the next check with its reason, the others.

The page as built and the phone show the same. What a manual adds to a check or a cause, such as
links to its procedures, goes into the elements marked `data-how` and `data-mends`.
"""

from collections.abc import Mapping
from html import escape
from typing import Any

type Json = Mapping[str, Any]


def standing(told: Json, how: Mapping[str, str] | None = None) -> str:
    """Write what `door.run` found out; everything that came from outside is escaped.

    `how` holds finished HTML by the id of a check: what the manual adds to it.
    """
    ways = how or {}
    drawn = (
        _next(told["next"], ways),
        _found(told),
        _ask(told),
        _shares(told["causes"]) if told["found"] is None else "",
        _others(told["others"], ways),
        _certainty(told["certainty"]),
    )
    return _framed(told["outlook"], "".join(drawn))


def wrong(message: str) -> str:
    """Write why nothing could be found out."""
    return _framed(message, "")


def _framed(outlook: str, drawn: str) -> str:
    """Write the line that is read out where it changes, and beside it what is drawn anew."""
    return (
        f'<div class="uh-standing"><p class="uh-standing__outlook" role="status">{escape(outlook)}'
        f'</p><div class="uh-standing__drawn">{drawn}</div></div>'
    )


def _next(check: Json | None, ways: Mapping[str, str]) -> str:
    if check is None:
        return ""
    return (
        f'<section class="uh-next"><h3 tabindex="-1"><span class="uh-next__word">Next check</span> '
        f"{escape(check['name'])}</h3>{_inside(check, ways)}</section>"
    )


def _inside(check: Json, ways: Mapping[str, str]) -> str:
    """Write what a check takes and why, how it is done, what it tells, and where results go."""
    id_ = escape(check["id"])
    return (
        f"<p>{escape(check['reason'])}</p>"
        f'<div class="uh-next__how" data-how="{id_}">{ways.get(check["id"], "")}</div>'
        '<p class="uh-tells__head">What it tells</p><dl class="uh-tells">'
        f"<div><dt>Good</dt><dd>{_line(check['good'])}</dd></div>"
        f"<div><dt>Bad</dt><dd>{_line(check['bad'])}</dd></div></dl>"
        f'<div class="uh-next__results" data-results="{id_}"></div>'
    )


def _line(words: str) -> str:
    """Write words as a line of their own."""
    return escape(f"{words[:1].upper()}{words[1:]}.")


def _found(told: Json) -> str:
    cause = next((each for each in told["causes"] if each["id"] == told["found"]), None)
    if cause is None:
        return ""
    alone = cause["share"] == 1
    sure = "The checks leave nothing else" if alone else f"{cause['words']} by what the checks told"
    return (
        '<section class="uh-standing__found"><h3 tabindex="-1">'
        f'<span class="uh-next__word">Found</span> {escape(cause["name"])}</h3>'
        f"<p>{_line(sure)}</p>"
        f'<div data-mends="{escape(cause["id"])}"></div></section>'
    )


def _ask(told: Json) -> str:
    """Say what to do where no check is left; hidden until then or until the reader asks."""
    names = [each["name"] for each in told["causes"] if each["id"] in told["open"]]
    left = f"<p>Not ruled out: {escape('; '.join(names))}.</p>" if names else ""
    return (
        f'<section class="uh-ask"{"" if told["ask"] else " hidden"}>'
        f'<h3 tabindex="-1">Stop and ask</h3>{ASK}{left}</section>'
    )


ASK = (
    "<ul><li>Write down every result and reading of today, with the fluid’s temperature.</li>"
    "<li>Open nothing more.</li>"
    "<li>Look the complaint up in the maker’s own manual for this vehicle.</li>"
    "<li>Take both to the senior tech.</li></ul>"
)
"""What to do where the list of causes does not help any further."""


def _shares(causes: list[Json]) -> str:
    if not causes:
        return ""
    items = "".join(_share(each) for each in causes)
    return (
        '<section class="uh-shares"><h3>What can be behind it now</h3>'
        f'<ol role="list">{items}</ol></section>'
    )


def _share(cause: Json) -> str:
    """Write a cause with its share in words and as a bar, which says nothing that they do not."""
    return (
        f'<li data-cause="{escape(cause["id"])}"><span class="uh-shares__name">'
        f'{escape(cause["name"])}</span> <span class="uh-shares__words">{escape(cause["words"])}'
        '</span><svg class="uh-shares__bar" viewBox="0 0 100 4" preserveAspectRatio="none" '
        f'aria-hidden="true"><rect width="{100 * cause["share"]:.1f}" height="4"/></svg></li>'
    )


def _others(others: list[Json], ways: Mapping[str, str]) -> str:
    if not others:
        return ""
    items = "".join(_other(each, ways) for each in others)
    return (
        '<section class="uh-others"><h3>Other checks</h3>'
        "<p>What each costs if it is done now instead of the next check.</p>"
        f'<ul role="list">{items}</ul></section>'
    )


def _other(check: Json, ways: Mapping[str, str]) -> str:
    return (
        f'<li><details><summary><span class="uh-others__name">{escape(check["name"])}</span> '
        f'<span class="uh-others__cost">{escape(check["instead"])}</span></summary>'
        f"{_inside(check, ways)}</details></li>"
    )


def _certainty(words: str) -> str:
    return f'<p class="uh-standing__certainty">{escape(words)}</p>' if words else ""
