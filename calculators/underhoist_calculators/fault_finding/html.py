"""Where the search stands as HTML: what is known, the next check with its reason, the others."""

from collections.abc import Iterable, Mapping
from html import escape
from typing import Any

type Json = Mapping[str, Any]


def standing(told: Json) -> str:
    """Write what `door.run` found out; everything that came from outside is escaped."""
    parts = (
        f'<p class="uh-answer__summary">{escape(told["outlook"])}</p>',
        _next(told["next"]),
        _list("What can be behind it now", (_share(each) for each in told["causes"])),
        _list("Another check instead", (_other(each) for each in told["others"])),
    )
    return f'<section class="uh-answer" aria-live="polite">{"".join(parts)}</section>'


def wrong(message: str) -> str:
    """Write why nothing could be found out."""
    return (
        '<section class="uh-answer" aria-live="polite">'
        f'<p class="uh-answer__summary">{escape(message)}</p></section>'
    )


def _next(check: Json | None) -> str:
    if check is None:
        return ""
    return (
        f'<div class="uh-next" data-check="{escape(check["id"])}">'
        f"<h3>Next: {escape(check['name'])}</h3>"
        f"<p>{escape(check['reason'])}</p><p>{escape(check['change'])}</p></div>"
    )


def _share(cause: Json) -> str:
    return f"{escape(cause['name'])}: {escape(cause['words'])}"


def _other(check: Json) -> str:
    name = f'<strong data-check="{escape(check["id"])}">{escape(check["name"])}</strong>'
    return f"{name} {escape(check['instead'])} {escape(check['reason'])}"


def _list(title: str, items: Iterable[str]) -> str:
    inside = "".join(f"<li>{item}</li>" for item in items)
    return f"<h3>{escape(title)}</h3><ul>{inside}</ul>" if inside else ""
