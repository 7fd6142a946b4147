"""Writing a page in the browser: the same check and the same page as the build's, text by text.

Nothing here may need what a browser lacks. `desk` is what the page's worker talks to; the build
uses `sources` to send the manual's texts along.
"""
