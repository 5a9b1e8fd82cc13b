// @ts-check
/** The dial in true size on this screen, once a bank card (ISO/IEC 7810 ID-1: 85.60 x 53.98 mm) was held against it. */

import { draw, make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.dial;
const CARD = { width: 85.6, height: 53.98, corner: 3.18 };
const KEPT = "pixels of a mm";
/** CSS says that an inch has 96 pixels; screens do as they please. */
const NOMINAL = 96 / 25.4;

export class TrueSize {
  on = false;

  /** @param {HTMLElement} room @param {() => void} changed */
  constructor(room, changed) {
    this.room = room;
    this.changed = changed;
  }

  get #pixels() {
    const kept = Number(localStorage.getItem(KEPT));
    return kept > 1 && kept < 20 ? kept : NOMINAL;
  }

  toggle() {
    this.on = !this.on;
    this.room.replaceChildren();
    if (this.on && !localStorage.getItem(KEPT)) this.#calibrate();
    else if (this.on) this.#offer();
    this.changed();
  }

  /** Width and height of a drawing of so many mm. @param {number} wide @param {number} high */
  of(wide, high) {
    return this.on ? { width: wide * this.#pixels, height: high * this.#pixels } : { width: null, height: null };
  }

  /** Another screen wants the card again. */
  #offer() {
    this.room.replaceChildren(make("div", { class: "calibrate" }, make("button", { type: "button", onclick: () => this.#calibrate() }, words.calibrate_anew)));
  }

  #calibrate() {
    const card = draw("svg", { "aria-hidden": "true", viewBox: `0 0 ${CARD.width} ${CARD.height}` }, draw("rect", { class: "card", x: 0.2, y: 0.2, width: CARD.width - 0.4, height: CARD.height - 0.4, rx: CARD.corner }));
    const slider = make("input", { type: "range", min: 2, max: 12, step: 0.01, value: this.#pixels, "aria-label": words.calibrate_label });
    const size = () => {
      localStorage.setItem(KEPT, slider.value);
      card.setAttribute("width", String(CARD.width * Number(slider.value)));
      card.setAttribute("height", String(CARD.height * Number(slider.value)));
      this.changed();
    };
    slider.addEventListener("input", size);
    const fits = make("button", { type: "button", onclick: () => (size(), this.#offer()) }, words.calibrated);
    this.room.replaceChildren(make("div", { class: "calibrate" }, make("p", {}, words.calibrate), card, make("div", {}, slider, fits)));
    card.setAttribute("width", String(CARD.width * this.#pixels));
    card.setAttribute("height", String(CARD.height * this.#pixels));
  }
}
