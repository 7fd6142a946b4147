// One text for one value, so that a hash made on one phone can be checked on another.

/**
 * JSON with the keys in order and no spaces. Lists keep their order.
 *
 * @param {unknown} value plain data
 * @returns {string}
 */
export function canonical(value) {
  return JSON.stringify(value, (_key, part) => {
    if (part === null || typeof part !== "object" || Array.isArray(part)) return part;
    return Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}

/**
 * SHA-256 of the canonical text, as 64 hexadecimal digits.
 *
 * @param {unknown} value
 * @returns {Promise<string>}
 */
export async function hashOf(value) {
  const bytes = new TextEncoder().encode(canonical(value));
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
