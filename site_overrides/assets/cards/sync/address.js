// Where the shop's server is, as a person types it.

/** Names of this very device: the one case where an address without https is safe. The page's policy
 *  lets them through (connect-src); it has no way to name [::1]. */
const HERE = new Set(["localhost", "127.0.0.1"]);

/** What the CouchDB protocol lets a database be called. */
const DATABASE = /^[a-z][a-z0-9_$()+/-]{0,100}$/;

/**
 * The address without a slash at its end, or what is wrong with it and what would be right.
 *
 * @param {string} entry
 * @returns {{address: string} | {wrong: string}}
 */
export function readAddress(entry) {
  const typed = entry.trim();
  const url = URL.canParse(typed) ? new URL(typed) : null;
  if (!url || !/^https?:$/.test(url.protocol)) {
    return { wrong: `“${typed}” is no address of a server. Write it like https://records.example.com:6984.` };
  }
  if (url.username || url.password) {
    return { wrong: "The address has a user or a password in it. Leave them out and enter them below." };
  }
  if (url.protocol === "http:" && !HERE.has(url.hostname)) {
    return { wrong: "The address begins with http, so anybody on the way could read the cards. It must begin with https." };
  }
  if (url.search || url.hash) {
    return { wrong: `Leave out what follows “${url.search ? "?" : "#"}”.` };
  }
  return { address: `${url.origin}${url.pathname}`.replace(/\/+$/, "") };
}

/**
 * Why an entry cannot be a server's address, or "".
 *
 * @param {string} entry
 */
export function wrongAddress(entry) {
  const read = readAddress(entry);
  return "wrong" in read ? read.wrong : "";
}

/**
 * Why an entry cannot be a database's name, or "".
 *
 * @param {string} entry
 */
export function wrongDatabase(entry) {
  return DATABASE.test(entry)
    ? ""
    : `“${entry}” cannot be a database. Its name begins with a small letter; small letters, figures and _ - + ( ) $ / may follow.`;
}
