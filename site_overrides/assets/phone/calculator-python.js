/** The calculators in Python, ready to run. */
import { restored, startedAnew } from "./boot.js";

/**
 * Runs one calculator: its name and its entries as JSON give the result as JSON.
 * @typedef {(name: string, entries: string) => string} RunCalculator
 */

// An image repeats the random numbers of the build, hence the new seed.
const DOOR = `
import json, random
from underhoist_calculators import door

random.seed()

def run(name, entries):
    return json.dumps(door.run(name, json.loads(entries)))

run
`;

/**
 * With the memory image, in which the calculators are imported already.
 * @returns {Promise<RunCalculator>}
 */
export const restore = async () => (await restored()).runPython(DOOR);

/**
 * Where the image does not come back: Python from nothing.
 * @returns {Promise<RunCalculator>}
 */
export const startAnew = async () => (await startedAnew()).runPython(DOOR);
