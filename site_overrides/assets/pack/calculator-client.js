/** The calculators' thread of a manual in one file: its program and all it reads are in the file. */
import { CalculatorClient } from "../phone/calculator-client.js";
import { part, partNames } from "./parts.js";

/** A worker out of the file. What it reads follows: it waits for that. */
function fromFile() {
  const program = document.getElementById("worker")?.textContent ?? "";
  const url = URL.createObjectURL(new Blob([program], { type: "text/javascript" }));
  const worker = new Worker(url, { name: "calculators" });
  void sendParts(worker);
  return worker;
}

/** @param {Worker} worker */
async function sendParts(worker) {
  try {
    const parts = await Promise.all(partNames().map(async (name) => [name, await part(name)]));
    worker.postMessage({ parts: new Map(/** @type {[string, Blob][]} */ (parts)) });
  } catch (error) {
    worker.postMessage({ parts: error instanceof Error ? error : new Error(String(error)) });
  }
}

export const calculators = new CalculatorClient(fromFile);
