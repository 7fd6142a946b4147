"""A torque as a plate: never a bare number, the unit written out, the other units below."""

from markupsafe import Markup

from underhoist.model import Fastener
from underhoist.pages import torque_units
from underhoist.pages.here import Here
from underhoist.pages.html import join

_PLATE = Markup(
    '<figure class="uh-plate"><a class="uh-plate__link" href="{href}">'
    '<span class="uh-plate__name">{name}</span> '
    '<span class="uh-plate__number">{number}</span> '
    '<span class="uh-plate__unit">{words}</span></a>'
    '<ul class="uh-plate__others">{others}</ul></figure>'
)


def plate(here: Here, fastener: Fastener) -> Markup:
    """Write the plate of a fastener's torque; it opens the calculator filled in with it."""
    torque = fastener.torque.value
    value = torque_units.lead(torque, here.tools)
    return _PLATE.format(
        href=here.to(torque_units.calculator_address(torque)),
        name=fastener.name.value,
        number=value.number,
        words=value.words,
        others=join((Markup("<li>{}</li>").format(other) for other in value.others), ""),
    )
