"""Gear ratios from tooth counts, and whether a gear set with these counts can be built."""

from collections.abc import Mapping
from fractions import Fraction

from underhoist_calculators.answer import Answer, Exact, Plate, Table, Working
from underhoist_calculators.counts import count
from underhoist_calculators.declare import Calculator, Choice, Field
from underhoist_calculators.gear_train import Gear, PlanetarySet, Ratios, speeds
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.planet_fit import Ravigneaux, inner_planets, planet_teeth, single_faults
from underhoist_calculators.train_kinds import TRAINS, Teeth, Train
from underhoist_calculators.units import number_text

COUNTS = {
    "sun": "Sun",
    "ring": "Ring",
    "planet": "Planet",
    "planets": "Number of planets or pairs",
    "rear-sun": "Rear sun",
    "rear-ring": "Rear ring",
    "rear-planet": "Rear planet",
    "overdrive-sun": "Overdrive sun",
    "overdrive-ring": "Overdrive ring",
    "overdrive-planet": "Overdrive planet",
    "double-sun": "Sun that drives through two planets",
    "single-sun": "Sun that meshes with the ring's planets",
    "inner-planet": "Inner planet",
}
"""Every count that a train can have."""

PLAIN = ("sun", "ring", "planet", "planets")
REAR = ("rear-sun", "rear-ring", "rear-planet")
OVERDRIVE = ("overdrive-sun", "overdrive-ring", "overdrive-planet")
SUNS = ("double-sun", "single-sun", "ring", "inner-planet", "planets")
USES = {
    "simpson": (*PLAIN, *REAR),
    "simpson-overdrive": (*PLAIN, *REAR, *OVERDRIVE),
    "ravigneaux": SUNS,
    "ravigneaux-two-speed": SUNS,
    "single": PLAIN,
}
"""Counts that each train takes."""

OPTIONAL = {"planet", "planets", "inner-planet", *REAR, "overdrive-planet"}
"""Counts that a train can do without."""


def run(inputs: Inputs) -> Answer:
    """Answer for one train."""
    kind = inputs.word("train") or "simpson"
    every = {name: found for name in COUNTS if (found := count(inputs, name)) is not None}
    teeth = _needed(kind, every)
    train = TRAINS[kind](teeth)
    faults = _faults(kind, teeth)
    return Answer(
        summary=_summary(train.ratios, faults),
        plates=tuple(_plate(name, ratio) for name, ratio in _shown(kind, train.ratios)),
        tables=(_speeds(train), *_all(kind, train)),
        warnings=(*_unused(kind, every), *faults, *_unproved(kind, teeth)),
        working=tuple(_working(train)),
        values={
            **{name: Exact(float(r), "dimensionless") for name, r in train.ratios.items()},
            "can_be_built": "no" if faults else "yes",
        },
    )


def _needed(kind: str, every: Mapping[str, int]) -> Teeth:
    """Give this train's own counts by their arithmetic names; raises `EntryError` for a gap."""
    for name in USES[kind]:
        if name not in every and name not in OPTIONAL:
            wrong = f"This train cannot be worked out without the teeth of its {_lower(name)}."
            raise EntryError(name, wrong, "Count them, or choose another train.")
    for sun in ("sun", "rear-sun", "overdrive-sun", "double-sun", "single-sun"):
        ring = sun.replace("sun", "ring") if sun in {"rear-sun", "overdrive-sun"} else "ring"
        if sun in USES[kind] and every.get(sun, 0) >= every.get(ring, 301):
            wrong = f"A sun of {every[sun]} teeth does not go into a ring of {every[ring]}."
            raise EntryError(sun, wrong, "Count both again: the ring has more teeth than the sun.")
    if ("rear-sun" in every) != ("rear-ring" in every) and "rear-sun" in USES[kind]:
        empty = "rear-ring" if "rear-sun" in every else "rear-sun"
        wrong = "A rear set of its own needs both its sun and its ring."
        raise EntryError(empty, wrong, "Write both, or leave both empty for two equal sets.")
    return {name.replace("-", "_"): every[name] for name in USES[kind] if name in every}


def _lower(name: str) -> str:
    return f"{COUNTS[name][0].lower()}{COUNTS[name][1:]}"


def _summary(ratios: Ratios, faults: tuple[str, ...]) -> str:
    listed = ", ".join(
        f"{name} {number_text(float(abs(r)), 3)}{'' if r > 0 else ' backwards'}"
        for name, r in ratios.items()
        if " " not in name
    )
    told = f"The ratios are {listed}." if listed else "The six ratios of one set stand below."
    return f"{told} A set with these counts cannot be built as it stands." if faults else told


def _shown(kind: str, ratios: Ratios) -> tuple[tuple[str, Fraction], ...]:
    """Give the ratios that deserve a plate: a single set has none before a member is held."""
    return () if kind == "single" else tuple(ratios.items())


def _plate(name: str, ratio: Fraction) -> Plate:
    way = "" if ratio > 0 else ", turning backwards"
    return Plate(
        name=name.capitalize(),
        number=number_text(float(abs(ratio)), 3),
        unit=f"turns of the input for one of the output{way}",
        note=f"Exactly {abs(ratio.numerator)}/{ratio.denominator}.",
        exact=Exact(float(ratio), "dimensionless"),
    )


def _all(kind: str, train: Train) -> tuple[Table, ...]:
    """List the six ratios of a single set."""
    if kind != "single":
        return ()
    rows = tuple((name, number_text(float(r), 4)) for name, r in train.ratios.items())
    return (Table(title="The six ways to use one set", heads=("How", "Ratio"), rows=rows),)


def _speeds(train: Train) -> Table:
    """Write how often each member turns while the input turns a hundred times."""
    solved = {gear.name: speeds(train.sets, gear) for gear in train.gears}
    members = sorted({name for found in solved.values() for name in found})
    rows = tuple(
        (name, *(number_text(100 * float(found.get(m, 0)), 1) for m in members))
        for name, found in solved.items()
    )
    return Table(
        title="Turns of every member for 100 of the input",
        heads=("Gear", *(m.capitalize() for m in members)),
        rows=rows,
    )


def _faults(kind: str, teeth: Teeth) -> tuple[str, ...]:
    """Say what keeps each set of the train from being built."""
    planets = teeth.get("planets")
    if kind.startswith("ravigneaux"):
        return _ravigneaux_faults(teeth, planets)
    several = {"rear_sun", "overdrive_sun"} & teeth.keys()
    return tuple(
        f"{name}: {fault}" if several else fault
        for prefix, name in (("", "Main set"), ("rear_", "Rear set"), ("overdrive_", "Overdrive"))
        if f"{prefix}sun" in teeth
        for fault in single_faults(
            teeth[f"{prefix}sun"], teeth[f"{prefix}ring"], teeth.get(f"{prefix}planet"), planets
        )
    )


def _ravigneaux_faults(teeth: Teeth, pairs: int | None) -> tuple[str, ...]:
    """Judge a Ravigneaux set; without its inner planet, whether any planet would do."""
    double, plain, ring = teeth["double_sun"], teeth["single_sun"], teeth["ring"]
    if pairs is None:
        return single_faults(plain, ring, None, None)
    possible = inner_planets(double, plain, ring, pairs)
    inner = teeth.get("inner_planet", possible[0] if possible else 12)
    whole = Ravigneaux(double_sun=double, single_sun=plain, ring=ring, inner=inner, pairs=pairs)
    return whole.faults


def _unproved(kind: str, teeth: Teeth) -> tuple[str, ...]:
    """Say what could not be checked for want of a count, and which planets would fit."""
    if "planets" not in teeth:
        return ("Whether the planets can be put in is not checked: their number is not written.",)
    if kind.startswith("ravigneaux") and "inner_planet" not in teeth:
        possible = inner_planets(
            teeth["double_sun"], teeth["single_sun"], teeth["ring"], teeth["planets"]
        )
        if possible:
            outer = planet_teeth(teeth["single_sun"], teeth["ring"])
            return (
                f"The ring's planets have {outer:g} teeth. Inner planets of {possible[0]} to "
                f"{possible[-1]} teeth would fit.",
            )
    return ()


def _unused(kind: str, every: Mapping[str, int]) -> tuple[str, ...]:
    """Name the counts that this train has no use for."""
    left = [_lower(name) for name in every if name not in USES[kind]]
    return (f"Not used by this train: {', '.join(left)}.",) if left else ()


def _working(train: Train) -> tuple[Working, ...]:
    """Show Willis' equation of every set, then what each gear locks and what follows."""
    sets = (_equation(each) for each in train.sets)
    gears = (_solution(gear, train.ratios[gear.name]) for gear in train.gears)
    return (*sets, *gears)


def _equation(each: PlanetarySet) -> Working:
    sign, of = ("\u2212", "double") if each.double else ("+", "single")
    return Working(
        what=f"Set of {each.sun} and {each.ring}, {of} planets",
        formula=f"zS·nS {sign} zR·nR = (zS {sign} zR)·nC",
        numbers=f"{each.sun_teeth}·n({each.sun}) {sign} {each.ring_teeth}·n({each.ring})",
        result=f"{-each.weights[each.carrier]}·n({each.carrier})".replace("-", "\u2212"),
    )


def _solution(gear: Gear, ratio: Fraction) -> Working:
    held = [f"{member} held" for member in gear.held]
    joined = [f"{first} joined to {second}" for first, second in gear.joined]
    return Working(
        what=gear.name.capitalize(),
        formula=f"n({gear.input}) / n({gear.output})",
        numbers=", ".join((*held, *joined)),
        result=number_text(float(ratio), figures=7),
    )


def _field(name: str, group: str, help_: str, example: str | None = None, low: str = "8") -> Field:
    return Field(
        name=name, label=COUNTS[name], group=group, kind="count", required=False, low=low,
        high="300" if low == "8" else "8", help=help_, example=example,
        fills_from=f"gear_train.teeth.{name.replace('-', '_')}",
    )  # fmt: skip


MAIN, SECOND, PAIRS = "Set", "Further sets of a Simpson train", "Ravigneaux set"

CALCULATOR = Calculator(
    name="gear-ratios",
    title="Gear ratios",
    purpose="Works out every gear's ratio from the tooth counts, and whether such a set can be "
    "built.",
    group="Shift",
    fields=(
        Field(
            name="train", label="Train", group=MAIN, kind="choice", example="simpson",
            choices=(
                Choice("simpson", "Simpson, three-speed"),
                Choice("simpson-overdrive", "Simpson behind an overdrive set, four-speed"),
                Choice("ravigneaux", "Ravigneaux, ring drives out"),
                Choice("ravigneaux-two-speed", "Ravigneaux two-speed, carrier drives out"),
                Choice("single", "One planetary set on its own"),
            ),
            help="How the sets are joined.", fills_from="gear_train.type",
        ),
        _field("sun", MAIN, "Teeth of the sun, the front one of a Simpson train.", "31"),
        _field("ring", MAIN, "Teeth of the ring.", "73"),
        _field("planet", MAIN, "Teeth of one planet. Empty: what fills the space.", "21"),
        _field("planets", MAIN, "How many planets, or pairs of them, a carrier holds.", "4", "2"),
        _field("rear-sun", SECOND, "Empty where both sets are alike."),
        _field("rear-ring", SECOND, "Empty where both sets are alike."),
        _field("rear-planet", SECOND, "Teeth of one planet of the rear set."),
        _field("overdrive-sun", SECOND, "Teeth of the overdrive set's sun, held in fourth."),
        _field("overdrive-ring", SECOND, "Teeth of the overdrive set's ring."),
        _field("overdrive-planet", SECOND, "Teeth of one planet of the overdrive set."),
        _field("double-sun", PAIRS, "The small sun; in a two-speed the input sun."),
        _field("single-sun", PAIRS, "The large sun; in a two-speed the low sun, held in first."),
        _field("inner-planet", PAIRS, "The planet between double sun and the ring's planet."),
    ),
    sources=(
        "Willis' equation for planetary sets: zS·nS + zR·nR = (zS + zR)·nC; exact.",
        "Simpson and Ravigneaux trains: which members each gear holds and joins; common knowledge "
        "of the trade, checked against published ratios.",
        "Equally spaced planets mesh where (ring + sun) / planets is whole: from memory.",
        "Tips one module beyond the pitch circle: ISO 53 standard tooth, from memory.",
    ),
    limits=(
        "Ratios hold for any tooth form. Whether a set can be built is judged for standard teeth: "
        "makers shift profiles and leave out or add a tooth.",
        "In a Simpson train with its sets the other way round, write the set whose carrier drives "
        "the output as the front one.",
    ),
    folded=(SECOND, PAIRS),
    run=run,
)  # fmt: skip
