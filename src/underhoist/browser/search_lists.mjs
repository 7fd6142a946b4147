// Packs what the index counted into bytes: a phone reads them as they are, without building a map of every place.
// Each term's list stands by itself, so that a changed step leaves most of the file as it was: an update is small.

/**
 * @param {import("minisearch").AsPlainObject} counted
 * @returns {import("../../../site_overrides/assets/search/lists.js").Packed}
 */
export function packed({ index, fieldIds, fieldLength, averageFieldLength, documentCount }) {
  const fields = Object.values(fieldIds);
  const entries = index.toSorted(([a], [b]) => (a < b ? -1 : 1));
  const lists = entries.map(([, held]) => bytesOf(fields.map((field) => Object.entries(held[field] ?? {}))));
  const lengths = Array.from({ length: documentCount }, (_, place) => fields.map((field) => fieldLength[place]?.[field] ?? 0));
  return {
    places: documentCount,
    average: fields.map((field) => averageFieldLength[field] ?? 0),
    terms: entries.map(([term]) => term).join(" "),
    lists: lists.map((bytes) => Buffer.from(bytes).toString("base64")).join(" "),
    lengths: Buffer.from(lengths.flat().flatMap(numberOf)).toString("base64"),
  };
}

/**
 * First how many places hold the term in each field, then the places field by field: how far on the next place is,
 * doubled, with one more where how often it is held there follows.
 * @param {[string, number][][]} fields
 */
function bytesOf(fields) {
  const bytes = fields.flatMap(({ length }) => numberOf(length));
  for (const held of fields) {
    let last = 0;
    for (const [name, times] of held.toSorted(([a], [b]) => Number(a) - Number(b))) {
      const step = Number(name) - last;
      bytes.push(...(times === 1 ? numberOf(2 * step) : [...numberOf(2 * step + 1), ...numberOf(times)]));
      last = Number(name);
    }
  }
  return bytes;
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
