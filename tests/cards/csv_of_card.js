// Writes the readings of a small card as CSV to standard output.

import { readingsCsv } from "../../site_overrides/assets/cards/out/csv.js";
import { cardWith, litres } from "./filled.js";
import { TURNS } from "./helpers.js";

const half = { ...TURNS, id: "half", name: "Line, \"cold\"", low: -0.5, high: null };
const { read, tick, card } = await cardWith([{ readings: [TURNS, half] }, { readings: [litres("in", "in")] }]);
await read(1, TURNS.id, "3", "=HYPERLINK(\"there\")\nand more");
await read(1, "half", "−1 1/2", "@cold");
await read(2, "in", "");
await tick(1);
process.stdout.write(readingsCsv(card()));
