"""The computed order of a fault's checks, as a table that is followed with a finger on paper."""

from markupsafe import Markup
from underhoist_calculators.fault_finding.policies import effort, in_order
from underhoist_calculators.fault_finding.table import Outcome, Step
from underhoist_calculators.fault_finding.words import HALF_A_MINUTE, certainty, minutes_words

from underhoist.pages.fault_orders import Order, ways
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, join, link


def order_table(here: Here, order: Order) -> Markup:
    """Write what the order takes, the table, and how to follow it."""
    rows = join(_row(here, order, step) for step in order.steps)
    return Markup(
        "<p>{}</p>\n"
        '<table class="uh-table uh-order">\n<caption>Begin at 1. After each result go to the step '
        "that it names.</caption>\n"
        '<thead><tr><th scope="col">Check</th><th scope="col">Good</th><th scope="col">Bad</th>'
        "</tr></thead>\n<tbody>\n{}\n</tbody>\n</table>\n"
        "<p>A check that cannot be done: go on as if it were good, and remember that what it would "
        "have told is still open.{}</p>"
    ).format(_takes(order), rows, _ways(here))


def _takes(order: Order) -> str:
    """Say what this order and the written one come to on average."""
    plan = order.plan
    start = plan.board.start()
    best = plan.minutes(start)
    written = effort(plan.board, in_order(plan.board)).minutes
    words = f"In this order the cause is known after {minutes_words(best)} on average"
    if written - best >= HALF_A_MINUTE:
        words += f"; in the order as written below, after {minutes_words(written)}"
    mending = plan.mend_minutes(start)
    if mending:
        words += f"; mending it takes {minutes_words(mending)} more"
    return f"{words}. {certainty(plan, start)}".rstrip()


def _ways(here: Here) -> Markup:
    """Lead to the page that says what the ways take."""
    page = next((page for page in here.site.manual.plain.values() if page.access), None)
    if page is None:
        return NOTHING
    to = link(here.to_page(page), page.title.value)
    return Markup(" The minutes to get at things: {}.").format(to)


def _row(here: Here, order: Order, step: Step) -> Markup:
    return Markup(
        '<tr id="{}"><th scope="row"><span class="uh-order__number">{}</span> {}'
        '<span class="uh-order__why">{}</span></th>'
        '<td data-label="Good">{}</td><td data-label="Bad">{}</td></tr>'
    ).format(
        order.place(step.number),
        step.number,
        _named(here, order, order.plan.complaint.checks[step.check].id),
        step.reason,
        _outcome(order, step.good),
        _outcome(order, step.bad),
    )


def _named(here: Here, order: Order, check: str) -> Markup:
    """Name the check: a link where one procedure tells how, else what tells how behind it."""
    targets = ways(here, order, check)
    name = order.fault.checks[check].name.value
    if len(targets) == 1:
        return link(here.to_target(targets[0]), name)
    how = join((link(here.to_target(each), each.title) for each in targets), ", ")
    told = Markup('<span class="uh-order__how">How: {}</span>').format(how) if how else NOTHING
    return Markup("{}{}").format(name, told)


def _outcome(order: Order, outcome: Outcome) -> Markup:
    """Say where a result leads."""
    if outcome.step is not None:
        return link(f"#{order.place(outcome.step)}", f"go to {outcome.step}")
    if outcome.remaining:
        names = "; ".join(order.plan.complaint.checks[each].name for each in outcome.remaining)
        return Markup("<span>go on with: {}</span>").format(names)
    listed = order.plan.complaint.listed
    causes = join(
        (link(f"#cause-{listed[each].id}", listed[each].name) for each in outcome.causes), "; or "
    )
    if not causes:
        return Markup("<span>none of these: stop and ask</span>")
    if outcome.shown:
        return Markup("<span>it is: {}</span>").format(causes)
    return Markup("<span>not ruled out, stop and ask: {}</span>").format(causes)
