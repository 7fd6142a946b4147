"""Keeps together what a page must not part: Chromium heeds that within one element only."""

import re

from markupsafe import Markup

_END = re.compile(
    r'(<li class="uh-step"(?:(?!<li class="uh-step").)*?)</ol>\s*</section>\s*'
    r'(<section class="uh-follows">.*?</section>)',
    re.DOTALL,
)
_ORDER = re.compile(
    r"(?:<h3[^>]*>[^<]*</h3>\s*)?<p>(?:(?!</p>).)*</p>\s*"
    r'<table class="uh-table uh-order">.*?</table>',
    re.DOTALL,
)
_WITH_LAST = (
    r'</ol><div class="uh-book__whole"><ol class="uh-steps uh-work">\1</ol>\2</div></section>'
)


def together(html: Markup) -> Markup:
    """Keep what follows with the last step, and the order of checks with its heading."""
    parts = _END.sub(_WITH_LAST, html, count=1)
    parts = _ORDER.sub(r'<div class="uh-book__whole">\g<0></div>', parts)
    return Markup(parts)  # noqa: S704 - the page's own markup
