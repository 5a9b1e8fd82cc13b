// @ts-check
/** The dial on its mat: face up, turned over or lifted apart; turned by hand, moved, measured, in true size. */

import { board } from "../lib/board.js";
import { draw, dress, make } from "../lib/dom.js";
import { texts } from "../texts.js";
import { Drawing } from "./drawing.js";
import { Handles } from "./handles.js";
import { Measuring } from "./measuring.js";
import { TrueSize } from "./true-size.js";
import { turnByHand } from "./turning.js";

const words = texts.dial;
/** Room round the dial, in mm. */
const MARGIN = 4;

/** @typedef {"front" | "back" | "apart"} How */
/** @typedef {"turn" | "move" | "measure"} Deed */

class DialMat extends HTMLElement {
  #quiet = new AbortController();
  #drawing = new Drawing();
  #marker = draw("g", { "aria-hidden": "true" });
  #overlay = draw("g");
  #svg = draw("svg", { class: "dial", role: "group" }, draw("title", { id: "dial-title" }), this.#drawing.defs, this.#drawing.group, this.#overlay, this.#marker);
  #says = make("p", { class: "says", role: "status" });
  #tools = make("div", { class: "views" });
  #cloth = make("div", { class: "cloth" }, this.#svg);
  #calibration = make("div");
  /** @type {How} */
  #how = "front";
  /** @type {Deed} */
  #deed = "turn";
  #handles = new Handles(this.#overlay, (text) => this.#say(text));
  #measuring = new Measuring(this.#overlay, (text) => this.#say(text));
  #size = new TrueSize(this.#calibration, () => this.#frame());

  connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    this.replaceChildren(this.#tools, this.#calibration, this.#cloth, this.#says);
    this.#svg.setAttribute("aria-labelledby", "dial-title");
    board.addEventListener("pieces", (event) => this.#changed(/** @type {CustomEvent} */ (event).detail), { signal });
    this.addEventListener("place", (event) => this.#point(/** @type {CustomEvent} */ (event).detail), { signal });
    turnByHand(this.#svg, () => this.#deed !== "move", signal);
    this.#drawing.begin(signal);
    this.#buttons();
    this.#changed(null);
    this.#again();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  #buttons() {
    const how = (/** @type {How} */ name, /** @type {string} */ text) =>
      make("button", { type: "button", "aria-pressed": String(this.#how === name), onclick: () => this.#lie(name) }, text);
    const deed = (/** @type {Deed} */ name, /** @type {string} */ text) =>
      make("button", { type: "button", "aria-pressed": String(this.#deed === name), disabled: this.#how !== "front", onclick: () => this.#do(name) }, text);
    const size = make("button", { type: "button", "aria-pressed": String(this.#size.on), onclick: () => (this.#size.toggle(), this.#buttons()) }, words.true_size);
    const focused = [...this.#tools.querySelectorAll("button")].indexOf(/** @type {HTMLButtonElement} */ (document.activeElement));
    this.#tools.replaceChildren(
      make("div", { role: "group", "aria-label": words.how, class: "views" }, how("front", words.front), how("back", words.back), how("apart", words.apart)),
      make("div", { role: "group", "aria-label": words.with_it, class: "views" }, deed("move", words.move), deed("measure", words.measure), size),
    );
    if (focused >= 0) this.#tools.querySelectorAll("button")[focused]?.focus();
  }

  /** @param {How} how */
  #lie(how) {
    this.#how = how;
    this.#deed = "turn";
    this.#buttons();
    this.#changed(null);
    this.#again();
  }

  /** @param {Deed} deed */
  #do(deed) {
    this.#deed = this.#deed === deed ? "turn" : deed;
    this.#buttons();
    this.#again();
  }

  /** Draws what belongs to the deed anew. */
  #again() {
    this.#overlay.replaceChildren();
    this.#point(null);
    if (this.#deed === "move") this.#handles.show();
    if (this.#deed === "measure") this.#measuring.show();
    const depth = board.piece("cover")?.pockets[0]?.depth ?? "";
    const says = { front: words.says_front, back: words.says_back(depth), apart: words.says_apart }[this.#how];
    this.#say(!board.piece("dial") ? words.nothing : this.#deed === "move" ? words.says_move : this.#deed === "measure" ? words.says_measure : says);
  }

  /** @param {string} text */
  #say(text) {
    this.#says.textContent = board.stale && board.piece("dial") ? words.stale : text;
  }

  /** @param {Set<string> | null} changed */
  #changed(changed) {
    const dial = board.piece("dial");
    this.classList.toggle("stale", board.stale);
    this.#svg.toggleAttribute("hidden", !dial);
    if (!dial) return this.#say(words.nothing);
    this.#drawing.update(changed, this.#how);
    const label = { front: words.label, back: words.back_label, apart: words.apart_label }[this.#how](dial.name);
    const title = this.#svg.querySelector("title");
    if (title && title.textContent !== label) title.textContent = label;
    // While a handle is dragged the picture stays where it is.
    if (!this.#handles.held) this.#frame();
    if (this.#deed === "move") this.#handles.follow();
    if (this.#deed === "measure") this.#measuring.forget();
    if (changed?.has("dial")) this.#say(this.#says.textContent ?? "");
  }

  #frame() {
    const dial = board.piece("dial");
    if (!dial) return;
    const { x, y, width, height } = dial.around;
    let [left, top, wide, high] = [x - MARGIN, y - MARGIN, width + 2 * MARGIN, height + 2 * MARGIN];
    if (this.#how === "apart") {
      const beside = this.#drawing.apart(wide, high);
      top -= beside.y;
      high += beside.y;
      wide += beside.x;
    }
    if (this.#how === "back" && dial.turned_sideways) left = -left - wide;
    if (this.#how === "back" && !dial.turned_sideways) top = -top - high;
    dress(this.#svg, { viewBox: `${left} ${top} ${wide} ${high}`, ...this.#size.of(wide, high) });
    this.classList.toggle("true-size", this.#size.on);
  }

  /** Shows the place of a finding. @param {import("../lib/types.js").Finding | null} finding */
  #point(finding) {
    this.#marker.replaceChildren();
    const place = finding?.place;
    this.#drawing.group.classList.toggle("through", Boolean(place));
    if (!place) return;
    if (this.#how !== "front") this.#lie("front");
    this.#drawing.group.classList.add("through");
    for (const name of ["ring", "ring inner"]) this.#marker.append(draw("circle", { class: name, cx: place.x, cy: place.y, r: 2.6 }));
    if (innerWidth < 720) this.scrollIntoView({ block: "start" });
  }
}
customElements.define("dial-mat", DialMat);
