"""The thin adapter to MkDocs, and the only package that imports it.

MkDocs gives the templates and the files; what stands on the pages comes from
`underhoist.pages`, finished.
"""

from underhoist.plugin.adapter import UnderhoistPlugin
from underhoist.plugin.settings import NotBuiltError
from underhoist.plugin.whole import PageWriter, build_site, site_of

__all__ = ["NotBuiltError", "PageWriter", "UnderhoistPlugin", "build_site", "site_of"]
