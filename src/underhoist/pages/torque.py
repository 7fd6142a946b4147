"""One torque: its plate, its thread, the note, where it is used."""

from collections.abc import Iterator, Mapping

from markupsafe import Markup

from underhoist.links import page_address
from underhoist.model import Fastener, Page
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry, facts, join, section
from underhoist.pages.listing import used_section
from underhoist.pages.plate import plate
from underhoist.pages.preset_links import preset_links
from underhoist.pages.presets import for_fastener
from underhoist.pages.revisions import changes_section, revision_of, since_of
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.pages.torque_units import lead

INDEX = ("Torques", "torques/")


def torque_sheets(site: Site) -> Iterator[Sheet]:
    """Make the index and every torque of the manual."""
    owners = list(_owners(site))
    if not owners:
        return
    yield _index(site, owners)
    for owner, fasteners in owners:
        for id_, fastener in fasteners.items():
            yield _sheet(site, owner, id_, fastener)


def _owners(site: Site) -> Iterator[tuple[Page, Mapping[str, Fastener]]]:
    """Yield the pages on which torques stand."""
    for page in (*site.manual.families.values(), *site.manual.procedures.values()):
        if page.fasteners:
            yield page, page.fasteners


def _index(site: Site, owners: list[tuple[Page, Mapping[str, Fastener]]]) -> Sheet:
    here = Here(site, INDEX[1])
    summary = "Every torque of the manual, each in the place where it stands once."
    lists = (
        section(
            "uh-group",
            owner.title.value,
            contents(
                entry(
                    here.to(f"torques/{owner.id}/{id_}/"),
                    each.name.value,
                    lead(each.torque.value, ()).text,
                )
                for id_, each in fasteners.items()
            ),
        )
        for owner, fasteners in owners
    )
    html = join((purpose(summary), *lists, closing(site)))
    return Sheet(address=INDEX[1], kind="index", title=INDEX[0], summary=summary, html=html)


def _sheet(site: Site, owner: Page, id_: str, fastener: Fastener) -> Sheet:
    here = Here(site, f"torques/{owner.id}/{id_}/")
    title = f"{fastener.name.value}, {owner.title.value}"
    summary = f"Tightening torque of the {owner.title.value}: {fastener.name.value.lower()}."
    count = fastener.count.value if fastener.count else 0
    note = fastener.note.value if fastener.note else ""
    return Sheet(
        address=here.base,
        kind="torque",
        title=title,
        summary=summary,
        html=join(
            (
                purpose(summary),
                facts(
                    fastener.thread.value if fastener.thread else "",
                    f"{count} of them" if count > 1 else "",
                    Markup('<a href="{}">{}</a>').format(here.to_page(owner), owner.title.value),
                ),
                plate(here, fastener),
                Markup("<p>{}</p>").format(note) if note else "",
                section(
                    "uh-calculators",
                    "Calculators, filled in",
                    preset_links(here, for_fastener(fastener)),
                ),
                used_section(here, "torque", f"{owner.id}/{id_}"),
                changes_section(here, owner, f"fasteners/{id_}"),
                closing(site),
            )
        ),
        trail=(INDEX, (owner.title.value, page_address(owner.file))),
        revision=revision_of(site, owner),
        since=since_of(site, owner),
        author=owner.author.value if owner.author else None,
    )
