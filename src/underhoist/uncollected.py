"""Work that makes much and drops little: Python looks for no garbage meanwhile."""

import gc
from collections.abc import Generator
from contextlib import contextmanager


@contextmanager
def uncollected() -> Generator[None]:
    """Let nobody look for garbage among what is made within, now or later.

    Looking through all of it again and again takes a tenth of the time, and as long once more when
    the program ends. For programs that end soon after: circles in it are never freed.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        if was_on:
            gc.enable()
