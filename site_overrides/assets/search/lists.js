// The index as it lies in the file: for each term the places that hold it, as bytes that are read when asked for.

/**
 * What src/underhoist/browser/search_lists.mjs writes. `average` is the length of each field in terms, `terms` stand
 * in order, a space between two, and so do their lists, in base 64.
 * @typedef {{places: number, average: number[], terms: string, lists: string, lengths: string}} Packed
 */

export const FIELDS = 4;

export class Lists {
  /** @param {Packed} packed */
  constructor({ lists, places }) {
    this.written = lists.split(" ");
    /** @type {Uint8Array[]} */
    this.opened = []; // each when it is first asked for
    /** @type {Uint8Array} */
    this.bytes = new Uint8Array();
    this.at = 0;
    /** What was read last: the places, how often each holds the term, and where each field's end. */
    this.places = new Uint32Array(FIELDS * places);
    this.times = new Uint16Array(FIELDS * places);
    this.ends = new Uint32Array(FIELDS);
  }

  /**
   * How many places hold a term, counted in each field.
   * @param {number} term Its number.
   */
  count(term) {
    this.#open(term);
    let sum = 0;
    for (let field = 0; field < FIELDS; field++) sum += this.#next();
    return sum;
  }

  /**
   * Reads the places of a term, those of the first field first.
   * @param {number} term Its number.
   * @param {number} most A field that would go beyond so many places is left, with those after it.
   * @returns {number} How many were read.
   */
  read(term, most) {
    this.#open(term);
    for (let field = 0; field < FIELDS; field++) this.ends[field] = (this.ends[field - 1] ?? 0) + this.#next();
    let read = 0;
    for (let field = 0; field < FIELDS; field++) {
      if (this.ends[field] > most) this.ends.fill(read, field);
      read = this.#field(read, this.ends[field]);
    }
    return read;
  }

  /** @param {number} term */
  #open(term) {
    this.bytes = this.opened[term] ??= bytesOf(this.written[term]);
    this.at = 0;
  }

  /** @param {number} from @param {number} end */
  #field(from, end) {
    let place = 0;
    for (let i = from; i < end; i++) {
      const step = this.#next();
      place += step >>> 1;
      this.places[i] = place;
      this.times[i] = step & 1 ? this.#next() : 1;
    }
    return end;
  }

  #next() {
    let byte = this.bytes[this.at++];
    let value = byte & 127;
    for (let shift = 7; byte > 127; shift += 7) {
      byte = this.bytes[this.at++];
      value |= (byte & 127) << shift;
    }
    return value;
  }
}

/**
 * The numbers of a text, as the lists write them.
 * @param {string} text In base 64.
 */
export function numbersOf(text) {
  const numbers = [];
  let value = 0;
  let shift = 0;
  for (const byte of bytesOf(text)) {
    value |= (byte & 127) << shift;
    shift += 7;
    if (byte > 127) continue;
    numbers.push(value);
    value = shift = 0;
  }
  return numbers;
}

/** @param {string} text In base 64. */
function bytesOf(text) {
  const letters = atob(text);
  const bytes = new Uint8Array(letters.length);
  for (let i = 0; i < bytes.length; i++) bytes[i] = letters.charCodeAt(i);
  return bytes;
}
