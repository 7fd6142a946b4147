"""What is wrong with a written quantity, as data: the sentence is made last."""

from typing import Literal

UnitErrorCode = Literal[
    "unit-missing",
    "unit-ambiguous",
    "unit-wrong-kind",
    "unit-unknown",
    "not-a-number",
    "impossible-range",
]


class UnitError(ValueError):
    """A quantity that cannot be read: what was written, what is wrong, how to mend it."""

    def __init__(self, code: UnitErrorCode, written: str, wrong: str, mend: str) -> None:
        """`wrong` and `mend` are whole sentences."""
        super().__init__(code, written, wrong, mend)
        self.code: UnitErrorCode = code
        self.written = written
        self.wrong = wrong
        self.mend = mend

    def __str__(self) -> str:
        return f"{self.wrong} {self.mend}"
