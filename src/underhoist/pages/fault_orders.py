"""The computed orders of a fault's checks: one for all families, or one for each that differs."""

from attrs import frozen
from underhoist_calculators.fault_finding.complaint import Complaint
from underhoist_calculators.fault_finding.plan import Plan
from underhoist_calculators.fault_finding.table import Step, steps

from underhoist.complaints import complaint_of
from underhoist.fault_families import families_of, procedures_for
from underhoist.model import Fault
from underhoist.pages.here import Here
from underhoist.references import Target

MOST = 30_000
"""So many states are looked into when a page is made: some seconds at most, on a phone too."""


@frozen
class Order:
    """A plan with its steps, and the families that it is for."""

    fault: Fault
    families: tuple[str, ...]
    plan: Plan
    steps: tuple[Step, ...]
    prefix: str = ""
    """What the names of its steps begin with, where the page has several orders."""

    @property
    def is_as_written(self) -> bool:
        """Whether the checks come in the order in which the author wrote them, all of them."""
        return [step.check for step in self.steps] == list(range(len(self.plan.complaint.checks)))

    def place(self, number: int) -> str:
        """Name a step's place on the page."""
        return f"step-{self.prefix}{number}"


def orders_of(here: Here, fault: Fault) -> tuple[Order, ...]:
    """Reckon the orders, families with equal tables together; none where nothing adds up."""
    alike: list[tuple[Complaint, list[str]]] = []
    for family in families_of(here.site.manual, fault) or (None,):
        complaint = complaint_of(here.site.manual, fault, family)
        if complaint is None:
            continue
        same = next((names for other, names in alike if other == complaint), None)
        if same is None:
            alike.append((complaint, same := []))
        same.extend([family] if family else [])
    made = (
        _order(fault, complaint, tuple(names), f"{names[0]}-" if len(alike) > 1 else "")
        for complaint, names in alike
    )
    return tuple(order for order in made if order.steps)


def ways(here: Here, order: Order, check: str) -> list[Target]:
    """Give the procedures that tell how a check is done on the order's families."""
    manual, written = here.site.manual, order.fault.checks[check].procedure
    fit = {
        id_
        for family in order.families or (None,)
        for id_ in procedures_for(manual, written, family)
    }
    targets = (here.target("procedure", each.value) for each in written if each.value in fit)
    return [each for each in targets if each]


def _order(fault: Fault, complaint: Complaint, families: tuple[str, ...], prefix: str) -> Order:
    plan = Plan(complaint, MOST)
    return Order(fault, families, plan, steps(plan), prefix)
