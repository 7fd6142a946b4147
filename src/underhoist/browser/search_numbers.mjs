// Numbers as text: seven bits a byte, the low ones first; the eighth says that more follow.

/** Writes numbers one after the other. */
export class Writer {
  /** @type {number[]} */
  #bytes = [];

  /** @param {number} number */
  put(number) {
    let rest = number;
    for (; rest > 127; rest = Math.floor(rest / 128)) this.#bytes.push((rest % 128) + 128);
    this.#bytes.push(rest);
  }

  get text() {
    return Buffer.from(this.#bytes).toString("base64");
  }
}

/** Reads them back. */
export class Reader {
  #at = 0;
  #bytes;

  /** @param {string} text */
  constructor(text) {
    this.#bytes = Buffer.from(text, "base64");
  }

  get isAtEnd() {
    return this.#at >= this.#bytes.length;
  }

  next() {
    let number = 0;
    for (let unit = 1; ; unit *= 128) {
      const byte = this.#bytes[this.#at++] ?? 0;
      number += (byte & 127) * unit;
      if (byte < 128) return number;
    }
  }
}
