"""Every unit by its name in units.txt: what kind it is of, how it is written, said and typed."""

from collections.abc import Iterator
from typing import NamedTuple


class Unit(NamedTuple):
    """One unit. `aliases` are further spellings a person may type; case and dots do not matter."""

    name: str
    kind: str
    symbol: str
    one: str
    many: str
    aliases: tuple[str, ...] = ()


def _unit(name: str, kind: str, symbol: str, words: str, aliases: str = "") -> Unit:
    """Build a unit from `one/many` words and aliases separated by commas."""
    one, _, many = words.partition("/")
    return Unit(name, kind, symbol, one, many or one, tuple(filter(None, aliases.split(", "))))


UNITS: tuple[Unit, ...] = (
    # Torque. Workshops write ft-lb and in-lb the wrong way round and kg for kgf: they mean these.
    _unit("newton_metre", "torque", "N·m", "newton metre/newton metres",
          "nm, newton meter, newton meters"),
    _unit("pound_force_foot", "torque", "lbf·ft", "pound-force foot/pound-force feet",
          "ft lbf, lb ft, ft lb, ft lbs, lbs ft, foot pound, foot pounds, pound foot, pound feet, "
          "pounds feet, foot pound force, lbf foot, lbf feet, foot lb, foot lbs"),
    _unit("pound_force_inch", "torque", "lbf·in", "pound-force inch/pound-force inches",
          "in lbf, lb in, in lb, in lbs, lbs in, inch pound, inch pounds, pound inch, "
          "pound inches, pounds inches, inch pound force, lbf inch, lbf inches, inch lb, inch lbs"),
    _unit("ounce_force_inch", "torque", "ozf·in", "ounce-force inch/ounce-force inches",
          "in ozf, oz in, in oz, inch ounces, ounce inches"),
    _unit("kilogram_force_metre", "torque", "kgf·m", "kilogram-force metre/kilogram-force metres",
          "m kgf, kg m, m kg, kgm, mkg, kgfm, kilogram metres, metre kilograms"),
    _unit("kilogram_force_centimetre", "torque", "kgf·cm",
          "kilogram-force centimetre/kilogram-force centimetres",
          "cm kgf, kg cm, cm kg, kgcm, kgfcm, kilogram centimetres"),
    # Volume. A gallon, quart, pint or fluid ounce without its country is refused (AMBIGUOUS).
    _unit("litre", "volume", "L", "litre/litres", "liter, liters, ltr, ltrs"),
    _unit("US_quart", "volume", "US qt", "US quart/US quarts",
          "qt us, qts us, quart us, quarts us, us qts"),
    _unit("imperial_quart", "volume", "imp qt", "imperial quart/imperial quarts",
          "qt imp, qt imperial, qts imp, quart imperial, quarts imperial, uk qt, qt uk, quarts uk"),
    _unit("millilitre", "volume", "mL", "millilitre/millilitres",
          "milliliter, milliliters, cc, ccm, cm3, cubic centimetre, cubic centimetres"),
    _unit("cubic_metre", "volume", "m³", "cubic metre/cubic metres"),
    _unit("US_gallon", "volume", "US gal", "US gallon/US gallons",
          "gal us, gallon us, gallons us"),
    _unit("US_pint", "volume", "US pt", "US pint/US pints", "pt us, pint us, pints us"),
    _unit("US_fluid_ounce", "volume", "US fl oz", "US fluid ounce/US fluid ounces",
          "fl oz us, floz us, fluid ounces us, fluid ounce us"),
    _unit("imperial_gallon", "volume", "imp gal", "imperial gallon/imperial gallons",
          "gal imp, gal imperial, gallon imperial, gallons imperial, uk gal, gal uk, gallons uk"),
    _unit("imperial_pint", "volume", "imp pt", "imperial pint/imperial pints",
          "pt imp, pt imperial, pint imperial, pints imperial, uk pt, pt uk, pints uk"),
    _unit("imperial_fluid_ounce", "volume", "imp fl oz",
          "imperial fluid ounce/imperial fluid ounces",
          "fl oz imp, fl oz imperial, floz imp, fluid ounces imperial, uk fl oz, fl oz uk"),
    # Temperature: points first, differences apart.
    _unit("degree_Celsius", "temperature", "°C", "degree Celsius/degrees Celsius",
          "c, celsius, centigrade, degc, deg celsius"),
    _unit("degree_Fahrenheit", "temperature", "°F", "degree Fahrenheit/degrees Fahrenheit",
          "f, fahrenheit, degf, deg fahrenheit"),
    _unit("kelvin", "temperature", "K", "kelvin"),
    _unit("delta_degree_Celsius", "temperature_difference", "°C difference",
          "degree Celsius of difference/degrees Celsius of difference", "degc difference"),
    _unit("delta_degree_Fahrenheit", "temperature_difference", "°F difference",
          "degree Fahrenheit of difference/degrees Fahrenheit of difference", "degf difference"),
    # Speed
    _unit("kilometre_per_hour", "speed", "km/h", "kilometre per hour/kilometres per hour",
          "kmh, kph, km per hour"),
    _unit("mile_per_hour", "speed", "mph", "mile per hour/miles per hour", "mi/h, miles/h"),
    _unit("metre_per_second", "speed", "m/s", "metre per second/metres per second"),
    _unit("revolution_per_minute", "rotation_speed", "r/min",
          "revolution per minute/revolutions per minute", "rpm, rev/min, revs/min, 1/min"),
    # Length
    _unit("millimetre", "length", "mm", "millimetre/millimetres", "millimeter, millimeters"),
    _unit("centimetre", "length", "cm", "centimetre/centimetres", "centimeter, centimeters"),
    _unit("metre", "length", "m", "metre/metres", "meter, meters"),
    _unit("kilometre", "length", "km", "kilometre/kilometres", "kilometer, kilometers"),
    _unit("inch", "length", "in", "inch/inches", '", ins'),
    _unit("foot", "length", "ft", "foot/feet", "'"),
    _unit("mile", "length", "mi", "mile/miles"),
    _unit("thou", "length", "thou", "thousandth of an inch/thousandths of an inch",
          "thousandth, thousandths, mil, mils"),
    # Pressure. Plain inHg is the conventional inch of mercury.
    _unit("kilopascal", "pressure", "kPa", "kilopascal/kilopascals"),
    _unit("pascal", "pressure", "Pa", "pascal/pascals"),
    _unit("bar", "pressure", "bar", "bar", "bars"),
    _unit("pound_force_per_square_inch", "pressure", "psi",
          "pound-force per square inch/pounds-force per square inch",
          "lbf/in2, lb/in2, lbf/sq in, lb/sq in, pounds per square inch, psig"),
    _unit("kilogram_force_per_square_centimetre", "pressure", "kgf/cm²",
          "kilogram-force per square centimetre/kilograms-force per square centimetre",
          "kg/cm2, kgf/sq cm, kg/sq cm, ksc"),
    _unit("conventional_inch_of_mercury", "pressure", "inHg",
          "inch of mercury/inches of mercury", "in hg, inches hg, inch hg, in of mercury"),
    _unit("conventional_millimetre_of_mercury", "pressure", "mmHg",
          "millimetre of mercury/millimetres of mercury", "mm hg, mm of mercury"),
    _unit("inch_of_mercury_32F", "pressure", "inHg (32 °F)",
          "inch of mercury at 32 °F/inches of mercury at 32 °F", "inhg 32f, inhg 32 degf"),
    _unit("inch_of_mercury_60F", "pressure", "inHg (60 °F)",
          "inch of mercury at 60 °F/inches of mercury at 60 °F", "inhg 60f, inhg 60 degf"),
    _unit("conventional_inch_of_water", "pressure", "inH2O", "inch of water/inches of water",
          "in h2o, inches h2o"),
    _unit("inch_of_water_60F", "pressure", "inH2O (60 °F)",
          "inch of water at 60 °F/inches of water at 60 °F", "inh2o 60f, inh2o 60 degf"),
    # Angle
    _unit("turn", "turns", "turn", "turn/turns", "rev, revs, revolution, revolutions"),
    _unit("degree", "angle", "°", "degree/degrees", "deg, degs"),
    _unit("radian", "angle", "rad", "radian/radians"),
    # Mass, force, time, density, ratio, dipstick
    _unit("kilogram", "mass", "kg", "kilogram/kilograms", "kilo, kilos"),
    _unit("gram", "mass", "g", "gram/grams"),
    _unit("pound", "mass", "lb", "pound/pounds", "lbs"),
    _unit("ounce", "mass", "oz", "ounce/ounces"),
    _unit("newton", "force", "N", "newton/newtons"),
    _unit("pound_force", "force", "lbf", "pound-force/pounds-force"),
    _unit("kilogram_force", "force", "kgf", "kilogram-force/kilograms-force"),
    _unit("ounce_force", "force", "ozf", "ounce-force/ounces-force"),
    _unit("minute", "time", "min", "minute/minutes", "mins"),
    _unit("second", "time", "s", "second/seconds", "sec, secs"),
    _unit("hour", "time", "h", "hour/hours", "hr, hrs"),
    _unit("kilogram_per_cubic_metre", "density", "kg/m³",
          "kilogram per cubic metre/kilograms per cubic metre", "kg/m3"),
    _unit("kilogram_per_litre", "density", "kg/L", "kilogram per litre/kilograms per litre",
          "g/cm3, g/ml, kg/dm3"),
    _unit("percent", "ratio", "%", "per cent", "percent, pct"),
    _unit("dimensionless", "ratio", "", "", ""),
    _unit("turn_per_kilometre", "turns_per_distance", "turns/km",
          "turn per kilometre/turns per kilometre", "rev/km, revs/km, 1/km, r/km"),
    _unit("turn_per_mile", "turns_per_distance", "turns/mi", "turn per mile/turns per mile",
          "rev/mi, revs/mi, 1/mi, r/mi, turns/mile, revs/mile, rev/mile"),
    _unit("counted", "count", "", "", "tooth, teeth, planet, planets"),
    _unit("mark_below_full", "level", "marks below full", "mark below full/marks below full",
          "mark below full, below full, below, marks below, mark below"),
    _unit("mark_above_full", "level", "marks above full", "mark above full/marks above full",
          "mark above full, above full, above, marks above, mark above, over full, over"),
)  # fmt: skip

AMBIGUOUS: dict[str, tuple[str, str]] = {
    **dict.fromkeys(("gal", "gals", "gallon", "gallons"), ("gal US", "gal imperial")),
    **dict.fromkeys(("qt", "qts", "quart", "quarts"), ("qt US", "qt imperial")),
    **dict.fromkeys(("pt", "pts", "pint", "pints"), ("pt US", "pt imperial")),
    **dict.fromkeys(
        ("fl oz", "floz", "fluid ounce", "fluid ounces"), ("fl oz US", "fl oz imperial")
    ),
}
"""Spellings that name two units, with the two complete spellings to choose from."""

KIND_WORDS: dict[str, str] = {
    "torque": "a torque",
    "volume": "a volume",
    "temperature": "a temperature",
    "temperature_difference": "a temperature difference",
    "speed": "a road speed",
    "rotation_speed": "a speed of rotation",
    "length": "a length",
    "pressure": "a pressure or vacuum",
    "turns": "a number of turns",
    "angle": "an angle",
    "mass": "a mass",
    "force": "a force",
    "time": "a time",
    "density": "a density",
    "ratio": "a plain number or a percentage",
    "level": "a dipstick level",
    "turns_per_distance": "a number of turns over a distance",
    "count": "a whole number",
}
"""Every kind of quantity, as a sentence says it."""

BY_NAME: dict[str, Unit] = {unit.name: unit for unit in UNITS}


def units_of(kind: str) -> Iterator[Unit]:
    """Yield the units of one kind, the usual one first."""
    return (unit for unit in UNITS if unit.kind == kind)
