// @ts-check
/** @typedef {import("./types.js").Change} Change */
/** @typedef {import("./api.js").Sorry} Sorry */

/**
 * A file that is changed in steps. Each step is on disk before the page says so, and can be taken back, across reloads too. What
 * the desk answers, and what comes of it on the page, is for those who extend this.
 */
export class Steps extends EventTarget {
  #at;

  /** @param {string} at Where the desk hears of this file. */
  constructor(at) {
    super();
    this.#at = at;
  }

  /**
   * Sends a step and waits until it is on disk.
   * @param {string} path
   * @param {object} body
   * @returns {Promise<Sorry | null>} Why it was not made.
   */
  step(path, body) {
    throw new Error(`no step at ${path}: ${body}`);
  }

  /**
   * Changes values.
   * @param {Change[]} changes
   * @param {string} words What is done, for undo.
   * @param {string} [on] The version that the maker saw when the change was begun; the present one if it is not told.
   */
  edit(changes, words, on) {
    return this.step(`${this.#at}/edit`, { changes, words, ...(on && { on }) });
  }

  /** Writes the whole file. @param {string} text @param {string} words @param {string} on The version it was begun on. */
  write(text, words, on) {
    return this.step(`${this.#at}/text`, { text, words, on });
  }

  undo() {
    return this.step(`${this.#at}/undo`, {});
  }

  redo() {
    return this.step(`${this.#at}/redo`, {});
  }

  /** Takes a version that was set aside, or lets it go. @param {string} kept @param {boolean} take */
  settle(kept, take) {
    return this.step(`${this.#at}/settle`, { kept, take });
  }
}
