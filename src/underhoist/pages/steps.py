"""The steps of a procedure, for its page and for a job card."""

from attrs import evolve, frozen
from markupsafe import Markup
from underhoist_calculators.units import unit_words

from underhoist.links import page_address, rebased
from underhoist.markdown import StepText
from underhoist.model import Fastener, Hazard, Procedure, Reading
from underhoist.pages.hazard_panel import panel
from underhoist.pages.here import Here
from underhoist.pages.html import join
from underhoist.pages.plate import plate
from underhoist.pages.quantities import show_span

CARDS = "cards/"


@frozen
class Step:
    """One step with everything it shows."""

    number: int
    hazards: tuple[Hazard, ...]
    """Cautions that stand before the action."""
    do_html: Markup
    """The action, one paragraph."""
    html: Markup
    """The whole step below its number: cautions, action, plates, readings, explanations."""
    text: str
    """The action as plain text."""
    torques: tuple[tuple[str, Fastener], ...]
    """Full id and fastener of each torque it names."""
    readings: tuple[tuple[str, Reading], ...]
    """Full id and reading of each reading it takes."""
    wants_second_check: bool
    takes_off: tuple[str, ...] = ()
    """What comes off the vehicle here, in the author's words."""
    puts_back: tuple[str, ...] = ()
    """What goes back on."""


def card_steps(made: tuple[Step, ...], procedure: Procedure) -> tuple[Step, ...]:
    """Return the steps as a job card shows them: their links count from the cards' page."""
    base = page_address(procedure.file)
    return tuple(
        evolve(step, html=Markup(rebased(step.html, base, CARDS)))  # noqa: S704 - as safe as before
        for step in made
    )


def steps(here: Here) -> tuple[Step, ...]:
    """Return the steps of the page, in order."""
    texts = [step for section in here.sections for step in section.steps]
    taken: set[str] = set()
    return tuple(_step(here, number, text, taken) for number, text in enumerate(texts, 1))


def steps_list(made: tuple[Step, ...]) -> Markup:
    """Write the steps as the page's numbered list."""
    items = join(
        Markup(
            '<li class="uh-step" id="step-{0}"><div class="uh-step__number" aria-hidden="true">{0}'
            '</div>\n<div class="uh-step__body">\n{1}\n</div></li>'
        ).format(step.number, step.html)
        for step in made
    )
    return Markup('<ol class="uh-steps">\n{}\n</ol>').format(items) if items else Markup("")


def _step(here: Here, number: int, text: StepText, taken: set[str]) -> Step:
    hazards = tuple(here.site.manual.hazards[id_] for id_ in text.hazards)
    torques = _things(here, "torque", text.torques, Fastener)
    readings = _things(here, "reading", text.readings, Reading)
    fresh = [(id_, each) for id_, each in readings if id_ not in taken]
    taken.update(id_ for id_, _ in fresh)
    do_html = Markup(text.do_html)  # noqa: S704 - made by our own reader, which lets no raw HTML in
    more = Markup(text.more_html)  # noqa: S704 - likewise
    return Step(
        number=number,
        hazards=hazards,
        do_html=do_html,
        html=join(
            (
                *((panel(*hazards),) if hazards else ()),
                do_html,
                *(plate(here, fastener) for _, fastener in torques),
                *(reading_line(id_, reading) for id_, reading in fresh),
                more,
            )
        ),
        text=text.text,
        torques=torques,
        readings=readings,
        wants_second_check=text.second_check or bool(torques),
        takes_off=text.takes_off,
        puts_back=text.puts_back,
    )


def _things[T](
    here: Here, scheme: str, ids: tuple[str, ...], kind: type[T]
) -> tuple[tuple[str, T], ...]:
    """Full id and thing of each reference of one scheme."""
    targets = (here.target(scheme, id_) for id_ in ids)
    return tuple((t.id, t.thing) for t in targets if t and isinstance(t.thing, kind))


def reading_line(full_id: str, reading: Reading) -> Markup:
    """Write what is to be written down: the name, when, the unit in full and the limits."""
    limits = reading.limits
    return Markup(
        '<p class="uh-step__reading" id="reading-{}"><strong>Record</strong> {}, {}, in {}{}</p>'
    ).format(
        full_id.rpartition("/")[2],
        reading.name.value,
        reading.when.value if reading.when.value != "both" else "as found and as left",
        unit_words(reading.unit.value),
        f". Good: {show_span(limits.value)}." if limits else ".",
    )
