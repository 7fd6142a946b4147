"""The index "Where used": every tool, part, torque and hazard with the pages that need it."""

from collections.abc import Iterator

from markupsafe import Markup

from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import join, link, section
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

ADDRESS = "where-used/"
_UNUSED = "nothing uses it"


def where_used_sheet(site: Site) -> Sheet:
    """Make the whole index on one page."""
    here = Here(site, ADDRESS)
    summary = "Every tool, part, torque and hazard, and the pages that need it."
    lists = (
        section(
            "uh-group",
            heading,
            Markup("<dl>\n{}\n</dl>").format(join(_lines(here, scheme, things))),
        )
        for heading, scheme, things in _things(site)
        if things
    )
    html = join((purpose(summary), *lists, closing(site)))
    return Sheet(
        address=ADDRESS,
        kind="index",
        title="Where used",
        summary=summary,
        html=html,
        searched=False,
    )


def _things(site: Site) -> Iterator[tuple[str, str, dict[str, str]]]:
    """Heading, scheme and the things with what they are called, by full id."""
    manual = site.manual
    families = manual.families.values()
    yield "Tools", "tool", {id_: each.title.value for id_, each in manual.tools.items()}
    yield (
        "Parts",
        "part",
        {
            f"{f.id}/{id_}": f"{p.name.value}, {f.title.value}"
            for f in families
            for id_, p in f.parts.items()
        },
    )
    yield (
        "Torques",
        "torque",
        {
            f"{owner.id}/{id_}": f"{each.name.value}, {owner.title.value}"
            for owner in (*families, *manual.procedures.values())
            for id_, each in owner.fasteners.items()
        },
    )
    yield "Hazards", "hazard", {id_: each.title.value for id_, each in manual.hazards.items()}


def _lines(here: Here, scheme: str, things: dict[str, str]) -> Iterator[Markup]:
    for full_id, title in sorted(things.items(), key=lambda item: item[1].casefold()):
        target = here.target(scheme, full_id)
        users = here.site.links.used_by(scheme, full_id)
        pages = join((link(here.to_page(page), page.title.value) for page in users), ", ")
        if target is not None:
            yield Markup("<div><dt>{}</dt><dd>{}</dd></div>").format(
                link(here.to_target(target), title), pages or _UNUSED
            )
