"""A torque that no torque wrench of the tool list can set.

Outside the marked range of its scale a torque wrench tells nothing. The tool list holds a wrench
for every torque of the page.

Good:

```yaml title="kestrel-3/set-band.md"
tools: [inch-pound-wrench]
torques: [band-seat]
```

Bad:

```yaml title="kestrel-3/set-band.md"
tools: [square-socket]
torques: [band-seat]
```
"""

from collections.abc import Iterator, Mapping

from underhoist_calculators.units import Quantity, Span

from underhoist.finding import Finding, Severity
from underhoist.model import Fastener, Manual, Procedure, Tool
from underhoist.references import matches
from underhoist.rules._pages import Pages
from underhoist.words import listing

CODE = "wrench-out-of-range"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Find declared torques outside the range of every wrench in the tool list."""
    if not procedure.torques or _has_unread_tool(manual, procedure):
        return
    wrenches = [manual.tools[each.value] for each in procedure.tools if each.value in manual.tools]
    ranges = {tool.id: tool.torque_range for tool in wrenches if tool.torque_range}
    for name in procedure.torques:
        for target in matches(manual, procedure, "torque", name.value)[:1]:
            if isinstance(target.thing, Fastener):
                torque = target.thing.torque
                if not _covered(torque.value, [each.value for each in ranges.values()]):
                    wrong, mend = _wrong(torque.written, ranges), _mend(manual, torque.value)
                    yield Finding(CODE, SEVERITY, name.at, name.written, wrong, mend)


def _has_unread_tool(manual: Manual, procedure: Procedure) -> bool:
    return any(each.value in manual.unread for each in procedure.tools)


def _covered(torque: Quantity, ranges: list[Span]) -> bool:
    return any(each.holds(torque) for each in ranges)


def _wrong(torque: str, ranges: Mapping[str, object]) -> str:
    if not ranges:
        return f"It is tightened to {torque}, and the tool list has no torque wrench."
    covers = listing(f"{name} covers {span}" for name, span in ranges.items())
    return f"It is tightened to {torque}; {covers}."


def _mend(manual: Manual, torque: Quantity) -> str:
    fitting = [tool.id for tool in manual.tools.values() if _fits(tool, torque)]
    return (
        f"Add {listing(fitting, 'or')} to tools."
        if fitting
        else "Add a page for a wrench that covers it."
    )


def _fits(tool: Tool, torque: Quantity) -> bool:
    return tool.torque_range is not None and tool.torque_range.value.holds(torque)
