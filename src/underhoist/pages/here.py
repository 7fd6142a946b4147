"""The spot from which a page is written: links count from it, references resolve for its page."""

from functools import cached_property
from posixpath import dirname, join, normpath
from urllib.parse import urlsplit

from attrs import frozen

from underhoist.link_targets import MADE
from underhoist.links import address_of, page_address, relative
from underhoist.markdown import Reader, Section, Shown
from underhoist.model import Fastener, Page, Procedure, Tool
from underhoist.pages import drawings, hazard_panel, presets, torque_units
from underhoist.pages.site import Site
from underhoist.references import Target, matches
from underhoist.source import is_page


@frozen(slots=False)  # cached properties need a dictionary
class Here:
    """One page of the manual, or none, and the address on which it is shown."""

    site: Site
    base: str
    page: Page | None = None

    @classmethod
    def on(cls, site: Site, page: Page) -> "Here":
        """Stand on the page at its own address."""
        return cls(site, page_address(page.file), page)

    def to(self, address: str) -> str:
        """Link to an address below the site's root."""
        return relative(address, self.base)

    def to_page(self, page: Page) -> str:
        """Link to a page of the manual."""
        return self.to(page_address(page.file))

    def to_target(self, target: Target) -> str:
        """Link to whatever a reference leads to."""
        return self.to(address_of(self.site.manual, target))

    def target(self, scheme: str, id_: str) -> Target | None:
        """Return the one thing that an id means on this page, None for none or several."""
        page = self.page or next(self.site.manual.pages(), None)
        if page is None:
            return None
        found = matches(self.site.manual, page, scheme, id_)
        return found[0] if len(found) == 1 else None

    def shown(self, scheme: str, id_: str) -> Shown | None:
        """Return what a reference shows: a torque its live value, anything else its title.

        A calculator opens filled in with what is stated for the page's one unit family.
        """
        target = self.target(scheme, id_)
        if target is None:
            return None
        key = f"{target.scheme}:{target.id}"
        if isinstance(target.thing, Fastener):
            torque = target.thing.torque.value
            value = torque_units.lead(torque, self.tools)
            address = torque_units.calculator_address(torque)
            return Shown(key, self.to(address), target.title, value.text)
        if target.scheme == "calc" and self.page is not None:
            calculator = self.site.calculators[target.id]
            filled = presets.address(calculator, presets.for_page(self.site.manual, self.page))
            return Shown(key, self.to(filled or f"calculators/{target.id}/"), target.title)
        return Shown(key, self.to_target(target), target.title)

    def to_file(self, path: str) -> str | None:
        """Link to another file of the manual, given as a path from this page's own file."""
        parts = urlsplit(path)
        file = self._file(parts.path)
        if file is None:
            made = parts.path.lstrip("./")
            return self.to(made) if made.partition("/")[0] in MADE else None
        address = page_address(file) if is_page(file) else file
        return self.to(address + (f"#{parts.fragment}" if parts.fragment else ""))

    def size(self, path: str) -> tuple[int, int] | None:
        """Width and height of a drawing."""
        file = self._file(urlsplit(path).path)
        return drawings.size(self.site.folder / file) if file else None

    def panel(self, hazard: str) -> str:
        """Return the panel of a hazard."""
        return hazard_panel.panel(self.site.manual.hazards[hazard])

    @cached_property
    def sections(self) -> tuple[Section, ...]:
        """The page's body, read once."""
        return Reader(self).sections(self.page.body) if self.page else ()

    @cached_property
    def tools(self) -> tuple[Tool, ...]:
        """The tools of the page's list."""
        if not isinstance(self.page, Procedure):
            return ()
        known = self.site.manual.tools
        return tuple(known[tool.value] for tool in self.page.tools if tool.value in known)

    def _file(self, path: str) -> str | None:
        """Return the manual's file that a relative path leads to."""
        if self.page is None or path.startswith("/"):
            return None
        file = normpath(join(dirname(self.page.file), path)) if path else self.page.file
        return file if file in self.site.manual.files else None
