"""How often the tests of the parsers try: the same cases each run, or as many new ones as asked."""

import os

from hypothesis import HealthCheck, settings

LONGER = int(os.environ.get("UNDERHOIST_TRIES", "1"))
"""Times as many as in a common run; above 1 they are others each time."""


def tries(count):
    """Decorate a test that is tried so often in a common run."""
    return settings(
        max_examples=count * LONGER,
        deadline=None,
        derandomize=LONGER == 1,
        database=None,
        suppress_health_check=list(HealthCheck),
    )
