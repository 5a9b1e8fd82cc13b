// @ts-check
/** How far each wheel is turned, in stops: whole numbers are stops, anything between is on the way. */

import { board } from "./board.js";

export class Turns extends EventTarget {
  /** @type {number[]} */
  #at = [];

  /** @param {number} wheel */
  at(wheel) {
    return this.#at[wheel] ?? 0;
  }

  /** The stop that stands in the window, or is nearest to it. @param {number} wheel */
  stop(wheel) {
    const n = board.wheels[wheel]?.stops ?? 1;
    return ((Math.round(this.at(wheel)) % n) + n) % n;
  }

  /** @param {number} wheel @param {number} at */
  turn(wheel, at) {
    this.#at[wheel] = at;
    this.dispatchEvent(new CustomEvent("turn", { detail: wheel }));
  }

  /** Comes to rest on the nearest stop. @param {number} wheel @param {number} [by] Further by so many stops. */
  rest(wheel, by = 0) {
    this.turn(wheel, Math.round(this.at(wheel)) + by);
  }

  forget() {
    this.#at = [];
  }
}

export const turns = new Turns();
board.addEventListener("opened", () => turns.forget());
