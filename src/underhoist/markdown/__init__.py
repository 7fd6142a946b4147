"""From the body of a page to HTML: ordinary Markdown, references by scheme, no raw HTML."""

from underhoist.markdown.context import Context, Shown
from underhoist.markdown.reader import Reader, Section
from underhoist.markdown.steps import StepText

__all__ = ["Context", "Reader", "Section", "Shown", "StepText"]
