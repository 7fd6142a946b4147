"""What keys are called in the words of a change; a key that is not here is called by its name."""

_LABELS = {
    "accepts": "accepted fluids",
    "unit_family": "unit family",
    "variants": "look-alikes",
    "fluid": "",  # the keys below it say it
    "torque": "",  # the fastener's name says it
    "fasteners": "",
    "rules_out": "ruled out causes",
    "before": "procedures before",
    "after": "procedures after",
}
_ONE = {
    "accessories": "accessory",
    "families": "family",
    "procedures before": "procedure before",
    "procedures after": "procedure after",
}


def label(key: str) -> str:
    """Name a key: "service_fill" is the service fill."""
    return _LABELS.get(key, key.replace("_", " ").replace(".", " "))


def one(words: str) -> str:
    """Name one of several: "cautions" are each a caution."""
    if words in _ONE:
        return _ONE[words]
    return words[:-1] if words.endswith("s") and not words.endswith("ss") else words


def joined(*words: str) -> str:
    """Put labels one after the other, empty ones left out."""
    return " ".join(word for word in words if word)
