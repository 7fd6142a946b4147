// One window writes on a draft at a time; another one is told, and can ask for it.

/** How long the window that writes has to store and let go, in ms. */
const PATIENCE = 3000;

const line = "BroadcastChannel" in globalThis ? new BroadcastChannel("underhoist-drafts") : null;

/** @param {string} id */
const lockName = (id) => `underhoist-draft ${id}`;

export class Turn {
  /**
   * @param {string} id the draft's
   * @param {() => Promise<void>} given stores what waits and stops writing: another window goes on
   */
  constructor(id, given) {
    this.id = id;
    this.given = given;
    /** @type {(() => void) | null} */
    this.letGo = null;
    this.asked = (/** @type {MessageEvent} */ { data }) => void (data === id && this.hand());
    line?.addEventListener("message", this.asked);
  }

  /** @returns {Promise<boolean>} whether this window may write; where there are no locks the store still watches */
  take() {
    return this.request({ ifAvailable: true });
  }

  /** Asks the window that writes to let go, and takes the draft from one that does not answer. */
  async demand() {
    line?.postMessage(this.id);
    const giveUp = AbortSignal.timeout(PATIENCE);
    return (await this.request({ signal: giveUp }).catch(() => false)) || this.request({ steal: true });
  }

  /** Ends it: the next window may write. */
  end() {
    line?.removeEventListener("message", this.asked);
    this.letGo?.();
    this.letGo = null;
  }

  /** @private */
  async hand() {
    if (!this.letGo) return;
    await this.given();
    this.letGo?.();
    this.letGo = null;
  }

  /**
   * @private
   * @param {LockOptions} options
   * @returns {Promise<boolean>}
   */
  request(options) {
    if (!navigator.locks) return Promise.resolve(true);
    return new Promise((done, fail) => {
      const held = navigator.locks.request(lockName(this.id), options, (lock) => {
        if (!lock) return done(false);
        done(true);
        return new Promise((release) => (this.letGo = () => release(undefined)));
      });
      // Rejects where the lock was not had in time, or was taken away.
      held.catch((error) => {
        if (this.letGo) void this.given();
        this.letGo = null;
        fail(error);
      });
    });
  }
}
