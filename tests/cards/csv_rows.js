// Writes the rows on standard input, a JSON list of lists of texts, to standard output as CSV.

import { text } from "node:stream/consumers";

import { csv } from "../../site_overrides/assets/cards/out/csv.js";

process.stdout.write(csv(JSON.parse(await text(process.stdin))));
