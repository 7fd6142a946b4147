/** The calculators' thread in a manual's file: the site's own, on what the file holds. */
import "../phone/calculator-worker.js";
