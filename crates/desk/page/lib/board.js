// @ts-check
/**
 * The dial on the mat as the page knows it. The file on disk is the truth; this only follows it.
 * All requests that bring a new look go through one line, one after the other, so that what is sent as a difference
 * always meets the look it differs from.
 *
 * Events: `pieces` (detail: set of names that changed), `state` (undo, redo, versions set aside), `kept` (detail: how
 * the last change fares), `refused` (detail: Sorry), `outside`, `opened`.
 */

import { ask, Sorry, tell } from "./api.js";
import { Steps } from "./steps.js";

/** @typedef {import("./types.js").Change} Change */
/** @typedef {import("./types.js").State} State */

/** @typedef {{ changes: Change[], done: (refusal: Sorry | null) => void, began: number }} Attempt */

/** How long after a cut connection the desk is asked again, in ms. */
const AGAIN = 1000;

export class Board extends Steps {
  /** Name of the dial, or empty. */
  dial = "";
  look = "";
  version = "";
  /** @type {Map<string, any>} */
  pieces = new Map();
  /** The last dial that could be drawn is shown although the file has mistakes. */
  stale = false;
  /** @type {State | null} */
  state = null;
  /** Whether something that was tried is shown and not what is on disk. */
  trying = false;

  /** @type {Promise<unknown>} */
  #line = Promise.resolve();
  /** @type {Attempt | null} */
  #waiting = null;
  /** @type {EventSource | null} */
  #events = null;

  constructor() {
    super("");
    // A page that nobody sees asks for nothing, and leaves its connection to the others: a browser has six to one desk.
    document.addEventListener("visibilitychange", () => {
      this.#events?.close();
      if (document.visibilityState === "visible" && this.dial) this.#listen();
    });
    // What was said while the line was cut is lost, even where the connection outlives it: ask anew.
    addEventListener("online", () => {
      this.#events?.close();
      if (document.visibilityState === "visible" && this.dial) this.#listen();
    });
  }

  /**
   * @template T
   * @param {string} name
   * @returns {T | undefined}
   */
  piece(name) {
    return this.pieces.get(name);
  }

  /** @returns {import("./types.js").Wheel[]} */
  get wheels() {
    const all = [];
    for (let i = 0; this.pieces.has(`wheel/${i}`); i++) all.push(this.pieces.get(`wheel/${i}`));
    return all;
  }

  /** @param {string} type @param {any} [detail] */
  #say(type, detail) {
    this.dispatchEvent(new CustomEvent(type, { detail }));
  }

  /** Puts a dial on the mat. @param {string} dial */
  async open(dial) {
    this.#events?.close();
    this.dial = dial;
    this.look = "";
    this.version = "";
    this.pieces.clear();
    this.state = null;
    this.trying = false;
    await this.#next(() => this.#refresh());
    this.#say("opened");
    this.#listen();
  }

  /** Hears of changes, whoever makes them, and asks again after a cut connection. */
  #listen() {
    const dial = this.dial;
    const events = new EventSource(`/events?${new URLSearchParams({ dial })}`);
    this.#events = events;
    events.addEventListener("changed", (event) => {
      const { look, version } = JSON.parse(event.data);
      this.#next(async () => {
        if (events !== this.#events) return;
        this.#say("answers", true);
        if (look === "gone") return this.#say("gone");
        if (look === this.look && !this.trying) return;
        const outside = version !== this.version && version !== this.state?.version;
        try {
          await this.#refresh();
        } catch (error) {
          if (error instanceof Sorry) throw error;
          // Told of a change, but cut off before it could be asked for: hear the news again.
          this.#say("answers", false);
          setTimeout(() => events === this.#events && (events.close(), this.#listen()), AGAIN);
          return;
        }
        if (outside) this.#say("outside");
      });
    });
    events.addEventListener("error", () => this.#say("answers", false));
    events.addEventListener("open", () => this.#say("answers", true));
  }

  /** Asks what the file holds now. */
  async #refresh() {
    const dial = this.dial;
    const [state, look] = await Promise.all([ask("/state", { dial }), ask("/look", { dial, have: this.look })]);
    if (dial !== this.dial) return;
    this.trying = false;
    this.#take(look);
    this.#hold(state);
  }

  /** Takes a difference in. @param {{ look: string, version: string, all: string[], changed: Record<string, any> }} answer */
  #take(answer) {
    const changed = new Set(Object.keys(answer.changed));
    for (const [name, value] of Object.entries(answer.changed)) this.pieces.set(name, value);
    const drawn = answer.all.includes("dial");
    if (drawn) {
      for (const name of [...this.pieces.keys()]) {
        if (!answer.all.includes(name)) {
          this.pieces.delete(name);
          changed.add(name);
        }
      }
    }
    if (this.stale === drawn) changed.add("dial");
    this.stale = !drawn;
    this.look = answer.look;
    this.version = answer.version;
    this.#say("pieces", changed);
  }

  /** @param {State} state */
  #hold(state) {
    this.state = state;
    this.#say("state");
  }

  /**
   * @template T
   * @param {() => Promise<T>} work
   * @returns {Promise<T | undefined>}
   */
  #next(work) {
    const turn = this.#line.then(work).catch((error) => {
      this.#say("refused", error);
      return undefined;
    });
    this.#line = turn;
    return turn;
  }

  /**
   * Shows what changes would make of the dial, without writing them. While one attempt is under way only the newest
   * that follows is sent.
   * @param {Change[]} changes
   * @returns {Promise<Sorry | null>} Why they cannot be.
   */
  attempt(changes) {
    return new Promise((done) => {
      const began = performance.now();
      if (this.#waiting) {
        this.#waiting.done(null);
        this.#waiting = { changes, done, began };
        return;
      }
      this.#waiting = { changes, done, began };
      this.#next(async () => {
        const mine = this.#waiting;
        this.#waiting = null;
        if (!mine || !this.state) return;
        try {
          const on = this.state.version;
          this.#take(await tell("/try", { dial: this.dial, on, changes: mine.changes, have: this.look }));
          this.trying = true;
          mine.done(null);
        } catch (error) {
          mine.done(error instanceof Sorry ? error : null);
          if (!(error instanceof Sorry)) throw error;
        }
      });
    });
  }

  /** Forgets what was tried and shows what is on disk. */
  async giveUp() {
    this.#waiting?.done(null);
    this.#waiting = null;
    await this.#next(async () => {
      if (this.trying) await this.#refresh();
    });
  }

  /**
   * Sends a change and waits until it is on disk.
   * @param {string} path
   * @param {object} body
   * @returns {Promise<Sorry | null>} Why it was not made.
   */
  async step(path, body) {
    this.#waiting?.done(null);
    this.#waiting = null;
    this.#say("kept", "keeping");
    /** @type {Sorry | null} */
    let refusal = null;
    await this.#next(async () => {
      if (!this.state) return;
      try {
        const answer = await tell(path, { dial: this.dial, on: this.state.version, have: this.look, ...body });
        this.trying = false;
        this.#take(answer);
        this.#hold(answer.state);
        this.#say("kept", "kept");
      } catch (error) {
        this.#say("kept", "not kept");
        if (!(error instanceof Sorry)) throw error;
        refusal = error;
        // What was tried is not what is on disk; and what is on disk may be news.
        if (this.trying || error.status === 409) await this.#refresh();
      }
    });
    return refusal;
  }
}

/** The one dial on the mat. */
export const board = new Board();
