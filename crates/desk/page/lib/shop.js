// @ts-check
/**
 * The workshop file of the dial on the mat as the page knows it. The file on disk is the truth; this only follows it.
 *
 * Events: `told` (what the file holds now, and what the workshop has).
 */

import { ask, Sorry, tell } from "./api.js";
import { board } from "./board.js";
import { Steps } from "./steps.js";

/** @typedef {import("./types.js").Change} Change */
/**
 * @typedef {import("./types.js").State & { file: string | null, ours: boolean, mistakes: import("./types.js").Mistake[],
 *   order: Record<string, import("./types.js").Value>, has: any }} Told
 */

class Shop extends Steps {
  /** @type {Told | null} */
  state = null;
  /** What is tried here is not shown elsewhere. */
  trying = false;
  #dial = "";
  /** Everything goes one after the other: the last answer is the newest. @type {Promise<unknown>} */
  #line = Promise.resolve();
  /** The newest question: those that wait behind it would hear the same. */
  #asked = 0;

  constructor() {
    super("/workshop");
  }

  /** Asks what the file holds now. */
  ask() {
    const mine = ++this.#asked;
    return this.#next(() => (mine === this.#asked ? this.#ask() : undefined));
  }

  async #ask() {
    const { dial } = board;
    if (!dial) return;
    try {
      const told = await ask("/workshop", { dial });
      if (dial === board.dial) this.#take(told);
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
    }
  }

  /**
   * @template T
   * @param {() => T | Promise<T>} work
   * @returns {Promise<T>}
   */
  #next(work) {
    const turn = this.#line.then(work);
    this.#line = turn.catch(() => undefined);
    return turn;
  }

  /** Follows the file for as long as a part of the page shows it. @param {AbortSignal} signal @param {() => void} show */
  follow(signal, show) {
    this.addEventListener("told", show, { signal });
    // A change of the workshop file gives the dial another look, whoever made it.
    board.addEventListener("state", () => this.ask(), { signal });
    if (this.state && this.#dial === board.dial) show();
    this.ask();
  }

  /** @param {Told} told */
  #take(told) {
    this.state = told;
    this.#dial = board.dial;
    this.dispatchEvent(new CustomEvent("told"));
  }

  /** @param {string} path @param {object} body @returns {Promise<Sorry | null>} Why it was not done. */
  step(path, body) {
    return this.#next(async () => {
      try {
        this.#take(await tell(path, { dial: board.dial, on: this.state?.version ?? "", ...body }));
        return null;
      } catch (error) {
        if (!(error instanceof Sorry)) throw error;
        // What is on disk may be news.
        if (error.status === 409) await this.#ask();
        return error;
      }
    });
  }

  /** Whether changes could be made. @param {Change[]} changes @returns {Promise<Sorry | null>} */
  attempt(changes) {
    return this.#next(async () => {
      try {
        await tell("/workshop/try", { dial: board.dial, on: this.state?.version ?? "", changes });
        return null;
      } catch (error) {
        if (!(error instanceof Sorry)) throw error;
        return error;
      }
    });
  }

  giveUp() {}

  begin() {
    return this.step("/workshop/new", {});
  }
}

/** The one workshop of the dial on the mat. */
export const shop = new Shop();
