// @ts-check
/** Every stop of every wheel as it stands in its window. The marks are those of the mat, used again. */

import { board } from "../lib/board.js";
import { draw, dress, make } from "../lib/dom.js";
import { turns } from "../lib/turns.js";
import { texts } from "../texts.js";

const words = texts.strip;
/** Room round a window, in mm. */
const AROUND = 2;

class WindowStrip extends HTMLElement {
  #quiet = new AbortController();

  connectedCallback() {
    this.setAttribute("role", "group");
    this.setAttribute("aria-label", words.label);
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    board.addEventListener("pieces", (event) => this.#show(/** @type {CustomEvent} */ (event).detail), { signal });
    turns.addEventListener("turn", (event) => this.#point(/** @type {CustomEvent} */ (event).detail), { signal });
    this.#show(null);
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  /** @param {Set<string> | null} changed */
  #show(changed) {
    const count = board.wheels.length;
    while (this.children.length > count) this.lastElementChild?.remove();
    for (let i = 0; i < count; i++) {
      const fresh = this.children.length <= i;
      if (fresh) this.append(make("div", { class: "row" }, make("p", { class: "verdict" }), make("div", { class: "cells", role: "img" })));
      if (fresh || !changed || ["wheel", "marks", "stops"].some((kind) => changed.has(`${kind}/${i}`)) || changed.has("cover")) this.#row(i);
      this.#point(i);
    }
  }

  /** @param {number} i */
  #row(i) {
    const row = this.children[i];
    const [verdict, cells] = /** @type {[HTMLElement, HTMLElement]} */ (/** @type {unknown} */ (row.children));
    const wheel = board.wheels[i];
    const stops = /** @type {import("../lib/types.js").Stop[]} */ (board.piece(`stops/${i}`));
    const says = verdictOf(stops);
    verdict.className = says.fails ? "verdict fails" : "verdict";
    verdict.replaceChildren(make("strong", {}, wheel.name), `: ${says.text}`);
    cells.setAttribute("aria-label", words.row(wheel.name, says.text));
    while (cells.children.length > stops.length) cells.lastElementChild?.remove();
    while (cells.children.length < stops.length) {
      const k = cells.children.length;
      cells.append(draw("svg", { onclick: () => turns.turn(i, k) }));
    }
    stops.forEach((stop, k) => this.#cell(/** @type {SVGElement} */ (cells.children[k]), wheel, stop, i, k));
  }

  /**
   * @param {SVGElement} cell
   * @param {import("../lib/types.js").Wheel} wheel
   * @param {import("../lib/types.js").Stop} stop
   * @param {number} i
   * @param {number} k
   */
  #cell(cell, wheel, stop, i, k) {
    const { box, at, d } = wheel.window;
    const cover = board.piece("cover");
    // All about the window's middle: where a window stands does not change what is seen in it.
    const about = (/** @type {number} */ value) => Math.round(value * 1e4) / 1e4;
    const [x, y] = [about(box.x - at.x - AROUND), about(box.y - at.y - AROUND)];
    const [width, height] = [about(box.width + 2 * AROUND), about(box.height + 2 * AROUND)];
    const middle = `${about(wheel.at.x - at.x)} ${about(wheel.at.y - at.y)}`;
    const fails = stop.faults.length > 0;
    // What a cell shows in one line: only if that changed is it drawn anew.
    const others = stop.others.length > 0 && [stop.others, middle, wheel.step];
    const now = JSON.stringify([x, y, width, height, d, wheel.colour, wheel.burnt, cover?.colour, others, fails, stop.seen < 1]);
    if (cell.dataset.now === now) return;
    cell.dataset.now = now;
    dress(cell, { viewBox: `${x} ${y} ${width} ${height}`, class: fails ? "fails" : null });
    const use = (/** @type {number} */ j, /** @type {string} */ fill) => {
      const turn = (((k - j) * wheel.step) % 360).toFixed(3);
      return draw("use", { href: `#mark-${i}-${j}`, fill, transform: j === k ? null : `rotate(${turn} ${middle})` });
    };
    const seen = draw("g", { "clip-path": `url(#sight-${i})` }, use(k, wheel.burnt), ...stop.others.map((j) => use(j, wheel.burnt)));
    const hidden = stop.seen < 1 ? use(k, "#00000055") : null;
    const cross = fails ? draw("path", { class: "cross", d: `M${x + width - 2.6} ${y + 0.8}l1.8 1.8m0-1.8l-1.8 1.8` }) : null;
    cell.replaceChildren(
      draw("rect", { x, y, width, height, fill: cover?.colour }),
      draw("path", { d, fill: wheel.colour, stroke: "#2b2622", "stroke-width": 0.15 }),
      ...[hidden, seen, cross].filter((child) => child !== null),
    );
  }

  /** @param {number} i */
  #point(i) {
    const cells = this.children[i]?.querySelectorAll("svg") ?? [];
    const shown = turns.stop(i);
    cells.forEach((cell, k) => cell.classList.toggle("shown", k === shown));
  }
}
customElements.define("window-strip", WindowStrip);

/** @param {import("../lib/types.js").Stop[]} stops */
function verdictOf(stops) {
  const bad = stops.filter((stop) => stop.faults.length > 0);
  if (bad.length === 0) {
    const angle = Math.min(...stops.map((stop) => stop.slack_deg));
    const least = stops.reduce((least, stop) => (stop.drift_mm < least.drift_mm ? stop : least));
    return { fails: false, text: words.passes(stops.length, `${angle.toFixed(1)}\u00b0`, least.drift) };
  }
  /** @type {Map<string, string[]>} */
  const kinds = new Map();
  for (const stop of bad) for (const fault of stop.faults) kinds.set(fault, [...(kinds.get(fault) ?? []), stop.words]);
  const where = [...kinds].map(([fault, marks]) => `${words.faults[fault] ?? fault} (${marks.slice(0, 6).join(", ")}${marks.length > 6 ? " \u2026" : ""})`);
  return { fails: true, text: words.fails(bad.length, stops.length, where.join("; ")) };
}
