"""Changes each constant and sign in the calculators' formulas, and counts what no test notices.

    python benchmarks/mutation.py [seconds, 240 if not given] [module ...]

Every change is run on its own against the tests that import the changed module; the rest of the
time is shared evenly between modules, in an order that is the same every time. A run over all
modules writes benchmarks/results/mutation.md. Linux and macOS
only: each run is a fork, so that pint and SciPy load once. Left alone: allowances for the last
binary digit (below 1e-6), indices, declarations, and functions that only write text.
"""

from __future__ import annotations

import ast
import os
import random
import signal
import sys
import tempfile
import time
from collections.abc import Iterator
from importlib.abc import MetaPathFinder
from importlib.machinery import ModuleSpec, SourceFileLoader
from importlib.util import spec_from_file_location
from itertools import zip_longest
from pathlib import Path
from types import CodeType

import pytest
from attrs import frozen
from mutation_page import Sums, Survivor, page

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "calculators/underhoist_calculators"
TESTS = ROOT / "tests/calculators"
RESULT = ROOT / "benchmarks/results/mutation.md"
SECONDS = 240

NO_FORMULA = {
    "__init__", "answer", "counts", "declare", "door", "entries", "html", "inputs", "quantity_show",
    "quantity_text", "registry", "shelf", "text", "unit_error", "unit_table", "units",
}  # fmt: skip
"""Modules that read, write or register; modules named *_answers, *_words, *_plot only say."""

SLOW = {
    "test_bad_entries.py",
    "test_declarations.py",
    "test_html.py",
    "test_simulated_road_tests.py",
}
"""Tests of everything at once, and of statistics: too slow or too wide to judge one formula."""

SAYS = {"Answer", "Plate", "Table", "Working", "Exact"}
WORDS = {"str", "tuple[str, ...]", "Iterator[str]", "list[str]"}
"""What a function gives that only writes: left alone, but for the faults of a gear set."""

OPERATORS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult,
    ast.FloorDiv: ast.Mult, ast.Mod: ast.Mult,
}  # fmt: skip
SIGNS = {
    ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Pow: "**", ast.FloorDiv: "//",
    ast.Mod: "%",
}  # fmt: skip


@frozen
class Mutant:
    """One change: where it is, what stood there and what stands there instead."""

    module: str
    index: int
    line: int
    change: str


class Changer(ast.NodeTransformer):
    """Numbers every place that can be changed, and changes the one that is wanted."""

    def __init__(self, wanted: int | None = None) -> None:
        self.wanted = wanted
        self.places: list[tuple[int, str]] = []

    def _here(self, line: int, change: str) -> bool:
        self.places.append((line, change))
        return self.wanted == len(self.places) - 1

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.AST:
        gives = ast.unparse(node.returns) if node.returns else ""
        writes = gives in WORDS and not node.name.endswith("faults")
        skipped = writes or any(word in gives for word in SAYS)
        return node if skipped else self.generic_visit(node)

    def visit_Call(self, node: ast.Call) -> ast.AST:
        declares = isinstance(node.func, ast.Name) and node.func.id in {"Calculator", "Field"}
        return node if declares else self.generic_visit(node)

    def visit_Subscript(self, node: ast.Subscript) -> ast.AST:
        node.value = self.visit(node.value)
        return node

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.AST:
        if node.value is not None:
            node.value = self.visit(node.value)
        return node

    def visit_JoinedStr(self, node: ast.JoinedStr) -> ast.AST:
        return node

    def visit_Constant(self, node: ast.Constant) -> ast.AST:
        old = node.value
        if isinstance(old, bool) or not isinstance(old, int | float) or 0 < abs(old) < 1e-6:
            return node
        new = old + 1 if isinstance(old, int) else old * 1.01 or 0.01
        return ast.Constant(new) if self._here(node.lineno, f"{old!r} to {new!r}") else node

    def visit_BinOp(self, node: ast.BinOp) -> ast.AST:
        self.generic_visit(node)
        kind = type(node.op)
        if kind in OPERATORS:
            new = OPERATORS[kind]
            if self._here(node.lineno, f"{SIGNS[kind]} to {SIGNS[new]}"):
                node.op = new()
        return node

    def visit_UnaryOp(self, node: ast.UnaryOp) -> ast.AST:
        self.generic_visit(node)
        if isinstance(node.op, ast.USub) and self._here(node.lineno, "- left out"):
            return node.operand
        return node


class MutantFinder(MetaPathFinder):
    """Gives the changed module wherever it is imported."""

    def __init__(self, mutant: Mutant) -> None:
        self.name = f"underhoist_calculators.{mutant.module}"
        self.file = file_of(mutant.module)
        tree = Changer(mutant.index).visit(ast.parse(self.file.read_text(encoding="utf-8")))
        self.code = compile(ast.fix_missing_locations(tree), str(self.file), "exec")

    def find_spec(self, fullname: str, *_: object) -> ModuleSpec | None:
        if fullname != self.name:
            return None
        code = self.code

        class Loader(SourceFileLoader):
            def get_code(self, fullname: str) -> CodeType:
                return code

        return spec_from_file_location(fullname, self.file, loader=Loader(fullname, str(self.file)))


def file_of(module: str) -> Path:
    """The file of a module by its name inside the package."""
    return PACKAGE / f"{module.replace('.', '/')}.py"


def formula_modules(named: list[str]) -> list[str]:
    """The modules that hold formulas, or those named on the command line."""
    found = [file.stem for file in sorted(PACKAGE.glob("*.py"))]
    found += [f"calculators.{file.stem}" for file in sorted(PACKAGE.glob("calculators/[a-z]*.py"))]
    only_say = ("_answers", "_words", "_plot")
    kept = [name for name in found if name not in NO_FORMULA and not name.endswith(only_say)]
    kept = [name for name in kept if mutants_of(name)]
    return [name for name in kept if name in named] if named else kept


def tests_of(module: str) -> list[str]:
    """The test files that import the module or run the calculator; the table of cases if none."""
    words = {f"underhoist_calculators.{module} import"}
    if module.startswith("calculators."):
        words.add(f'"{module.removeprefix("calculators.").replace("_", "-")}"')
    files = (file for file in sorted(TESTS.glob("test_*.py")) if file.name not in SLOW)
    texts = ((file, file.read_text(encoding="utf-8")) for file in files)
    found = [str(file) for file, text in texts if any(word in text for word in words)]
    cases = str(TESTS / "test_door.py")
    return [*found, cases] if module.startswith("calculators.") else found or [cases]


def mutants_of(module: str) -> list[Mutant]:
    """Every change of the module, shuffled the same way each time."""
    changer = Changer()
    changer.visit(ast.parse(file_of(module).read_text(encoding="utf-8")))
    found = [Mutant(module, i, line, said) for i, (line, said) in enumerate(changer.places)]
    random.Random(module).shuffle(found)  # noqa: S311 - an order, not a secret
    return found


def outcome(module: str, mutant: Mutant | None, limit: int) -> str:
    """Run the tests in a fork: "noticed", "hung", or "survived" where all of them pass."""
    child = os.fork()
    if child == 0:
        signal.alarm(limit)
        quiet = os.open(os.devnull, os.O_WRONLY)
        os.dup2(quiet, 1)
        os.dup2(quiet, 2)
        if mutant is not None:
            sys.meta_path.insert(0, MutantFinder(mutant))
        options = ["-x", "-q", "-p", "no:cacheprovider", "--assert=plain", "--hypothesis-seed=0"]
        os._exit(int(pytest.main([*options, *tests_of(module)])))
    status = os.waitpid(child, 0)[1]
    if os.WIFSIGNALED(status):
        return "hung"
    return "survived" if os.WEXITSTATUS(status) == 0 else "noticed"


def in_turn(modules: list[str]) -> Iterator[Mutant]:
    """One mutant of each module after the other."""
    for row in zip_longest(*(mutants_of(module) for module in modules)):
        yield from filter(None, row)


def sums(modules: list[str], found: dict[Mutant, str]) -> list[Sums]:
    """Count the outcomes of each module."""
    said = {module: [r for mutant, r in found.items() if mutant.module == module]
            for module in modules}  # fmt: skip
    return [
        Sums(module, len(mutants_of(module)), len(each), each.count("survived"))
        for module, each in said.items()
    ]


def survivors(found: dict[Mutant, str]) -> list[Survivor]:
    """Every change that no test noticed, with the line where it stands."""
    lines = {mutant.module: file_of(mutant.module).read_text(encoding="utf-8").splitlines()
             for mutant in found}  # fmt: skip
    return sorted(
        Survivor(each.module, each.line, each.change, lines[each.module][each.line - 1].strip())
        for each, result in found.items()
        if result == "survived"
    )


def main(seconds: float, named: list[str]) -> int:
    """Try as many changes as the time allows; 1 where tests fail without any change."""
    import hypothesis  # noqa: F401, PLC0415 - loaded once, before the forks
    import pint  # noqa: F401, PLC0415
    import scipy.optimize  # noqa: PLC0415
    import scipy.stats  # noqa: F401, PLC0415

    end = time.monotonic() + seconds
    limits: dict[str, int] = {}
    for module in formula_modules(named):
        start = time.monotonic()
        if outcome(module, None, 120) == "survived":
            limits[module] = 10 + int(5 * (time.monotonic() - start))
    found: dict[Mutant, str] = {}
    for mutant in in_turn(list(limits)):
        if time.monotonic() > end:
            break
        found[mutant] = outcome(mutant.module, mutant, limits[mutant.module])
    left_out = [module for module in formula_modules(named) if module not in limits]
    text = page(sums(list(limits), found), survivors(found), left_out)
    print(text)
    if not named:
        RESULT.parent.mkdir(exist_ok=True)
        RESULT.write_text(text, encoding="utf-8")
        told(found)
    return 1 if left_out else 0


def told(found: dict[Mutant, str]) -> None:
    """Put the share of changes that tests notice into the table of all benchmarks."""
    from table import Row, enter  # noqa: PLC0415 - it stands beside this script

    noticed = 100 * sum(result != "survived" for result in found.values()) / max(len(found), 1)
    unknown = sum(each.why == "not looked into yet" for each in survivors(found))
    words = f"changes of a formula that a test notices, of {len(found):,} tried"
    enter("mutation", [
        Row(what=words, ours=noticed, unit="%"),
        Row(what="changes that survive and are not yet explained", ours=unknown, unit=""),
    ])  # fmt: skip


if __name__ == "__main__":
    words = sys.argv[1:]
    limit = float(words.pop(0)) if words and words[0].replace(".", "").isdigit() else SECONDS
    with tempfile.TemporaryDirectory() as scratch:
        os.environ["HYPOTHESIS_STORAGE_DIRECTORY"] = scratch
        raise SystemExit(main(limit, words))
