"""The table of benchmarks/mutation.py, and why each known survivor does no harm."""

from __future__ import annotations

from typing import NamedTuple

HARMLESS: dict[tuple[str, str, str], str] = {
    (
        "calculators.band_set",
        "3 to 4",
        "number = number_text(specified.m_as(meant), figures=3)",
    ): "Figures shown in a sentence; no value rests on it",
    (
        "calculators.gear_ratios",
        "0 to 1",
        "if sun in USES[kind] and every.get(sun, 0) >= every.get(ring, 301):",
    ): "A sun that is not written counts as none or as one tooth, both smaller than any ring",
    (
        "calculators.gear_ratios",
        "301 to 302",
        "if sun in USES[kind] and every.get(sun, 0) >= every.get(ring, 301):",
    ): "Stands for no ring at all, above the most teeth that a field takes",
    (
        "calculators.gear_ratios",
        "12 to 13",
        'inner = teeth.get("inner_planet", possible[0] if possible else 12)',
    ): "Used only where no count can be built, so that the other faults are still named",
    (
        "calculators.joint_angles",
        "15.0 to 15.15",
        "STEEP = 15.0",
    ): "Bound of a warning; not held to the tenth of a degree",
    (
        "calculators.shift_check",
        "4 to 5",
        "result=number_text(factor, 4),",
    ): "Figures shown in the working; the exact factor is a value of its own",
    (
        "calculators.shift_map",
        "0 to 1",
        "if source <= 0 and any(line.measured is not None for line in lines):",
    ): "An edge of the check that there is vacuum to lose; between 0 and 1 inHg it is not tried",
    (
        "calculators.renewal",
        "1 to 2",
        "once = Change(drained=drained, total=total, times=1)",
    ): "Same result: only its share is asked for, which no number of changes alters",
    (
        "shift_map_lines",
        "0.0 to 0.01",
        "low=_edge(by, 0.0),",
    ): "An edge of a band in the drawing: a hundredth of its width",
    (
        "shift_map_lines",
        "1.0 to 1.01",
        "high=_edge(by, 1.0),",
    ): "An edge of a band in the drawing: a hundredth of its width",
    (
        "calculators.signal_vacuum",
        "0 to 1",
        "expected=max(expected, quantity(0, INHG)).to(unit),",
    ): "Floor of the vacuum expected; only where the air leaves the engine less than 1 inHg",
    (
        "calculators.staged_fill",
        "1.05 to 1.0605",
        "if volume > sump.dry_fill * 1.05:",
    ): "Allowance before a drained volume is refused; not held to the hundredth",
    (
        "calculators.staged_fill",
        "2 to 3",
        "result=show(volume, digits=2),",
    ): "Figures shown in the working; the exact volume is a value of its own",
    (
        "gear_train",
        "1 to 2",
        "held = tuple({member: 1} for member in self.held)",
    ): "Same result: a held member does not turn, nor does twice of it",
    (
        "governor",
        "60 to 61",
        "for _ in range(60):",
    ): "Same result: sixty halvings already reach the last binary digit",
    (
        "planet_fit",
        "* to /",
        "if next_pair <= apart + 2 * TIP or alike <= self.inner + 2 * TIP:",
    ): "Same result: a tip reaches one module, and times one is over one",
    (
        "planet_fit",
        "* to /",
        "if 2 * _reach(sun, teeth) * sin(pi / planets) <= teeth + 2 * TIP:",
    ): "Same result: a tip reaches one module, and times one is over one",
    (
        "planet_fit",
        "* to /",
        "if abs(self.double_sun - self.single_sun) <= 4 * TIP:",
    ): "Same result: a tip reaches one module, and times one is over one",
    (
        "planet_fit",
        "* to /",
        "if 2 * to_inner + self.inner + 2 * TIP >= self.ring:",
    ): "Same result: a tip reaches one module, and times one is over one",
    (
        "planet_fit",
        "// to *",
        "for inner in range(12, ring // 2)",
    ): "Same result: what is larger than half the ring stands out beyond it and is refused",
    (
        "shift_balance",
        "0.0 to 0.01",
        "slowest, fastest = max(speed - uncertainty, 0.0), speed + uncertainty",
    ): "Same result: so low a speed lies under the floor, where the loss is cut at its limit",
    (
        "tyre",
        "100 to 101",
        "rim_mm = rim if rim > 100 else rim * 25.4",
    ): "No rim is between 100 and 101 mm, or inches, across",
    (
        "unrounded",
        "12 to 13",
        "FIGURES = 12",
    ): "Figures of the exact value as shown; the value itself is not rounded",
    (
        "fluid_expansion",
        "0.0 to 0.01",
        "K0 = 0.0",
    ): "Nought for lubricants; a hundredth moves the factor by less than any case is known",
    (
        "fluid_expansion",
        "/ to *",
        "alpha = K0 / rho**2 + K1 / rho",
    ): "Same result: its term is nought for lubricants",
    (
        "fluid_expansion",
        "2 to 3",
        "alpha = K0 / rho**2 + K1 / rho",
    ): "Same result: its term is nought for lubricants",
    (
        "fluid_expansion",
        "** to *",
        "alpha = K0 / rho**2 + K1 / rho",
    ): "Same result: its term is nought for lubricants",
}
"""Why, by module, change and the line as it stands."""


class Sums(NamedTuple):
    """What became of the changes of one module."""

    module: str
    changes: int
    tried: int
    survived: int


class Survivor(NamedTuple):
    """A change that no test noticed."""

    module: str
    line: int
    change: str
    text: str

    @property
    def why(self) -> str:
        """Why it does no harm, or that nobody has looked."""
        return HARMLESS.get((self.module, self.change, self.text), "not looked into yet")


def table(rows: list[Sums]) -> str:
    """One row a module, and the sum."""
    total = Sums(
        "all",
        changes=sum(row.changes for row in rows),
        tried=sum(row.tried for row in rows),
        survived=sum(row.survived for row in rows),
    )
    lines = [
        "| module | changes | tried | noticed | survived |",
        "| --- | ---: | ---: | ---: | ---: |",
    ]
    lines += [
        f"| {row.module} | {row.changes} | {row.tried} | {row.tried - row.survived} "
        f"| {row.survived} |"
        for row in (*rows, total)
    ]
    return "\n".join(lines)


def page(rows: list[Sums], survivors: list[Survivor], left_out: list[str]) -> str:
    """The whole result as Markdown."""
    named = f"Left out, as its tests did not pass unchanged: {', '.join(left_out)}."
    listed = [
        f"- `{each.module}`, line {each.line}, `{each.text}`: {each.change}. {each.why}."
        for each in survivors
    ]
    parts = [
        "# Changes of a formula that no test notices",
        "`python benchmarks/mutation.py` changes each constant and sign of each formula, one at a\n"
        "time, and runs the tests that import the changed module. What no test notices survives.",
        table(rows),
        *([named] if left_out else []),
        "## Survivors",
        "\n".join(listed) or "None.",
    ]
    return "\n\n".join(parts) + "\n"
