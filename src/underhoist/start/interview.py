"""The questions that every kind of page shares, asked of whoever answers."""

# ruff: noqa: ANN401  (types of the model are values here)

from typing import Any, get_args

from attrs import frozen

from underhoist.model import Manual, Page
from underhoist.source import KINDS
from underhoist.start.ask import Asker
from underhoist.start.question import Answer, Offer, Question
from underhoist.start.yaml_text import line


@frozen
class Drafted:
    """A page as far as it can be written: its title, the folder it belongs to, and its text."""

    title: str
    folder: str
    text: str


@frozen
class Interview:
    """A manual to draft for, and somebody to ask."""

    manual: Manual
    asker: Asker

    def ask(self, key: str, words: str, **more: Any) -> Answer:
        """Ask for one answer or several."""
        return self.asker.ask(Question(key=key, words=words, **more))

    def text(self, key: str, words: str, kind: Any = str) -> Answer:
        """Ask for one value of this type of the model."""
        return self.ask(key, words, new=kind)

    def choice(self, key: str, words: str, literal: Any) -> Answer:
        """Ask for one of the choices of a type."""
        return self.ask(key, words, offers=tuple(map(Offer, get_args(literal))))

    def pages(self, key: str, words: str, group: str, **more: Any) -> Answer:
        """Ask for pages of one group of the manual."""
        pages = getattr(self.manual, group).values()
        offers = tuple(Offer(page.id, page.title.value) for page in pages)
        return self.ask(key, words, offers=offers, several=True, **more)

    def head(self, kind: str) -> tuple[str, list[str]]:
        """Ask for title and summary; return the title and the first lines of the page."""
        title = self.text("title", "What is the page called? Say it as the shop says it.")
        summary = self.text("summary", "What is it for, in one sentence?")
        lines = [f"kind: {kind}", *line("title", title, needed=True)]
        return (title[0] if title else ""), [*lines, *line("summary", summary, needed=True)]

    def usual_folder(self, kind: str, otherwise: str) -> str:
        """Return the folder that most pages of the kind are in."""
        pages = [page for page in self.manual.pages() if type(page) is KINDS[kind]]
        return _most_common(pages) if pages else otherwise


def _most_common(pages: list[Page]) -> str:
    folders = [page.file.rpartition("/")[0] for page in pages]
    return max(dict.fromkeys(folders), key=folders.count)


def page_text(front: list[str], body: list[str]) -> str:
    """Put front matter and body together."""
    return "\n".join(["---", *front, "---", "", *body]).rstrip() + "\n"
