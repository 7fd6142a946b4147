// Packs what the index counted into bytes: a phone reads them as they are, without building a map of every place.
// Each term's list stands by itself, so that a changed step leaves most of the file as it was: an update is small.

/** @typedef {import("../../../site_overrides/assets/search/lists.js").Packed} Packed */

/**
 * @param {import("minisearch").AsPlainObject} counted
 * @returns {Packed}
 */
export function packed({ index, fieldIds, fieldLength, averageFieldLength, documentCount }) {
  const fields = Object.values(fieldIds);
  const lists = index.map(([term, held]) => [term, textOf(fields.map((field) => placesOf(held[field] ?? {})))]);
  const lengths = Array.from({ length: documentCount }, (_, place) => fields.map((field) => fieldLength[place]?.[field] ?? 0));
  const average = fields.map((field) => averageFieldLength[field] ?? 0);
  return written(/** @type {[string, string][]} */ (lists), lengths, average);
}

/**
 * @param {[string, string][]} lists Each term with its list as text, in any order.
 * @param {number[][]} lengths By place and field.
 * @param {number[]} average
 * @returns {Packed}
 */
export function written(lists, lengths, average) {
  const ordered = lists.toSorted(([a], [b]) => (a < b ? -1 : 1));
  return {
    places: lengths.length,
    average,
    terms: ordered.map(([term]) => term).join(" "),
    lists: ordered.map(([, text]) => text).join(" "),
    lengths: Buffer.from(lengths.flat().flatMap(numberOf)).toString("base64"),
  };
}

/**
 * One field's places in order, each with how often it holds the term.
 * @param {Record<string, number>} held
 */
function placesOf(held) {
  const places = Object.entries(held).map(([name, times]) => /** @type {[number, number]} */ ([Number(name), times]));
  return places.toSorted(([a], [b]) => a - b);
}

/**
 * First how many places hold the term in each field, then the places field by field: how far on the next place is,
 * doubled, with one more where how often it is held there follows.
 * @param {[number, number][][]} fields
 */
export function textOf(fields) {
  const bytes = fields.flatMap(({ length }) => numberOf(length));
  for (const held of fields) {
    let last = 0;
    for (const [place, times] of held) {
      const step = place - last;
      bytes.push(...(times === 1 ? numberOf(2 * step) : [...numberOf(2 * step + 1), ...numberOf(times)]));
      last = place;
    }
  }
  return Buffer.from(bytes).toString("base64");
}

/**
 * What `textOf` made the text from.
 * @param {string} text
 * @param {number} count How many fields there are.
 * @returns {[number, number][][]}
 */
export function fieldsOf(text, count) {
  const numbers = numbersOf(text);
  let at = count;
  return numbers.slice(0, count).map((length) => {
    let place = 0;
    return Array.from({ length }, () => {
      const step = numbers[at++] ?? 0;
      place += step >> 1;
      return [place, step & 1 ? (numbers[at++] ?? 0) : 1];
    });
  });
}

/**
 * The lengths of all fields, place after place.
 * @param {Packed} file
 */
export function lengthsOf({ lengths }) {
  return numbersOf(lengths);
}

/** @param {string} text */
function numbersOf(text) {
  /** @type {number[]} */
  const numbers = [];
  let value = 0;
  let unit = 1;
  for (const byte of Buffer.from(text, "base64")) {
    value += (byte & 127) * unit;
    unit *= 128;
    if (byte < 128) {
      numbers.push(value);
      value = 0;
      unit = 1;
    }
  }
  return numbers;
}

/**
 * Seven bits a byte, the low ones first; the eighth says that more follow.
 * @param {number} value
 */
function numberOf(value) {
  const bytes = [];
  for (; value > 127; value = Math.floor(value / 128)) bytes.push((value % 128) + 128);
  return [...bytes, value];
}
