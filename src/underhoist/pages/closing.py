"""How every page ends, whose word comes before ours; and which revision a page is."""

import hashlib
from pathlib import Path

from markupsafe import Markup

from underhoist.model import Fastener, Hazard, Page
from underhoist.pages.html import join
from underhoist.pages.site import Site
from underhoist.references import Target

SAFETY = (
    "Follow the vehicle maker's manual and local law: they come before anything written here. "
    "Leave gas fuel systems to licensed people. Dispose of used fluid lawfully."
)
DEMO = (
    "This manual is a demonstration. Its figures are invented: do not use them on a real vehicle."
)


def closing(site: Site) -> Markup:
    """Write the last lines of a page."""
    said = (SAFETY, DEMO) if site.demo else (SAFETY,)
    lines = join(Markup("<p>{}</p>").format(line) for line in said)
    return Markup('<footer class="uh-safety">\n{}\n</footer>').format(lines)


def revision_of(site: Site, page: Page) -> str:
    """Ten hexadecimal digits that change whenever the page would read differently.

    Hashed are the page's own source, line ends made plain, and the values it takes from others.
    """
    lines = [line.rstrip() for line in _source(site.folder / page.file).splitlines()]
    lines += map(_live_value, site.links.uses[page.file])
    return hashlib.sha256("\n".join(lines).strip().encode()).hexdigest()[:10]


def _source(file: Path) -> str:
    return file.read_text(encoding="utf-8-sig")


def _live_value(target: Target) -> str:
    """Return what the page shows of something that stands elsewhere."""
    match target.thing:
        case Fastener() as fastener:
            shown = f"{fastener.name.value} {fastener.torque.written}"
        case Hazard() as hazard:
            shown = f"{hazard.signal.value} {hazard.harm.value} {hazard.avoid.value}"
        case _:
            shown = target.title
    return f"{target.scheme}:{target.id} {shown}"
