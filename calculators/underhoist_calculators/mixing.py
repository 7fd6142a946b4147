"""How much of the fluid is new after partial changes, well mixed in between: 1 − (1 − r)ⁿ."""

from math import ceil, log1p

MOST = 20
"""Changes: nobody does more, so more are refused."""


def new_share(changed: float, changes: int) -> float:
    """Give the share of new fluid after `changes` changes of the share `changed`."""
    return 1 - (1 - changed) ** changes


def changes_for(changed: float, wanted: float) -> int:
    """Give the fewest changes that reach the `wanted` share.

    `changed` above 0 and at most 1, `wanted` above 0 and below 1; raises `ValueError` otherwise.
    """
    if not (0 < changed <= 1 and 0 < wanted < 1):
        msg = "The share changed must be above 0 and at most 1, the share wanted between 0 and 1."
        raise ValueError(msg)
    if changed == 1:
        return 1
    # The small allowance keeps a share that is reached exactly from asking for one change more.
    return max(1, ceil(log1p(-wanted) / log1p(-changed) - 1e-9))
