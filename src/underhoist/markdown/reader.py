"""Reads one body at a time into sections and steps."""

from collections.abc import Iterator
from xml.etree.ElementTree import Element

import markdown
from attrs import frozen
from markdown.extensions.fenced_code import FencedCodeExtension
from markdown.extensions.sane_lists import SaneListExtension
from markdown.extensions.tables import TableExtension
from markdown.extensions.toc import slugify

from underhoist.markdown import blocks
from underhoist.markdown.context import Context
from underhoist.markdown.references import AUTOLINK, Autolink, Resolve
from underhoist.markdown.steps import StepText, read_steps
from underhoist.model import Body
from underhoist.unseen import without_comments


@frozen
class Section:
    """A second-level heading and what stands below it; the text before the first has none."""

    heading: str | None
    id: str
    html: str
    steps: tuple[StepText, ...] = ()


class Reader(markdown.Markdown):
    """Python-Markdown with the manual's references, without raw HTML, one page at a time."""

    def __init__(self, context: Context) -> None:
        extensions = [
            FencedCodeExtension(),
            SaneListExtension(),
            TableExtension(use_align_attribute=True),
        ]
        super().__init__(extensions=extensions)
        self.context = context
        self.ESCAPED_CHARS.append("<")
        self.preprocessors.deregister("html_block")
        self.inlinePatterns.deregister("html")
        self.inlinePatterns.register(Autolink(AUTOLINK, self), "reference-autolink", 125)
        self.treeprocessors.register(Resolve(self, context), "resolve-references", 15)

    def sections(self, body: Body) -> tuple[Section, ...]:
        """Read the body's sections in order; the ordered list under Steps is read as steps."""
        self.reset()
        root = self._tree(body.text)
        return tuple(self._section(*part) for part in _parts(root))

    def _section(self, heading: Element | None, elements: list[Element]) -> Section:
        if heading is None:
            return Section(None, "", self._html(elements))
        words, id_ = "".join(heading.itertext()).strip(), heading.get("id", "")
        if words.casefold() != "steps":
            return Section(words, id_, self._html(elements))
        lists = [e for e in elements if e.tag == "ol"]
        prose = [e for e in elements if e.tag != "ol"]
        steps = read_steps((item for ol in lists for item in ol), self._html)
        return Section(words, id_, self._html(prose), tuple(steps))

    def _tree(self, text: str) -> Element:
        """Read the page as a tree: the first half of `Markdown.convert`."""
        lines = without_comments(text).split("\n")
        for preprocessor in self.preprocessors:
            lines = preprocessor.run(lines)
        self.parser.parseDocument(lines)
        root = self.parser.root
        for treeprocessor in self.treeprocessors:
            changed = treeprocessor.run(root)
            root = root if changed is None else changed
        return root

    def _html(self, elements: list[Element]) -> str:
        """Write some elements as HTML: the second half of `Markdown.convert`."""
        return "\n".join(filter(None, map(self._one, elements)))

    def _one(self, element: Element) -> str:
        hazard = blocks.lone_hazard(element)
        if hazard is not None:
            return self.context.panel(hazard)
        blocks.dress(element)
        output = self.serializer(element)
        for postprocessor in self.postprocessors:
            output = postprocessor.run(output)
        return output.strip()


def _parts(root: Element) -> Iterator[tuple[Element | None, list[Element]]]:
    """Yield the children of the page cut at its second-level headings; headings get ids."""
    heading: Element | None = None
    elements: list[Element] = []
    taken: set[str] = set()
    for element in root:
        if element.tag in {"h1", "h2", "h3", "h4"}:
            _name(element, taken)
        if element.tag == "h2":
            yield heading, elements
            heading, elements = element, []
        else:
            elements.append(element)
    yield heading, elements


def _name(heading: Element, taken: set[str]) -> None:
    """Give the heading an id of its own, so that it can be linked to."""
    stem = slugify("".join(heading.itertext()), "-") or "part"
    name, count = stem, 2
    while name in taken:
        name, count = f"{stem}-{count}", count + 1
    taken.add(name)
    heading.set("id", name)
