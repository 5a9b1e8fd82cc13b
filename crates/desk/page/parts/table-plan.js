// @ts-check
/**
 * The table with the dial and the reader's seat: from above, and the eye from the side. The reader is dragged, or moved with the
 * arrow keys (event `moved`, detail: away and eye in mm, side in degrees).
 */

import { board } from "../lib/board.js";
import { draw, make } from "../lib/dom.js";
import { angle, length } from "../lib/lengths.js";
import { texts } from "../texts.js";

const words = texts.seat;

/** @typedef {{ away: number, eye: number, side: number }} Seat */

/** How far the drawings reach, in mm, and how finely the seat is dragged. */
const FAR = 1150;
/** Farther off nobody is dragged: such seats are written, and drawn at the edge. */
const REACH = 1000;
const HIGH = 1000;
const LOW = 50;
const STEP = 10;
const TURN = 5;
/** The usual seats: how far away, and where round the dial; our own, see the room `sight`. */
export const USUAL = /** @type {Record<string, Seat>} */ ({
  owner: { away: 350, eye: 470, side: 0 },
  neighbour: { away: 600, eye: 470, side: 0 },
  across: { away: 950, eye: 470, side: 180 },
});

const within = (/** @type {number} */ value, /** @type {number} */ low, /** @type {number} */ high) => Math.min(high, Math.max(low, value));
const to = (/** @type {number} */ step, /** @type {number} */ value) => Math.round(value / step) * step;

export class TablePlan extends HTMLElement {
  /** @type {Seat} */
  #seat = { ...USUAL.owner };
  #plan = draw("g");
  #side = draw("g");
  #planSvg = draw("svg", { viewBox: `${-FAR} ${-FAR} ${2 * FAR} ${2 * FAR}`, class: "plan", "aria-hidden": "true" }, this.#plan);
  #sideSvg = draw("svg", { viewBox: `-150 ${-HIGH - 60} ${FAR + 250} ${HIGH + 160}`, class: "plan", "aria-hidden": "true" }, this.#side);
  #round = handle(words.plan);
  #up = handle(words.side_view);

  connectedCallback() {
    this.#held(this.#round, this.#planSvg, (x, y) => {
      const turned = (Math.atan2(x, y) * 180) / Math.PI;
      return { ...this.#seat, away: to(STEP, within(Math.hypot(x, y), 0, REACH)), side: to(TURN, (turned + 360) % 360) % 360 };
    });
    this.#held(this.#up, this.#sideSvg, (x, y) => ({ ...this.#seat, away: to(STEP, within(x, 0, REACH)), eye: to(STEP, within(-y, LOW, HIGH)) }));
    this.#keys(this.#round, { ArrowLeft: ["side", -TURN], ArrowRight: ["side", TURN], ArrowUp: ["away", -STEP], ArrowDown: ["away", STEP] });
    this.#keys(this.#up, { ArrowLeft: ["away", -STEP], ArrowRight: ["away", STEP], ArrowUp: ["eye", STEP], ArrowDown: ["eye", -STEP] });
    const figure = (/** @type {string} */ caption, /** @type {SVGElement} */ svg, /** @type {HTMLElement} */ grip) => make("figure", {}, make("figcaption", {}, caption), make("div", { class: "plan-frame" }, svg, grip));
    this.replaceChildren(figure(words.plan_caption, this.#planSvg, this.#round), figure(words.side_view, this.#sideSvg, this.#up));
    this.#draw();
  }

  /** @returns {Seat} */
  get seat() {
    return this.#seat;
  }

  /** @param {Seat} seat */
  set seat(seat) {
    this.#seat = { ...seat };
    if (this.isConnected) this.#draw();
  }

  /** @param {Seat} seat */
  #move(seat) {
    const { away, eye, side } = this.#seat;
    if (seat.away === away && seat.eye === eye && seat.side === side) return;
    this.seat = seat;
    this.dispatchEvent(new CustomEvent("moved", { detail: seat }));
  }

  /** @param {HTMLElement} grip @param {SVGSVGElement} svg @param {(x: number, y: number) => Seat} seat */
  #held(grip, svg, seat) {
    let held = false;
    const follow = (/** @type {PointerEvent} */ event) => {
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(/** @type {DOMMatrix} */ (svg.getScreenCTM()).inverse());
      this.#move(seat(at.x, at.y));
    };
    grip.addEventListener("pointerdown", (event) => {
      held = true;
      grip.setPointerCapture(event.pointerId);
      follow(event);
    });
    grip.addEventListener("pointermove", (event) => held && follow(event));
    for (const end of /** @type {const} */ (["pointerup", "pointercancel"])) grip.addEventListener(end, () => (held = false));
  }

  /** @param {HTMLElement} grip @param {Record<string, ["away" | "eye" | "side", number]>} steps */
  #keys(grip, steps) {
    grip.addEventListener("keydown", (event) => {
      const step = steps[event.key];
      if (!step) return;
      event.preventDefault();
      const [what, by] = step;
      const value = this.#seat[what] + by;
      const next = { side: () => (value + 360) % 360, away: () => Math.max(0, value), eye: () => Math.max(LOW, value) }[what]();
      this.#move({ ...this.#seat, [what]: next });
    });
  }

  #draw() {
    const { away, eye, side } = this.#seat;
    const cover = board.piece("cover");
    const turn = (side * Math.PI) / 180;
    const near = Math.min(away, REACH);
    const [x, y] = [near * Math.sin(turn), near * Math.cos(turn)];
    const dial = () => draw("path", { d: cover?.outline ?? "", class: "dial-outline", fill: cover?.colour ?? "none" });
    const usual = Object.values(USUAL).map((seat) => draw("circle", { class: "usual", cx: 0, cy: seat.side === 180 ? -seat.away : seat.away, r: 34 }));
    // The head from above: it looks to the dial.
    const head = draw("g", { class: "head", transform: `translate(${x} ${y}) rotate(${-side})` }, draw("ellipse", { class: "shoulders", rx: 150, ry: 62 }), draw("circle", { r: 62 }), draw("path", { d: "M-20 -56 0 -92 20 -56Z" }));
    this.#plan.replaceChildren(
      draw("rect", { class: "table-top", x: -900, y: -780, width: 1800, height: 1020, rx: 40 }),
      draw("circle", { class: "reach", r: near }),
      draw("path", { class: "sight-line", d: `M${x} ${y}L0 0` }),
      ...usual,
      dial(),
      head,
    );
    const [ex, ey] = [Math.min(away, REACH), -Math.min(eye, HIGH)];
    const wide = Math.max(60, ((cover?.box?.width ?? 120) * 1) / 2);
    const steep = Math.round((Math.atan2(eye, away) * 180) / Math.PI);
    this.#side.replaceChildren(
      draw("rect", { class: "table-top", x: -150, y: 0, width: 1400, height: 40 }),
      draw("rect", { class: "dial-outline", x: -wide, y: -14, width: 2 * wide, height: 14, fill: cover?.colour ?? "none" }),
      draw("path", { class: "sight-line", d: `M${ex} ${ey}L0 -8` }),
      draw("path", { class: "reach", d: `M${ex} ${ey}V0` }),
      draw("g", { class: "head", transform: `translate(${ex} ${ey})` }, draw("circle", { class: "shoulders", cx: 60, cy: -20, r: 105 }), draw("circle", { r: 40 }), draw("circle", { class: "pupil", r: 16 })),
      draw("text", { x: 130, y: -24 }, `${steep}\u00b0`),
    );
    grab(this.#round, this.#planSvg, x, y);
    grab(this.#up, this.#sideSvg, ex, ey);
    const [far, high, round] = [length(away), length(eye), angle(side)];
    says(this.#round, side, 0, 360, words.plan_value(far, round));
    says(this.#up, eye, LOW, HIGH, words.eye_value(high, far, steep));
  }
}
customElements.define("table-plan", TablePlan);

/** @param {string} label */
function handle(label) {
  return make("div", { role: "slider", tabindex: 0, class: "plan-point", "aria-label": label }, make("div", { class: "plan-grab" }));
}

/** Where a finger takes hold; beside it, it scrolls the page. @param {HTMLElement} grip @param {SVGSVGElement} svg @param {number} x @param {number} y */
function grab(grip, svg, x, y) {
  const { x: left, y: top, width, height } = svg.viewBox.baseVal;
  const here = /** @type {HTMLElement} */ (grip.firstElementChild);
  here.style.left = `${(100 * (x - left)) / width}%`;
  here.style.top = `${(100 * (y - top)) / height}%`;
}

/** @param {HTMLElement} grip @param {number} now @param {number} least @param {number} most @param {string} text */
function says(grip, now, least, most, text) {
  for (const [name, value] of Object.entries({ valuenow: now, valuemin: least, valuemax: Math.max(most, now), valuetext: text })) grip.setAttribute(`aria-${name}`, String(value));
}
