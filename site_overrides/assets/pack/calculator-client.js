/** The calculators' thread of a manual in one file: its program and all it reads are in the file. */
import { CalculatorClient } from "../phone/calculator-client.js";
import { partsOfPython } from "./parts.js";

/** A worker out of the file. What it reads follows, packed: unpacking would hold the page up. */
function fromFile() {
  const program = document.getElementById("worker")?.textContent ?? "";
  const url = URL.createObjectURL(new Blob([program], { type: "text/javascript" }));
  const worker = new Worker(url, { name: "calculators" });
  worker.postMessage({ parts: partsOfPython() });
  return worker;
}

export const calculators = new CalculatorClient(fromFile);
