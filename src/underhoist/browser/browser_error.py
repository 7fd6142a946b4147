"""What keeps the phone side from being built."""


class BrowserError(Exception):
    """The phone side could not be built. The text is a sentence for the person at the keyboard."""
