// @ts-check
/** Two colours against each other, written or picked, as the command line tells it. */

import { ask, Sorry } from "../lib/api.js";
import { draw, make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.looks;
/** Char on birch, to begin with. */
const BEGIN = { mark: "#4a3020", ground: "#e4c7a5" };

class ContrastCheck extends HTMLElement {
  /** @type {{ mark: string, ground: string }} */
  #colours = { ...BEGIN };
  #says = make("div", { role: "status" });
  #busy = false;
  #again = false;

  connectedCallback() {
    const field = (/** @type {"mark" | "ground"} */ which) => {
      const text = make("input", { type: "text", value: this.#colours[which], spellcheck: "false", autocomplete: "off", "data-colour": which });
      const pick = make("input", { type: "color", value: this.#colours[which], "aria-label": words.pick(words[which]) });
      const take = (/** @type {HTMLInputElement} */ from, /** @type {HTMLInputElement} */ other) => {
        this.#colours[which] = from.value.trim();
        if (from === pick || /^#[0-9a-f]{6}$/i.test(from.value.trim())) other.value = from.value.trim().toLowerCase();
        this.#ask();
      };
      text.addEventListener("input", () => take(text, pick));
      pick.addEventListener("input", () => take(pick, text));
      return make("div", { class: "row" }, make("label", {}, words[which], " ", text), pick);
    };
    this.replaceChildren(make("p", {}, words.contrast_how), field("mark"), field("ground"), this.#says);
    this.#ask();
  }

  /** Asks for what is written now; while one answer is awaited only the newest question is kept. */
  async #ask() {
    if (this.#busy) {
      this.#again = true;
      return;
    }
    this.#busy = true;
    try {
      const told = await ask("/contrast", this.#colours);
      const sample = draw("svg", { viewBox: "0 0 60 24", class: "two-colours", "aria-hidden": "true" }, draw("rect", { width: 60, height: 24, fill: told.ground.colour }), draw("text", { x: 30, y: 17.5, "text-anchor": "middle", fill: told.mark.colour }, "12 3"));
      const levels = told.levels.map((/** @type {any} */ level) => make("li", { class: level.passed ? "well" : "fails" }, words.passes(level.passed, level)));
      this.#says.replaceChildren(
        sample,
        make("p", { class: "verdict-line" }, words.ratio(told.ratio_shown, told.polarity)),
        make("p", {}, words.lab(words.mark, told.mark)),
        make("p", {}, words.lab(words.ground, told.ground)),
        make("p", {}, words.difference(told.ciede2000)),
        make("ul", {}, ...levels),
      );
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.#says.replaceChildren(make("p", { class: "wrong" }, error.refusal.what));
    } finally {
      this.#busy = false;
    }
    if (this.#again) {
      this.#again = false;
      this.#ask();
    }
  }
}
customElements.define("contrast-check", ContrastCheck);
