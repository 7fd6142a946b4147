// Who is who on a card.

/**
 * Whether two entries of initials mean the same person.
 *
 * @param {string} a
 * @param {string} b
 */
export function samePerson(a, b) {
  const plain = (/** @type {string} */ name) => name.toUpperCase().replace(/[^\p{L}\p{N}]/gu, "");
  return plain(a) === plain(b);
}
