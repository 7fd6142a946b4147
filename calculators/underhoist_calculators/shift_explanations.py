"""Explains a road test: each explanation fitted by weighted least squares, then compared.

Compared by chi-square with a penalty per parameter (Akaike's: 2 each), so that a looser
explanation must earn its freedom.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from attrs import frozen

from underhoist_calculators.road_test import Key, RoadTest, is_kick_down, valve
from underhoist_calculators.shift_model import at_full_throttle, curves_of, with_change
from underhoist_calculators.shift_signal import CHANGES, Change, Signal

PATTERNS = (
    "as-specified",
    "scale",
    "one-shift",
    "kick-down",
    "full-throttle",
    *(change.code for change in CHANGES),
    "missing-shift",
    "unexplained",
)
"""Every pattern that an answer can name."""

FEW = 3
"""Fewer readings make no pattern: nothing that was tried can then be told from the best."""

PENALTY = 2.0
"""Added to chi-square for each parameter: Akaike's information criterion."""

EARNED = 4.0
"""Chi-square that an explanation must gain on "as specified" to be worth a word: two sigma."""

CLOSE = 4.0
"""Two explanations whose scores differ by less cannot be told apart (about 7 to 1 odds)."""

AGAINST = 2.0
"""Standard deviations by which a reading must miss an explanation to speak against it."""


@frozen(kw_only=True)
class Explanation:
    """One explanation: code, fitted parameter with its range, predicted speeds, misfit.

    `unit` is the registry name of the parameter's unit.
    """

    code: str
    parameters: int
    predicted: Mapping[Key, float]
    chi_square: float
    readings: int
    value: float = 0.0
    low: float = 0.0
    high: float = 0.0
    unit: str = "dimensionless"
    shift: str = ""

    @property
    def score(self) -> float:
        """Misfit with the penalty for parameters: lower is better."""
        return self.chi_square + PENALTY * self.parameters

    def gain(self, specified: Explanation) -> float:
        """Give how much better than "as specified" it fits, in chi-square."""
        return specified.chi_square - self.chi_square

    @property
    def fits(self) -> bool:
        """Say whether the misfit is one that chance makes: within three sigma of chi-square."""
        free = max(self.readings - self.parameters, 1)
        return self.chi_square <= free + 3 * (2 * free) ** 0.5


@frozen(kw_only=True)
class Comparison:
    """The best explanation, those that cannot be told from it, and those not judged."""

    specified: Explanation
    best: Explanation | None
    rivals: tuple[Explanation, ...] = ()
    not_judged: tuple[str, ...] = ()
    tried: tuple[Explanation, ...] = ()


def compare(test: RoadTest, signal: Signal) -> Comparison:
    """Fit every explanation to the measured speeds, those of this unit's signal among them."""
    specified = _as_specified(test)
    tried, not_judged = _try_all(test, signal)
    earned = [e for e in tried if e.gain(specified) >= EARNED and e.fits] if test.outside else []
    ranked = sorted(earned, key=lambda e: e.score)
    if not ranked:
        best = specified if specified.fits else None
        return Comparison(
            specified=specified, best=best, not_judged=not_judged, tried=(specified, *tried)
        )
    best, *others = ranked
    close = tuple(e for e in others if e.score - best.score < CLOSE)
    if specified.score - best.score < CLOSE:
        close = (*close, specified)
    return Comparison(
        specified=specified,
        best=best,
        rivals=close,
        not_judged=not_judged,
        tried=(specified, *tried),
    )


def _try_all(test: RoadTest, signal: Signal) -> tuple[tuple[Explanation, ...], tuple[str, ...]]:
    """Fit all but "as specified"; name those that lack a window to judge them by."""
    tried = [*_parts(test)]
    not_judged: list[str] = []
    found = {change.code: _changed(test, signal, change) for change in signal.changes}
    for code, fitted in {**found, "full-throttle": _full_throttle(test)}.items():
        if fitted is None:
            not_judged.append(code)
        else:
            tried.append(fitted)
    return tuple(tried), tuple(not_judged)


def chi_square(test: RoadTest, predicted: Mapping[Key, float]) -> float:
    """Sum the squared misfits, each in standard deviations."""
    return sum(
        ((test.speeds[key] - predicted[key]) / test.scatters[key]) ** 2 for key in test.measured
    )


def _as_specified(test: RoadTest) -> Explanation:
    predicted = {key: test.points[key].middle for key in test.windows}
    return _explained(test, "as-specified", 0, predicted)


def _explained(
    test: RoadTest, code: str, parameters: int, predicted: Mapping[Key, float]
) -> Explanation:
    return Explanation(
        code=code,
        parameters=parameters,
        predicted=predicted,
        chi_square=chi_square(test, predicted),
        readings=len(test.measured),
    )


def _best_factor(test: RoadTest, keys: list[Key]) -> tuple[float, float]:
    """Give the factor on the middles that fits best, and its standard deviation."""
    weights = {key: test.scatters[key] ** -2 for key in keys}
    top = sum(weights[key] * test.points[key].middle * test.speeds[key] for key in keys)
    bottom = sum(weights[key] * test.points[key].middle ** 2 for key in keys)
    return top / bottom, bottom**-0.5


def _factor_on(
    test: RoadTest, code: str, parameters: int, part: Callable[[Key], bool], shift: str = ""
) -> Explanation:
    """Fit one factor on a part of the shifts; the others come as specified."""
    factor, sigma = _best_factor(test, [key for key in test.measured if part(key)])
    predicted = {
        key: point.middle * factor if part(key) else point.middle
        for key, point in test.points.items()
    }
    return Explanation(
        code=code,
        parameters=parameters,
        predicted=predicted,
        chi_square=chi_square(test, predicted),
        readings=len(test.measured),
        value=factor,
        low=factor - sigma,
        high=factor + sigma,
        shift=shift,
    )


def _parts(test: RoadTest) -> Iterator[Explanation]:
    """Fit a factor on all shifts, on one valve's, on the kick-downs; which part is a parameter."""
    yield _factor_on(test, "scale", 1, lambda _: True)
    for one in sorted({valve(shift) for shift, _ in test.measured}):
        yield _factor_on(test, "one-shift", 2, lambda key, one=one: valve(key[0]) == one, one)
    if any(is_kick_down(key) for key in test.measured):
        yield _factor_on(test, "kick-down", 2, is_kick_down)


def _changed(test: RoadTest, signal: Signal, change: Change) -> Explanation | None:
    """Fit one change of the signal, or None where a measured shift lacks the windows for it."""
    curves = curves_of(test, signal)
    predicted = {
        size: with_change(test, signal, change, size, curves) for size in signal.sizes(change)
    }
    if any(key not in predicted[0.0] for key in test.measured):
        return None
    fits = {size: chi_square(test, speeds) for size, speeds in predicted.items()}
    best = min(fits, key=lambda size: fits[size])
    inside = [size for size, misfit in fits.items() if misfit <= fits[best] + 1]
    return Explanation(
        code=change.code,
        parameters=1,
        predicted=predicted[best],
        chi_square=fits[best],
        readings=len(test.measured),
        value=best,
        low=inside[0],
        high=inside[-1],
        unit=signal.unit,
    )


def _full_throttle(test: RoadTest) -> Explanation | None:
    """Try the full-throttle speeds at every throttle, or None where such a window lacks."""
    predicted = at_full_throttle(test)
    if any(key not in predicted for key in test.measured):
        return None
    return _explained(test, "full-throttle", 0, predicted)


def separating(test: RoadTest, one: Explanation, other: Explanation) -> tuple[Key, float] | None:
    """Find the reading not yet taken where two explanations differ most, in deviations.

    None where they differ by less than two standard deviations everywhere.
    """
    open_keys = [
        key
        for key in test.windows
        if key not in test.measured and key in one.predicted and key in other.predicted
    ]
    apart = {
        key: abs(one.predicted[key] - other.predicted[key]) / test.scatters[key]
        for key in open_keys
    }
    if not apart:
        return None
    best = max(apart, key=lambda key: apart[key])
    return (best, apart[best]) if apart[best] >= AGAINST else None


def ruled_out(test: RoadTest, comparison: Comparison) -> tuple[tuple[Explanation, Key], ...]:
    """Give what was tried and is contradicted, each with the reading that contradicts it most.

    Nothing where no single cause fits: two at once may then be any two. Where all is in order
    only what has no size is ruled out; of the others a small one may hide.
    """
    if comparison.best is None:
        return ()
    kept = (comparison.specified, comparison.best, *comparison.rivals)
    others = [explanation for explanation in comparison.tried if explanation not in kept]
    if comparison.best is comparison.specified:
        others = [explanation for explanation in others if not explanation.parameters]
    found = ((explanation, _against(test, explanation)) for explanation in others)
    return tuple((explanation, key) for explanation, key in found if key is not None)


def _against(test: RoadTest, explanation: Explanation) -> Key | None:
    """Find the reading that an explanation misses by most; None within AGAINST deviations."""
    missed = {
        key: abs(test.speeds[key] - explanation.predicted[key]) / test.scatters[key]
        for key in test.measured
    }
    worst = max(missed, key=lambda key: missed[key])
    return worst if missed[worst] >= AGAINST else None


def lone_reading(test: RoadTest, comparison: Comparison) -> Key | None:
    """Find the one reading outside its window where nothing tried explains it any better."""
    unexplained = comparison.best is None or comparison.best is comparison.specified
    return test.outside[0] if unexplained and len(test.outside) == 1 else None
