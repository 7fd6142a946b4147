"""Making only those pages anew that would come out otherwise: what each reads is noted and kept."""

from underhoist.rebuild.keeper import Batch, Keeper
from underhoist.rebuild.kept_build import KeptBuild

__all__ = ["Batch", "Keeper", "KeptBuild"]
