"""Tells what differs between the steps and texts of two portraits."""

from collections.abc import Iterator

from underhoist.history.change import Change, Rank
from underhoist.history.naming import Naming
from underhoist.history.pairing import pair, text_likeness
from underhoist.history.plain import Plain
from underhoist.history.saying import now_and_was, quoted, said
from underhoist.prose import STEP_WORDS

Paragraphs = list[str]


def steps_told(old: Plain, new: Plain, naming: Naming) -> Iterator[Change]:
    """Tell steps that are new, went away, moved or say something else."""
    before, after = _texts(old), _texts(new)
    pairing = pair(
        [_whole(each) for each in before],
        [_whole(each) for each in after],
        lambda a, b: _likeness(before[a], after[b]),
    )
    for index in pairing.added:
        yield _change(f"step {index + 1} is new: {quoted(_action(after[index], naming))}")
    for index in pairing.gone:
        yield _change(f"step {index + 1} went away: {quoted(_action(before[index], naming))}")
    for a, b in pairing.moved:
        yield _change(f"step {a + 1} is now step {b + 1}: {quoted(_action(after[b], naming))}")
    for a, b in pairing.pairs:
        if before[a] != after[b]:
            yield from _paragraphs_told(before[a], after[b], f"step {b + 1}", naming)


def text_told(old: dict[str, Plain], new: dict[str, Plain], naming: Naming) -> Iterator[Change]:
    """Tell what differs under each heading of the text outside the steps."""
    for heading in dict.fromkeys((*new, *old)):
        where = f"the text under {heading}" if heading else "the text"
        if heading not in old and heading:
            yield _text(f"{heading} is new: {quoted(_all(new[heading], naming))}")
        elif heading not in new and heading:
            yield _text(f"{heading} was taken out: {quoted(_all(old[heading], naming))}")
        else:
            before, after = (_list(side.get(heading, [])) for side in (old, new))
            yield from _text_changes(before, after, where, naming)
    if [each for each in old if each in new] != [each for each in new if each in old]:
        yield _text("the order of the headings changed")


def _text_changes(old: Paragraphs, new: Paragraphs, where: str, naming: Naming) -> Iterator[Change]:
    pairing = pair(old, new, lambda a, b: text_likeness(old[a], new[b]))
    for a, b in pairing.pairs:
        if old[a] != new[b]:
            before, after = said(old[a], naming.name), said(new[b], naming.name)
            if before == after:
                yield _text(f"{where}: {_beneath(old[a], new[b])}: {quoted(after)}")
            else:
                yield _text(f"{where} was reworded: {now_and_was(before, after)}")
    for index in pairing.gone:
        yield _text(f"{where} no longer says {quoted(said(old[index], naming.name))}")
    for index in pairing.added:
        yield _text(f"{where} also says {quoted(said(new[index], naming.name))}")
    if pairing.moved:
        yield _text(f"{where}: the order of the paragraphs changed")


def _paragraphs_told(
    old: Paragraphs, new: Paragraphs, step: str, naming: Naming
) -> Iterator[Change]:
    """Tell what differs inside one step; its paragraphs answer to the word that opens them."""
    pairing = pair(old, new, lambda a, b: _paragraph_likeness(old[a], new[b]))
    for a, b in pairing.pairs:
        if old[a] != new[b]:
            word, was = _opened(said(old[a], naming.name))
            _, now = _opened(said(new[b], naming.name))
            where = f"{step}, {word}," if word else step
            if was == now:
                yield _change(f"{step}: {_beneath(old[a], new[b])}: {quoted(now)}")
            else:
                yield _change(f"{where} now says {now_and_was(was, now)}")
    for index in pairing.gone:
        yield _change(_one_way(step, said(old[index], naming.name), old[index], "taken out"))
    for index in pairing.added:
        yield _change(_one_way(step, said(new[index], naming.name), new[index], "added"))
    if pairing.moved:
        yield _change(f"{step}: the order of its paragraphs changed")


def _one_way(step: str, text: str, written: str, way: str) -> str:
    if written.startswith("<hazard:"):
        return f"{step}: caution {text} {way}"
    word, rest = _opened(text)
    return f"{step}: {word or 'text'} {way}: {quoted(rest)}"


def _paragraph_likeness(old: str, new: str) -> float:
    """Paragraphs opened by the same word answer to each other; a caution only to itself."""
    if "hazard" in (old[1:7], new[1:7]):
        return 0.0
    if _opened(old)[0] != _opened(new)[0]:
        return 0.0
    return max(text_likeness(old, new), 0.6)


def _opened(text: str) -> tuple[str, str]:
    """Part the word that opens a paragraph from the rest; "" where none of ours does."""
    word, colon, rest = text.partition(":")
    return (word, rest.strip()) if colon and word in STEP_WORDS else ("", text)


def _likeness(old: Paragraphs, new: Paragraphs) -> float:
    """Compare two steps by all they say, or by their action alone."""
    whole = text_likeness(_whole(old), _whole(new))
    return max(whole, text_likeness(_first(old), _first(new)))


def _whole(step: Paragraphs) -> str:
    return "\n".join(step)


def _first(step: Paragraphs) -> str:
    """Return the action of a step as written."""
    return next((each for each in step if not each.startswith("<hazard:")), "")


def _action(step: Paragraphs, naming: Naming) -> str:
    return said(_first(step), naming.name)


def _beneath(old: str, new: str) -> str:
    """Say what changed where the words did not."""
    return "a link leads elsewhere" if _led(old) != _led(new) else "its lines are set out anew"


def _led(text: str) -> str:
    return "".join(text.split())


def _texts(value: Plain) -> list[Paragraphs]:
    return [_list(each) for each in value] if isinstance(value, list) else []


def _list(value: Plain) -> Paragraphs:
    return [each for each in value if isinstance(each, str)] if isinstance(value, list) else []


def _all(value: Plain, naming: Naming) -> str:
    return " ".join(said(each, naming.name) for each in _list(value))


def _change(words: str) -> Change:
    return Change(words=words, rank=Rank.OTHER)


def _text(words: str) -> Change:
    return Change(words=words, rank=Rank.TEXT)
