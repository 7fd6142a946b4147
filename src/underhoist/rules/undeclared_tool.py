"""A step that takes a tool or a part the page does not list.

What the work needs is fetched once, before the first step, and a tool's caution is asked for by the
list of tools. So a tool or a part that a step's action refers to stands in the front matter too.
Below the action, in a `Why:` or a `Note:`, it may be mentioned without being needed.

Good:

```yaml title="kestrel-3/clean-adjuster.md"
tools: [square-socket]
```

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Hold the screw with the <tool:square-socket>.
```

Bad:

```yaml title="kestrel-3/clean-adjuster.md"
tools: []
```

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Hold the screw with the <tool:square-socket>.
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.references import Reference, find, resolve
from underhoist.rules._actions import actions
from underhoist.rules._edits import added
from underhoist.rules._pages import Pages

CODE = "undeclared-tool"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Find tools and parts that an action refers to and the front matter does not list."""
    listed = {
        "tool": {each.value for each in procedure.tools},
        "part": {each.value.rpartition("/")[2] for each in procedure.parts},
    }
    for reference in _in_actions(procedure):
        name = reference.id.rpartition("/")[2]
        if name not in listed[reference.scheme] and resolve(manual, procedure, reference):
            listed[reference.scheme].add(name)
            what = reference.scheme
            wrong = f"The step takes the {what} {name}, and the page does not list it."
            mend = f"Add {reference.id} to {what}s."
            items = procedure.tools if what == "tool" else procedure.parts
            edit = added(items, reference.id, f"{what}s")
            yield Finding(CODE, SEVERITY, reference.at, reference.id, wrong, mend, edit)


def _in_actions(procedure: Procedure) -> Iterator[Reference]:
    named = [
        each for each in find(procedure.body, procedure.file) if each.scheme in {"tool", "part"}
    ]
    spans = [(each.offset, each.offset + len(each.text)) for each in actions(procedure) if named]
    for reference in named:
        if any(begin <= reference.offset < end for begin, end in spans):
            yield reference
