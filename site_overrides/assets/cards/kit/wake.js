// Keeps the screen on while a card is open, where the browser can.

/** @type {WakeLockSentinel|null} */
let lock = null;
let wanted = false;

/** @param {boolean} on */
export function keepAwake(on) {
  wanted = on;
  if (on) void ask();
  else void lock?.release().catch(() => {});
}

async function ask() {
  if (!wanted || document.visibilityState !== "visible") return;
  if (lock && !lock.released) return;
  // A low battery or an old browser refuses; the card works without.
  lock = (await navigator.wakeLock?.request("screen").catch(() => null)) ?? null;
}

document.addEventListener("visibilitychange", () => void ask());
