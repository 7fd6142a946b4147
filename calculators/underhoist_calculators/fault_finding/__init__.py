"""Fault finding: which check comes next, so that the cause is found in the fewest minutes."""
