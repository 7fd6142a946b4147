"""A page that cannot be read as text.

A page is a UTF-8 text file of at most 1 MB. A picture or a document that was saved with the ending
.md, or text in another encoding, cannot be read. Pictures go beside the pages under their own
ending and are shown by `![what it shows](drawing.svg)`.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Clean the adjuster's thread.
```

Bad (a picture, shown here in base64):

```base64 title="kestrel-3/band.md"
iVBORw0KGgoAAAANSUhEUgAA
```
"""

from underhoist.finding import Severity

CODE = "unreadable-page"
SEVERITY = Severity.STOP
