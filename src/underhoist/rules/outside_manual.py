"""A link that leads out of the manual's folder.

What is not in the manual's folder is not on the phone. Paths are written from the page's own
folder; paths from the root of the disk, paths that climb above the manual, links of the kinds
`file:`, `javascript:` and `data:`, and images from another site are refused. So are files of the
manual that are themselves links to somewhere else, web pages, and drawings that hold a script,
part of a web page or an address to fetch: opened by themselves they would run what they hold.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Find the adjuster. ![Band adjuster in section, seen from the left](../drawings/band-adjuster.svg)
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Find the adjuster on [the old sheet](../../desk/band.pdf).
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.link_targets import Outside, file_links
from underhoist.model import Manual, Page
from underhoist.rules._pages import TEXTS
from underhoist.words import quote

CODE = "outside-manual"
SEVERITY = Severity.STOP
PAGES = TEXTS


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Links that lead out of the manual."""
    for link, target in file_links(page):
        if isinstance(target, Outside):
            yield Finding(CODE, SEVERITY, link.at, quote(link.target), target.wrong, target.mend)
