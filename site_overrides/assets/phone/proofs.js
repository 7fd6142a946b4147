/** Proves what Python is brought up from while it comes up: a damaged interpreter may never say that it failed. */

/** Proofs, as they are begun. */
export class Proofs {
  /** @type {Promise<void>[]} */
  #begun = [];
  /** @type {(reason: unknown) => void} */
  #tell = () => {};
  /** @type {Promise<never>} */
  #failed = new Promise((_, reject) => (this.#tell = reject));

  constructor() {
    this.#failed.catch(() => {}); // Reported where it is waited for.
  }

  /** @param {Promise<void>} proof */
  add(proof) {
    proof.catch(this.#tell);
    this.#begun.push(proof);
  }

  /**
   * What was begun, once every proof holds; the first proof that fails ends it.
   * @template T
   * @param {Promise<T>} begun
   * @returns {Promise<T>}
   */
  async hold(begun) {
    try {
      return await Promise.race([begun, this.#failed]);
    } finally {
      await Promise.all(this.#begun); // Where it failed, the reason may be one of these.
    }
  }
}
