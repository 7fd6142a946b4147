"""A key that this kind of page needs.

A procedure without a time or without the family it is for cannot be planned or found.

Good:

```yaml title="tools/square-socket.md"
title: Square socket
```

Bad:

```markdown title="tools/square-socket.md"
---
kind: tool
title: Square socket
---
```
"""

from underhoist.finding import Severity

CODE = "missing-key"
SEVERITY = Severity.STOP
