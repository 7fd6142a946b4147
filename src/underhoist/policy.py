"""What a page may load and run: its content security policy, written into the page itself.

Not every static host can send headers, so each page carries its policy in a meta element. A header
can be sent besides: it covers the workers too, and forbids framing, which a meta element cannot.
"""

_EVERY_PAGE = {
    "default-src": "'none'",
    "script-src": "'self' 'wasm-unsafe-eval'",  # the calculators' Python is WebAssembly
    "style-src": "'self'",
    "img-src": "'self' blob:",  # a card's photos
    "font-src": "'self'",
    "connect-src": "'self'",
    "worker-src": "'self'",
    "manifest-src": "'self'",
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'self'",
}

_SHOP = "'self' https: http://localhost:* http://127.0.0.1:*"
"""The exchange with a shop's server goes to the address that a person enters on the phone."""


def policy(kind: str) -> str:
    """Return the policy of a page of this kind: only the job cards may ask another origin."""
    return _written(_EVERY_PAGE | ({"connect-src": _SHOP} if kind == "cards" else {}))


def header() -> str:
    """Return what a host sends with every file: what any page may, and no framing."""
    return _written(_EVERY_PAGE | {"connect-src": _SHOP, "frame-ancestors": "'none'"})


def _written(directives: dict[str, str]) -> str:
    return "; ".join(f"{name} {sources}" for name, sources in directives.items())
