"""Making only those pages anew that would come out otherwise: what each reads is noted and kept."""

from underhoist.rebuild.keeper import Batch, Keeper
from underhoist.rebuild.kept_build import KeptBuild
from underhoist.rebuild.kept_rules import KeptRules
from underhoist.rebuild.old_site import OldSite
from underhoist.rebuild.parted import DamagedError

__all__ = ["Batch", "DamagedError", "Keeper", "KeptBuild", "KeptRules", "OldSite"]
