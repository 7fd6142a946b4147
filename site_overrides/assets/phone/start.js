/** Loaded by every page: starts what the page holds, then stores the manual on the phone. */
import { keepOffline } from "./offline-state.js";

const has = (/** @type {string} */ id) => document.getElementById(id) !== null;

if (has("calculator")) void import("./calculator.js");
if (has("cards")) void import("../cards/start.js");
if (has("stored")) void import("./stored.js");

void keepOffline();
