"""Who answers: a person at the terminal, or answers that were prepared."""

from collections.abc import Callable, Iterable, Mapping
from typing import Protocol

from underhoist.start.question import NONE, Answer, Question, UnclearError
from underhoist.words import meant

SHOWN = 40
"""So many offers are listed; the others are found by typing a part of their name."""


class Asker(Protocol):
    """Answers questions."""

    def ask(self, question: Question) -> Answer:
        """Return the answer. Raises UnclearError where there is none that can be taken."""
        ...

    def finish(self) -> None:
        """Hear that the last question was asked. Raises UnclearError where answers are left."""
        ...


class Prepared:
    """Answers by key, each a text, a list of texts, or values by name."""

    def __init__(self, answers: Mapping[str, object]) -> None:
        self._answers = dict(answers)
        self._asked: list[str] = []

    def ask(self, question: Question) -> Answer:
        """Return the prepared answer, or what is proposed."""
        self._asked.append(question.key)
        try:
            return question.read(_text(self._answers.get(question.key)))
        except UnclearError as problem:
            msg = f"{question.key}: {problem}"
            raise UnclearError(msg) from None

    def finish(self) -> None:
        """Raise UnclearError where an answer belongs to no question."""
        for key in self._answers:
            if key not in self._asked:
                advice = meant(key, self._asked, f"The questions are {', '.join(self._asked)}.")
                msg = f"{key}: there is no such question for this kind of page. {advice}"
                raise UnclearError(msg)


class Terminal:
    """Asks a person, again where the answer is not clear."""

    def __init__(self, prompt: Callable[[str], str], say: Callable[[str], None]) -> None:
        self._prompt, self._say = prompt, say

    def ask(self, question: Question) -> Answer:
        """Show what there is to choose from and ask until the answer is clear."""
        self._say("")
        self._say(question.words)
        for text in _listed(question):
            self._say(f"  {text}")
        while True:
            try:
                return question.read(self._prompt(">"))
            except UnclearError as problem:
                self._say(str(problem))

    def finish(self) -> None:
        """Nothing is left over."""


def _listed(question: Question) -> Iterable[str]:
    offers = question.offers
    width = max((len(each.id) for each in offers), default=0)
    for number, offer in enumerate(offers[:SHOWN], 1):
        yield f"{number:>3}  {offer.id:<{width}}  {offer.title}".rstrip()
    if len(offers) > SHOWN:
        yield f"     and {len(offers) - SHOWN} more: type a part of the name."
    if question.fixed:
        yield f"In any case: {', '.join(question.fixed)}. {question.why}".rstrip()
    if question.proposed:
        proposed = ", ".join(question.proposed)
        yield f"Enter takes {proposed}; {NONE} takes none. {question.why}".rstrip()
    elif not question.fixed:
        yield f"{_ways(question)} Enter leaves it open.".lstrip()


def _ways(question: Question) -> str:
    if question.named:
        return "Name: value, several with commas between."
    how = "Several with commas between." if question.several else ""
    if not question.offers:
        return how
    new = "a number, a name, or something new." if question.new else "a number or a name."
    return f"Type {new} {how}".rstrip()


def _text(answer: object) -> str:
    """Write a prepared answer as it would be typed."""
    match answer:
        case None:
            return ""
        case Mapping():
            return ", ".join(f"{name}: {value}" for name, value in answer.items())  # pyright: ignore
        case list() | tuple():
            return ", ".join(map(str, answer))  # pyright: ignore
        case _:
            return str(answer)
