// What can go wrong between a phone and the shop's server, in words that tell what to do about it.

/**
 * @typedef {"offline"|"unreachable"|"closed"|"slow"|"half"|"portal"|"foreign"|"password"|"forbidden"|"missing"
 *   |"large"|"busy"|"server"|"refused"} TroubleCode
 */

const WORDS = /** @type {Record<TroubleCode, string>} */ ({
  offline: "This phone has no network.",
  unreachable:
    "The server does not answer. Check that this phone is on the shop’s network, that its date is right, and that the address opens in the browser without a warning.",
  closed:
    "The server answers, but does not let this manual in. Whoever looks after it must allow the origin ORIGIN in its CORS settings.",
  slow: "The server takes too long to answer. Go nearer to the access point, or ask whoever looks after the server.",
  half: "The server’s answer was cut off on its way. Nothing of it was taken.",
  portal:
    "Something else answered in the server’s place, such as the sign-in page of a Wi-Fi. Sign in there with the browser, or check the address.",
  foreign: "A server answers at this address, but it does not speak the CouchDB protocol. Check the address and the database.",
  password: "The server does not take this user and password. Enter them again.",
  forbidden: "This user may not use this database. Whoever looks after the server must make it a member.",
  missing: "There is no such database on the server. Check its name, or have it made.",
  large: "The server takes no entry of this size. Whoever looks after it must raise its largest request and document.",
  busy: "The server has too much to do.",
  server: "The server has a fault of its own. Whoever looks after it finds it in the server’s log.",
  refused: "The server refused the request.",
});

/** Time helps, or a better signal; anything else waits for a person. @type {Set<TroubleCode>} */
const PASSING = new Set(["offline", "unreachable", "slow", "half", "portal", "busy", "server"]);

/** An exchange did not work; its message says what to do. */
export class ExchangeTrouble extends Error {
  /**
   * @param {TroubleCode} code
   * @param {{wait?: number, status?: number}} [more] ms that the server asks to wait; its status
   */
  constructor(code, { wait = 0, status = 0 } = {}) {
    const words = WORDS[code].replace("ORIGIN", globalThis.location?.origin ?? "of the manual");
    super(status > 0 && (code === "server" || code === "refused") ? `${words} (It said ${status}.)` : words);
    this.name = "ExchangeTrouble";
    this.code = code;
    this.wait = wait;
    this.status = status;
  }

  /** Whether trying again later may help without anybody doing anything. */
  get passes() {
    return PASSING.has(this.code);
  }
}

/**
 * The trouble that a status of the server means, or null where it means none.
 *
 * @param {number} status
 * @param {string|null} [retryAfter] the header's text
 * @returns {ExchangeTrouble|null}
 */
export function troubleOfStatus(status, retryAfter = null) {
  if (status >= 200 && status < 300) return null;
  const named = /** @type {Record<number, TroubleCode>} */ ({
    401: "password", 403: "forbidden", 404: "missing", 408: "slow", 413: "large", 429: "busy",
  }); // prettier-ignore
  const code = named[status] ?? (status >= 500 ? "server" : "refused");
  return new ExchangeTrouble(code, { status, wait: waitOf(retryAfter) });
}

const LONGEST_WAIT = 3_600_000; // ms; a server's word, believed for an hour at most

/** @param {string|null} retryAfter seconds, or a date */
function waitOf(retryAfter) {
  if (retryAfter === null) return 0;
  const seconds = /^\d+$/.test(retryAfter) ? Number(retryAfter) : (Date.parse(retryAfter) - Date.now()) / 1000;
  return Number.isFinite(seconds) ? Math.min(Math.max(seconds * 1000, 0), LONGEST_WAIT) : 0;
}
