"""The shop's words as a list by letter, each with a place of its own to be linked to."""

from collections.abc import Mapping
from itertools import groupby

from markupsafe import Markup

from underhoist.links import word_anchor
from underhoist.model import Word
from underhoist.pages.html import NOTHING, join, jumps, section
from underhoist.place import Placed

LETTERS_FROM = 20
"""So many words fill more than two screens of a phone: letters then lead to them."""


def words_list(words: Mapping[str, Word]) -> Markup:
    """Write the words under their letters; nothing where there are none."""
    ordered = sorted(words.items(), key=lambda item: item[0].casefold())
    letters = [
        (letter, list(group))
        for letter, group in groupby(ordered, key=lambda item: _letter(item[0]))
    ]
    return join(
        (
            _letters([letter for letter, _ in letters]) if len(words) >= LETTERS_FROM else NOTHING,
            *(
                section("uh-words", letter, _entries(group), id_=_anchor(letter))
                for letter, group in letters
            ),
        )
    )


def _letter(word: str) -> str:
    return word[0].upper() if word[0].isalpha() else "Other"


def _anchor(letter: str) -> str:
    return f"letter-{letter.casefold()}"


def _letters(letters: list[str]) -> Markup:
    """Write the letters that there are, each a link to its words."""
    return jumps("Words by letter", {_anchor(each): each for each in letters})


def _entries(group: list[tuple[str, Word]]) -> Markup:
    return Markup("<dl>\n{}\n</dl>").format(join(_entry(name, word) for name, word in group))


def _entry(name: str, word: Word) -> Markup:
    """Write our word, what it means, and what else it is called."""
    lines = join(
        (
            Markup("<dd>{}</dd>").format(word.meaning.value) if word.meaning else NOTHING,
            _others("Also", word.also),
            _others("Heard for it", word.heard),
        )
    )
    return Markup('<div id="{}"><dt>{}</dt>\n{}</div>').format(word_anchor(name), name, lines)


def _others(label: str, names: tuple[Placed[str], ...]) -> Markup:
    if not names:
        return NOTHING
    listed = ", ".join(each.value for each in names)
    return Markup('<dd class="uh-words__others"><b>{}:</b> {}</dd>').format(label, listed)
