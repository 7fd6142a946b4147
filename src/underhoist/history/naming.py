"""What the things are called that a change is about."""

from collections.abc import Iterator

from attrs import frozen

from underhoist.history.labels import one
from underhoist.history.plain import Plain
from underhoist.references import SCHEMES


@frozen
class Naming:
    """Names by reference, the newer page's before the older one's."""

    new: dict[str, str]
    old: dict[str, str]

    def name(self, reference: str) -> str:
        """Name what a reference such as tool:hoist names; its id where nobody named it."""
        found = self.new.get(reference) or self.old.get(reference)
        return found or reference.partition(":")[2].rpartition("/")[2].replace("-", " ")

    def leaf(self, text: str) -> str:
        """Give a text of the facts as it is read: an id by the name of its thing."""
        if text == "family:any":
            return "any unit"
        scheme, colon, id_ = text.partition(":")
        is_id = colon and id_ and " " not in id_ and scheme in {*SCHEMES, "cause"}
        return self.name(text) if is_id else text


def naming(old: dict[str, Plain], new: dict[str, Plain]) -> Naming:
    """Read the names of two portraits."""
    return Naming(dict(_names(new)), dict(_names(old)))


def _names(portrait: dict[str, Plain]) -> Iterator[tuple[str, str]]:
    """Yield what the page owns by its own ids, then what it names."""
    facts = branch(portrait, "facts")
    for key, scheme in (("causes", "cause"), ("fasteners", "torque"), ("readings", "reading")):
        for id_, thing in branch(facts, key).items():
            name = branch({"": thing}, "").get("name")
            if isinstance(name, str):
                yield f"{scheme}:{id_}", name
    for reference, name in branch(portrait, "names").items():
        if isinstance(name, str):
            yield reference, name


def branch(tree: dict[str, Plain], key: str) -> dict[str, Plain]:
    """Return what stands under a key where that is names with values, else nothing."""
    found = tree.get(key)
    return found if isinstance(found, dict) else {}


def thing_label(above: str, key: str, thing: dict[str, Plain]) -> str:
    """Call a thing with an id by its name: "Front band seat (band-seat)"."""
    name = thing.get("name")
    words = f"{name} ({key})" if isinstance(name, str) else key
    return f"{one(above)} {words}".strip()
