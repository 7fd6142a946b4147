"""The mends that need no thought: edits that findings carry, tried and made in the files."""

from underhoist.mends.edits import apply, disjoint
from underhoist.mends.plan import Plan, plan

__all__ = ["Plan", "apply", "disjoint", "plan"]
