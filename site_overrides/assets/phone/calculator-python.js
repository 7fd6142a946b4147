/** The calculators in Python, ready to run. */
import { restored, startedAnew } from "./boot.js";

/**
 * Answers a question: a calculator with its entries, or a complaint with the results of its checks.
 * @typedef {{name: string, entries: Record<string, string>}} CalculatorQuestion
 * @typedef {{complaint: object, results: [string, string][], most: number}} FaultQuestion
 * @typedef {(question: string) => string} Answer JSON gives JSON
 */

// An image repeats the random numbers of the build, hence the new seed.
const DOOR = `
import json, random
from underhoist_calculators import door
from underhoist_calculators.fault_finding import door as fault_door

random.seed()

def answer(question):
    asked = json.loads(question)
    return json.dumps((fault_door if "complaint" in asked else door).run(**asked))

answer
`;

/**
 * With the memory image, in which the calculators are imported already.
 * @returns {Promise<Answer>}
 */
export const restore = async () => (await restored()).runPython(DOOR);

/**
 * Where the image does not come back: Python from nothing.
 * @returns {Promise<Answer>}
 */
export const startAnew = async () => (await startedAnew()).runPython(DOOR);
