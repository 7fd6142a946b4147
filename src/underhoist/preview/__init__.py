"""A preview that follows every change: findings stand in their page, and a fault stops nothing."""

from underhoist.preview.run import Preview

__all__ = ["Preview"]
