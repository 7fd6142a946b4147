// What the parts of a question give to each page and to each of its places.

const ASIDE = 0.1;
const A_WORD = /(?:^|\n)word-/u; // its entry on the page of words: the sentence above the results leads there

/** Which page each place belongs to. */
export class Places {
  /** @param {import("./answer.js").Stored} stored */
  constructor({ places, spots }) {
    this.first = new Uint32Array(places.length + 1);
    places.forEach((count, page) => (this.first[page + 1] = this.first[page] + count));
    this.page = new Uint32Array(this.first[places.length]);
    this.aside = new Uint8Array(this.page.length);
    places.forEach((_, page) => {
      this.page.fill(page, this.first[page], this.first[page + 1]);
      if (!A_WORD.test(spots[page])) return;
      spots[page].split("\n").forEach((line, i) => (this.aside[this.first[page] + 1 + i] = Number(A_WORD.test(line))));
    });
  }
}

export class Tally {
  #places;
  /** What each place has; of each page, the sum of its best places, how many parts it holds, its best of this part. */
  #spots;
  #scores;
  #held;
  #best;

  /** @param {Places} places */
  constructor(places) {
    this.#places = places;
    this.#spots = new Float64Array(places.page.length);
    this.#scores = new Float64Array(places.first.length - 1);
    this.#held = new Uint8Array(this.#scores.length);
    this.#best = new Float64Array(this.#scores.length);
  }

  /**
   * Takes what the places give for one more part of the question.
   * @param {Float64Array} scores
   */
  add(scores) {
    const { page, aside } = this.#places;
    this.#best.fill(0);
    for (let place = 0; place < scores.length; place++) {
      if (scores[place] === 0) continue;
      const score = aside[place] ? scores[place] * ASIDE : scores[place];
      this.#spots[place] += score;
      if (score > this.#best[page[place]]) this.#best[page[place]] = score;
    }
    this.#best.forEach((score, number) => {
      if (score === 0) return;
      this.#scores[number] += score;
      this.#held[number] += 1;
    });
  }

  /** The pages that hold any part. */
  pages() {
    return [...this.#held.keys()].filter((page) => this.#held[page] > 0);
  }

  /** How many parts the best pages hold. */
  most() {
    return this.#held.reduce((most, held) => Math.max(most, held), 0);
  }

  /** @param {number} page */
  held(page) {
    return this.#held[page];
  }

  /**
   * Each part where the page answers it best, and once more the place that answers most of them.
   * @param {number} page
   */
  score(page) {
    const { first } = this.#places;
    let together = 0;
    for (let place = first[page]; place < first[page + 1]; place++) together = Math.max(together, this.#spots[place]);
    return this.#scores[page] + together;
  }

  /**
   * The places of a page that answer, the best first: 0 is the page itself.
   * @param {number} page
   */
  spots(page) {
    const own = this.#spots.subarray(this.#places.first[page], this.#places.first[page + 1]);
    return [...own.keys()].filter((spot) => own[spot] > 0).sort((a, b) => own[b] - own[a]);
  }
}
