"""Signal-word panels after ISO 3864 and ANSI Z535.6: word, shape, harm, how to avoid it."""

from markupsafe import Markup

from underhoist.model import Hazard
from underhoist.pages.html import join
from underhoist.signal_words import gravest, has_alert_symbol

_TRIANGLE = Markup(
    '<svg class="uh-sign" viewBox="0 0 28 24" aria-hidden="true" focusable="false">'
    '<path fill-rule="evenodd" d="M12.3 2a2 2 0 0 1 3.4 0l11 18.4a2 2 0 0 1-1.7 3.1H3a2 2 0 0 '
    '1-1.7-3.1zM12.5 8h3l-.6 8h-1.8zM14 17.4a1.7 1.7 0 1 0 0 3.4 1.7 1.7 0 0 0 0-3.4z"/></svg>'
)
_ROUND = Markup(
    '<svg class="uh-sign" viewBox="0 0 24 24" aria-hidden="true" focusable="false">'
    '<path fill-rule="evenodd" d="M12 1a11 11 0 1 0 0 22 11 11 0 0 0 0-22zM10.5 5h3l-.6 9h-1.8z'
    'M12 16a1.7 1.7 0 1 0 0 3.4 1.7 1.7 0 0 0 0-3.4z"/></svg>'
)
"""NOTICE is damage, not injury: it has no safety alert triangle."""

_PANEL = Markup(
    '<aside class="uh-hazard uh-hazard--{signal}" role="note" aria-label="{word}: {title}">'
    '<p class="uh-hazard__word">{sign}{capitals}</p>{messages}</aside>'
)
_MESSAGE = Markup('<p class="uh-hazard__harm">{}</p><p class="uh-hazard__avoid">{}</p>')


def panel(hazard: Hazard, *others: Hazard) -> Markup:
    """Write the panel of one hazard, or of several under the word of the gravest."""
    every = (hazard, *others)
    signal = gravest(each.signal.value for each in every)
    return _PANEL.format(
        signal=signal,
        word=signal.capitalize(),
        title="; ".join(each.title.value for each in every),
        sign=_TRIANGLE if has_alert_symbol(signal) else _ROUND,
        capitals=signal.upper(),
        messages=join((_MESSAGE.format(each.harm.value, each.avoid.value) for each in every), ""),
    )
