// One request to the shop's server, and its answer as plain data.
//
// The manual makes no request to another origin. This is the one exception, made by a person who has
// entered the server's address on this phone. It goes to that origin and no other: redirects are
// refused, cookies are never sent, and the user and password travel in a header, not in an address.
// A content security policy must let it through (connect-src).

import { ExchangeTrouble, troubleOfStatus } from "./trouble.js";

/**
 * @typedef {object} Shop
 * @property {string} address of the server, without a slash at its end
 * @property {string} database
 * @property {string} user "" where the server asks for none
 * @property {string} password
 */

/**
 * @typedef {object} Request
 * @property {string} [method]
 * @property {string} path below the database, such as "_changes?limit=25"; "" for the database itself
 * @property {unknown} [body] sent as JSON
 * @property {AbortSignal} [signal]
 */

/** Bytes of an answer that are read; a batch or a photo is far smaller. */
export const LARGEST_ANSWER = 16_000_000;

const SILENCE = 20_000; // ms without a byte of an answer
const SENDING = 60_000; // ms until the answer begins; what was sent is on its way meanwhile

/**
 * @param {Shop} shop
 * @param {Request} request
 * @returns {Promise<any>}
 * @throws {ExchangeTrouble}
 */
export async function ask(shop, { method = "GET", path, body, signal }) {
  const stop = new AbortController();
  const leave = () => stop.abort();
  if (signal?.aborted) leave();
  signal?.addEventListener("abort", leave);
  let timer = setTimeout(leave, SENDING);
  const heard = () => {
    clearTimeout(timer);
    timer = setTimeout(leave, SILENCE);
  };
  try {
    const database = `${shop.address}/${encodeURIComponent(shop.database)}`;
    const answer = await send(path === "" ? database : `${database}/${path}`, {
      method,
      headers: headersFor(shop, body),
      body: body === undefined ? undefined : JSON.stringify(body),
      signal: stop.signal,
    });
    heard();
    return await contentOf(answer, heard);
  } catch (error) {
    if (error instanceof ExchangeTrouble) throw error;
    throw new ExchangeTrouble(stop.signal.aborted ? "slow" : await whyNot(shop));
  } finally {
    clearTimeout(timer);
    signal?.removeEventListener("abort", leave);
  }
}

/**
 * @param {string} url
 * @param {RequestInit} request
 */
function send(url, request) {
  return fetch(url, {
    ...request,
    mode: "cors",
    credentials: "omit",
    redirect: "error",
    cache: "no-store",
    referrerPolicy: "no-referrer",
  });
}

/**
 * @param {Shop} shop
 * @param {unknown} body
 * @returns {Record<string, string>}
 */
function headersFor({ user, password }, body) {
  const letters = Array.from(new TextEncoder().encode(`${user}:${password}`), (byte) => String.fromCharCode(byte));
  return {
    Accept: "application/json",
    ...(body === undefined ? {} : { "Content-Type": "application/json" }),
    ...(user === "" ? {} : { Authorization: `Basic ${btoa(letters.join(""))}` }),
  };
}

/**
 * @param {Response} answer
 * @param {() => void} heard called with every piece
 */
async function contentOf(answer, heard) {
  const text = await textOf(answer, heard);
  const looksLikePage = /^\s*</.test(text);
  const trouble = troubleOfStatus(answer.status, answer.headers.get("Retry-After"));
  if (trouble) throw trouble.code === "missing" && looksLikePage ? new ExchangeTrouble("foreign") : trouble;
  if (looksLikePage) throw new ExchangeTrouble("portal");
  try {
    return JSON.parse(text);
  } catch {
    throw new ExchangeTrouble("half");
  }
}

/**
 * @param {Response} answer
 * @param {() => void} heard
 */
async function textOf(answer, heard) {
  const reader = answer.body?.getReader();
  if (!reader) return "";
  const decoder = new TextDecoder();
  let text = "";
  let bytes = 0;
  try {
    for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
      heard();
      bytes += piece.value.length;
      if (bytes > LARGEST_ANSWER) {
        void reader.cancel();
        throw new TooLarge();
      }
      text += decoder.decode(piece.value, { stream: true });
    }
  } catch (error) {
    if (error instanceof TooLarge || (error instanceof DOMException && error.name === "AbortError")) throw error;
    throw new ExchangeTrouble("half");
  }
  return text + decoder.decode();
}

/** The server's answer is larger than anything that belongs to a card. */
export class TooLarge extends ExchangeTrouble {
  constructor() {
    super("refused");
    this.message = "The server’s answer is larger than any entry of a card.";
  }
}

/**
 * Why a request got no answer that the page may read. The browser does not tell; a request without a
 * name, a password or anything else of the shop's finds out whether somebody is there at all.
 *
 * @param {Shop} shop
 * @returns {Promise<"offline"|"unreachable"|"closed">}
 */
async function whyNot({ address }) {
  if (globalThis.navigator?.onLine === false) return "offline";
  try {
    const signal = AbortSignal.timeout(5000);
    await fetch(`${new URL(address).origin}/`, { mode: "no-cors", credentials: "omit", cache: "no-store", signal });
    return globalThis.document ? "closed" : "unreachable"; // only a page can be shut out
  } catch {
    return "unreachable";
  }
}
