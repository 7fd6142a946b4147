// Writes the readings and results of a small card as CSV to standard output.

import { countedResults } from "../../site_overrides/assets/cards/fault/counted.js";
import { readingsCsv } from "../../site_overrides/assets/cards/out/csv.js";
import { cardWith, litres } from "./filled.js";
import { TURNS } from "./helpers.js";

const half = { ...TURNS, id: "half", name: "Line, \"cold\"", low: -0.5, high: null };
const { phone, read, tick, card } = await cardWith([{ readings: [TURNS, half] }, { readings: [litres("in", "in")] }]);
await read(1, TURNS.id, "3", "=HYPERLINK(\"there\")\nand more");
await read(1, "half", "−1 1/2", "@cold");
await read(2, "in", "");
await tick(1);
await phone.does("RB", "complaint", { fault: "late-shifts", complaint: "=It hangs on" });
await phone.does("SL", "result", { fault: "late-shifts", check: "hose", result: "bad", name: "The hose", minutes: 5, note: "+split" });
const answer = { calculator: "shift-check", pattern: "late-light", rivals: ["late-all"], name: "Shift check", summary: "Late.", from: "/c" };
await phone.does("KM", "calculation", answer);
process.stdout.write(readingsCsv(card(), (one, fault) => countedResults(one, fault, null)));
