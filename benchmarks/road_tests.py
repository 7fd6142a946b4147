"""How often shift-check names the cause of made-up road tests.

    python benchmarks/road_tests.py [tests, 1,000 if not given]

Writes benchmarks/results/road_tests.json and .md, and the manual's page with the same table. The
draw is repeatable.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tests" / "calculators"), str(ROOT / "benchmarks")]

from road_tests_page import page, table  # noqa: E402
from test_simulated_road_tests import CAUSES, simulate  # noqa: E402

READINGS = (7, 4, 2)
TESTS = 1000
RESULTS = ROOT / "benchmarks" / "results"
PAGE = ROOT / "procedures" / "road-tests-judged.md"


def main() -> None:
    """Simulate, write and show."""
    tests = int(sys.argv[1]) if len(sys.argv) > 1 else TESTS
    counted = [
        {"cause": cause, "readings": readings, **simulate(cause, tests, readings)}
        for cause in CAUSES
        for readings in READINGS
    ]
    data = {"tests": tests, "counted": counted}
    RESULTS.mkdir(exist_ok=True)
    text = json.dumps(data, indent=1) + "\n"
    (RESULTS / "road_tests.json").write_text(text, encoding="utf-8")
    (RESULTS / "road_tests.md").write_text(f"# Made-up road tests judged\n\n{table(data)}")
    PAGE.write_text(page(data), encoding="utf-8")
    print(table(data))


if __name__ == "__main__":
    main()
