// @ts-check
/** The least distance between two things on the dial, measured by the desk on the real outlines. */

import { ask, Sorry } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, draw, dress } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.dial;

export class Measuring {
  #features = draw("g");
  #tape = draw("g", { "aria-hidden": "true" });
  /** @type {{ name: string, words: string, element: Element } | null} */
  #first = null;

  /** @param {SVGGElement} overlay @param {(text: string) => void} say */
  constructor(overlay, say) {
    this.overlay = overlay;
    this.say = say;
  }

  show() {
    this.overlay.replaceChildren(this.#features, this.#tape);
    this.forget();
  }

  /** Begins anew on what the dial looks like now. */
  forget() {
    this.#first = null;
    this.#tape.replaceChildren();
    const cover = board.piece("cover");
    /** @type {{ name: string, words: string, d: string, at: import("../lib/types.js").Place | null }[]} */
    const all = [{ name: "cover", words: words.handles.cover, d: cover.outline, at: null }];
    board.wheels.forEach((wheel, i) => {
      const circle = (/** @type {number} */ r) => `M${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
      all.push(
        { name: `rim/${i}`, words: words.handles.rim(wheel.name), d: wheel.rim, at: wheel.at },
        { name: `notch/${i}`, words: words.handles.notch(wheel.name), d: wheel.notch.cutter, at: null },
        { name: `pocket/${i}`, words: words.handles.pocket(wheel.name), d: circle(wheel.pocket.radius), at: wheel.at },
        { name: `middle/${i}`, words: words.handles.middle(wheel.name), d: circle(0.8), at: wheel.at },
        { name: `window/${i}`, words: words.handles.window(wheel.name), d: wheel.window.d, at: wheel.window.at },
      );
    });
    const shapes = all.map(({ name, words, d, at }) => {
      const choose = () => this.#choose(name, words, shape);
      const transform = at ? `translate(${at.x} ${at.y})` : null;
      const shape = draw("path", {
        class: "feature",
        "data-feature": name,
        d,
        transform,
        tabindex: 0,
        role: "button",
        "aria-label": words,
        onclick: choose,
        onkeydown: (/** @type {KeyboardEvent} */ event) => (event.key === "Enter" || event.key === " ") && (event.preventDefault(), choose()),
      });
      // What a finger hits is wider than what is seen.
      return { shape, reach: draw("path", { class: "feature-reach", "data-reach": name, d, transform, "aria-hidden": "true", onclick: choose }) };
    });
    this.#features.replaceChildren(...shapes.map((one) => one.reach), ...shapes.map((one) => one.shape));
  }

  /** @param {string} name @param {string} what @param {Element} element */
  async #choose(name, what, element) {
    if (!this.#first) {
      this.#first = { name, words: what, element };
      element.classList.add("chosen");
      this.#tape.replaceChildren();
      this.say(words.says_one(what));
      return;
    }
    const first = this.#first;
    this.#first = null;
    first.element.classList.remove("chosen");
    try {
      const found = await ask("/measure", { have: board.look, from: first.name, to: name });
      const { from, to } = found.line;
      this.#tape.replaceChildren(
        draw("line", { class: "tape", x1: from.x, y1: from.y, x2: to.x, y2: to.y }),
        ...[from, to].map((end) => dress(draw("circle"), { class: "tape", cx: end.x, cy: end.y, r: 0.5 })),
      );
      const says = words.says_measured(found.distance, found.from, found.to);
      this.say(says);
      announce(says);
    } catch (error) {
      if (error instanceof Sorry) this.say(error.refusal.what);
      else throw error;
    }
  }
}
