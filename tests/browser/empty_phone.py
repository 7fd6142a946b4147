"""A phone that tests share one after the other: emptied, not bought anew."""

from __future__ import annotations


class EmptyPhone:
    """One context with one page, put back as it was before each test that asks for it.

    What a script was told to do with every page to come, what listens to the page, a set clock and
    a limited store cannot be put back: such a test takes a `new_page`.
    """

    def __init__(self, browser, context_args) -> None:
        self.context = browser.new_context(**context_args)
        self.page = self.context.new_page()
        self.viewport = context_args["viewport"]
        self.session = self.context.new_cdp_session(self.page)

    def emptied(self, site_url):
        """The page, with nothing on it and nothing stored for the site."""
        for window in self.context.pages:
            if window != self.page:
                window.close()
        self.page.goto("about:blank")  # nothing holds the database open
        self.page.unroute_all()
        self.page.emulate_media(media="null", color_scheme="null")
        self.page.set_viewport_size(self.viewport)
        site = {"origin": site_url.rstrip("/"), "storageTypes": "all"}
        self.session.send("Storage.clearDataForOrigin", site)
        return self.page

    def close(self) -> None:
        self.context.close()
