"""Days as the record keeps them and as people read them."""

import os
from datetime import UTC, date, datetime


def today() -> str:
    """Give the day of the build, as 2026-11-25; SOURCE_DATE_EPOCH, in seconds, decides if set."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    if epoch.isdecimal():
        return datetime.fromtimestamp(int(epoch), UTC).date().isoformat()
    return date.today().isoformat()  # the shop's own day


def in_words(day: str) -> str:
    """Write a day out: "25 November 2026"; a text that is no day stays as it is."""
    try:
        read = date.fromisoformat(day)
    except ValueError:
        return day
    return f"{read.day} {_MONTHS[read.month - 1]} {read.year}"


_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
