// @ts-check
/** A row of controls, one for each wheel: what its window shows, and one stop up or down. */

import { board } from "../lib/board.js";
import { draw, make } from "../lib/dom.js";
import { turns } from "../lib/turns.js";
import { texts } from "../texts.js";

const words = texts.knobs;

class WheelKnobs extends HTMLElement {
  #quiet = new AbortController();

  connectedCallback() {
    this.setAttribute("role", "group");
    this.setAttribute("aria-label", words.label);
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    board.addEventListener("pieces", () => this.#show(), { signal });
    turns.addEventListener("turn", (event) => this.#say(/** @type {CustomEvent} */ (event).detail), { signal });
    this.#show();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  #show() {
    const names = board.wheels.map((wheel) => `${wheel.name} ${wheel.stops}`).join("\n");
    if (this.dataset.names !== names) {
      this.dataset.names = names;
      this.replaceChildren(...board.wheels.map((wheel, i) => this.#row(wheel.name, i)));
    }
    board.wheels.forEach((_, i) => this.#say(i));
  }

  /** @param {string} name @param {number} i */
  #row(name, i) {
    const step = (/** @type {number} */ by) => () => turns.rest(i, by);
    const sign = (/** @type {string} */ d) => draw("svg", { width: 16, height: 16, viewBox: "0 0 16 16", "aria-hidden": "true" }, draw("path", { d, fill: "none", stroke: "currentColor", "stroke-width": 2.5 }));
    const slider = make(
      "div",
      { role: "slider", tabindex: 0, "aria-label": name, "aria-orientation": "vertical", "aria-valuemin": 1, onkeydown: (/** @type {KeyboardEvent} */ event) => key(event, i), onwheel: (/** @type {WheelEvent} */ event) => wheel(event, i) },
      make("span", {}, name),
      make("b"),
    );
    return make(
      "div",
      { class: "knob-row" },
      make("button", { type: "button", "aria-label": words.down(name), onclick: step(-1) }, sign("M2 8h12")),
      slider,
      make("button", { type: "button", "aria-label": words.up(name), onclick: step(1) }, sign("M2 8h12M8 2v12")),
    );
  }

  /** @param {number} i */
  #say(i) {
    const slider = this.querySelectorAll('[role="slider"]')[i];
    const stops = /** @type {import("../lib/types.js").Stop[] | undefined} */ (board.piece(`stops/${i}`));
    if (!slider || !stops) return;
    const k = turns.stop(i);
    const mark = stops[k]?.words ?? "";
    slider.setAttribute("aria-valuemax", String(stops.length));
    slider.setAttribute("aria-valuenow", String(k + 1));
    slider.setAttribute("aria-valuetext", words.shows(mark, k + 1, stops.length));
    const shown = slider.querySelector("b");
    if (shown) shown.textContent = mark;
  }
}
customElements.define("wheel-knobs", WheelKnobs);

/** Turns a wheel by keys. @param {KeyboardEvent} event @param {number} i */
export function key(event, i) {
  const n = board.wheels[i]?.stops ?? 1;
  const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 5, PageDown: -5, Home: -turns.stop(i), End: n - 1 - turns.stop(i) }[event.key];
  if (by === undefined) return;
  event.preventDefault();
  turns.rest(i, by);
}

/** Turns a wheel by the mouse's wheel: a notch of it, a stop. @param {WheelEvent} event @param {number} i */
export function wheel(event, i) {
  event.preventDefault();
  if (event.deltaY !== 0) turns.rest(i, event.deltaY < 0 ? 1 : -1);
}
