// Why something from outside is not let in: where it is wrong, and what is wrong there.

export class Refusal extends Error {
  /**
   * @param {string} where "" for the file as a whole
   * @param {string} wrong a sentence
   */
  constructor(where, wrong) {
    super(where ? `${where}: ${wrong}` : wrong);
    this.name = "Refusal";
  }
}

/**
 * What stands there, short enough to be shown.
 *
 * @param {unknown} value
 */
export function shown(value) {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of values";
  const text = String(value);
  const short = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  return typeof value === "string" ? `“${short}”` : short;
}
