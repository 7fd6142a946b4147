"""How every page ends: whose word comes before ours."""

from markupsafe import Markup

from underhoist.pages.html import join
from underhoist.pages.site import Site

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
