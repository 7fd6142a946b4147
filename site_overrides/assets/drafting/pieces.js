// What the buttons beside the text put in. No browser needed.

/**
 * A paragraph of a step: its indentation makes it belong to the step.
 *
 * @param {string} word such as Why
 */
export const paragraph = (word) => `    ${word}: `;

/**
 * A new step behind the cursor, numbered after the last one above it.
 *
 * @param {string} before the text before the cursor
 * @returns {string}
 */
export function nextStep(before) {
  const numbers = [...before.matchAll(/^ {0,3}(\d{1,6})\. /gm)];
  const last = Number(numbers.at(-1)?.[1] ?? 0);
  return `${last + 1}. `;
}

/**
 * A paragraph of its own: with an empty line before it, and after it if text follows.
 *
 * @param {string} before the text before the cursor
 * @param {string} after the text behind it
 * @param {string} piece
 * @returns {{before: string, piece: string, after: string}} what to put in, in three parts
 */
export function asParagraph(before, after, piece) {
  const gap = before === "" || before.endsWith("\n\n") ? "" : before.endsWith("\n") ? "\n" : "\n\n";
  return { before: gap, piece, after: after === "" || after.startsWith("\n") ? "" : "\n\n" };
}

/**
 * A reference to something of the manual; with words of the author's own where some are selected.
 *
 * @param {{scheme: string, id: string}} name
 * @param {string} selected
 */
export function reference({ scheme, id }, selected) {
  const words = selected.trim();
  return words && !/[[\]\n]/.test(words) ? `[${words}](${scheme}:${id})` : `<${scheme}:${id}>`;
}

/**
 * The names that hold every word that was looked for, in their order.
 *
 * @template {{scheme: string, id: string, title: string}} T
 * @param {T[]} names
 * @param {string} words
 * @param {string} scheme "" for all
 */
export function matching(names, words, scheme) {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return names.filter((name) => {
    const whole = `${name.scheme} ${name.id} ${name.title}`.toLowerCase();
    return (!scheme || name.scheme === scheme) && wanted.every((word) => whole.includes(word));
  });
}

/**
 * A file's name from a title: lower-case letters, digits and hyphens.
 *
 * @param {string} title
 */
export function fileName(title) {
  const plain = title.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").toLowerCase();
  return plain.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 60);
}

/**
 * Why a path cannot be that of a page, or "".
 *
 * @param {string} file
 */
export function wrongFile(file) {
  if (/^([a-z0-9]+(-[a-z0-9]+)*\/)*[a-z0-9]+(-[a-z0-9]+)*\.md$/.test(file)) return "";
  return `“${file}” is no name for a page. Write lower-case letters, digits and hyphens, folders with a slash, and .md at the end, such as kestrel-3/set-band.md.`;
}
