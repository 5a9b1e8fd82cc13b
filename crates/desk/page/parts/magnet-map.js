// @ts-check
/**
 * The map: what a pair does in pockets of every depth. The ring is the dial; dragged or moved with the arrow keys it
 * tells at once what would be, and asks for the depths when it is let go (event `depths`, detail: cover and wheel in mm).
 */

import { draw, make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.magnets;
/** From pale to dark, as on paper. */
const RAMP = ["#fdf3dc", "#f2dcae", "#dfba7c", "#b98d52", "#84603a", "#4a3020"];
const PANELS = /** @type {const} */ (["effort_n", "drift_mm", "thrown_at_g"]);
const BANDS = { effort_n: "effort_bands_n", drift_mm: "drift_bands_mm", thrown_at_g: "thrown_bands_g" };

const figure = (/** @type {number} */ value) => String(Math.round(value * 100) / 100);

class MagnetMap extends HTMLElement {
  /** @type {any} */
  #map = null;
  /** @type {typeof PANELS[number]} */
  #panel = "effort_n";
  #cell = [0, 0];

  /** @param {any} map */
  set map(map) {
    this.#map = map;
    if (map) this.#draw();
  }

  #draw() {
    const map = this.#map;
    const n = map.cover_pocket_mm.length;
    const nearest = (/** @type {number[]} */ depths, /** @type {number} */ depth) => depths.reduce((best, one, k) => (Math.abs(one - depth) < Math.abs(depths[best] - depth) ? k : best), 0);
    this.#cell = [nearest(map.cover_pocket_mm, map.design_mm[0]), nearest(map.wheel_pocket_mm, map.design_mm[1])];
    const choice = make("select", { "aria-label": words.shown, onchange: () => ((this.#panel = /** @type {any} */ (choice.value)), paint()) }, ...PANELS.map((one) => make("option", { value: one, selected: one === this.#panel }, words.panels[one])));
    const svg = draw("svg", { viewBox: `-6 -1 ${n + 8} ${n + 6}`, role: "img", "aria-label": words.map_label(map.wheel), class: "magnet-map" });
    const cells = draw("g");
    const legend = make("ul", { class: "bands" });
    const paint = () => {
      const bands = map[BANDS[this.#panel]];
      const runs = RAMP.map(() => "");
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) {
          const value = map[this.#panel][i][j] ?? Infinity;
          const k = bands.filter((/** @type {number} */ end) => value > end).length;
          runs[k] += `M${i - 0.01} ${n - 1 - j - 0.01}h1.02v1.02h-1.02Z`;
        }
      }
      cells.replaceChildren(...runs.map((d, k) => draw("path", { d, fill: RAMP[k] })));
      legend.replaceChildren(...RAMP.map((colour, k) => {
        const swatch = draw("svg", { viewBox: "0 0 1 1", class: "swatch", "aria-hidden": "true" }, draw("rect", { width: 1, height: 1, fill: colour }));
        return make("li", {}, swatch, k < 5 ? words.up_to(figure(bands[k])) : words.over(figure(bands[4])));
      }));
    };
    const place = (/** @type {number[]} */ depths, /** @type {number} */ depth) => (depth - depths[0]) / (depths[1] - depths[0]) + 0.5;
    const deep = [place(map.cover_pocket_mm, map.deepest_mm[0]), n - place(map.wheel_pocket_mm, map.deepest_mm[1])];
    const dashed = draw("path", { class: "deepest", d: `${deep[0] < n ? `M${deep[0]} 0v${n}` : ""}${deep[1] > 0 ? `M0 ${deep[1]}h${n}` : ""}` });
    const within = map.within_mm / (map.cover_pocket_mm[1] - map.cover_pocket_mm[0]);
    const point = draw("g", { class: "point" }, draw("rect", { x: -within, y: -within, width: 2 * within, height: 2 * within }), draw("circle", { r: 0.9 }));
    const labels = [0, 12, 24, 36].filter((k) => k < n).flatMap((k) => [
      draw("text", { x: k + 0.5, y: n + 2, "text-anchor": "middle" }, figure(map.cover_pocket_mm[k])),
      draw("text", { x: -0.6, y: n - k, "text-anchor": "end" }, figure(map.wheel_pocket_mm[k])),
    ]);
    svg.append(cells, draw("path", { class: "good", d: edge(map.good, n) }), dashed, ...labels, point);
    const handle = make("div", { role: "slider", tabindex: 0, class: "map-point", "aria-label": words.point, "aria-valuemin": 0, "aria-valuemax": n * n - 1 });
    const says = make("output", { class: "map-says" });
    const show = () => {
      const [i, j] = this.#cell;
      point.setAttribute("transform", `translate(${i + 0.5} ${n - 1 - j + 0.5})`);
      const through = map.cover_pocket_mm[i] > map.deepest_mm[0] || map.wheel_pocket_mm[j] > map.deepest_mm[1];
      const verdict = `${map.verdict[i][j] ?? words.no_pair}${through ? `; ${words.shows_through}` : ""}`;
      const told = words.at(figure(map.cover_pocket_mm[i]), figure(map.wheel_pocket_mm[j]), verdict);
      says.textContent = told;
      handle.setAttribute("aria-valuenow", String(i * n + j));
      handle.setAttribute("aria-valuetext", told);
    };
    const move = (/** @type {number} */ i, /** @type {number} */ j) => {
      const within = (/** @type {number} */ k) => Math.min(n - 1, Math.max(0, k));
      this.#cell = [within(i), within(j)];
      show();
    };
    const done = () => {
      const [i, j] = this.#cell;
      this.dispatchEvent(new CustomEvent("depths", { detail: [map.cover_pocket_mm[i], map.wheel_pocket_mm[j]] }));
    };
    let held = false;
    const follow = (/** @type {PointerEvent} */ event) => {
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(/** @type {DOMMatrix} */ (svg.getScreenCTM()).inverse());
      move(Math.floor(at.x), n - 1 - Math.floor(at.y));
    };
    handle.addEventListener("pointerdown", (event) => {
      held = true;
      handle.setPointerCapture(event.pointerId);
      follow(event);
    });
    handle.addEventListener("pointermove", (event) => held && follow(event));
    handle.addEventListener("pointerup", () => held && ((held = false), done()));
    handle.addEventListener("pointercancel", () => (held = false));
    let soon = 0;
    handle.addEventListener("keydown", (event) => {
      const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
      if (!step) return;
      event.preventDefault();
      move(this.#cell[0] + step[0], this.#cell[1] + step[1]);
      // A run of keys is one change.
      clearTimeout(soon);
      soon = window.setTimeout(done, 500);
    });
    paint();
    show();
    this.replaceChildren(choice, make("div", { class: "map-frame" }, /** @type {Node} */ (svg), handle), legend, says, make("p", {}, words.map_how));
  }
}
customElements.define("magnet-map", MagnetMap);

/** The lines between good cells and others. @param {boolean[][]} good @param {number} n */
function edge(good, n) {
  const is = (/** @type {number} */ i, /** @type {number} */ j) => i >= 0 && j >= 0 && i < n && j < n && good[i][j];
  let d = "";
  for (let i = 0; i <= n; i++) {
    for (let j = 0; j <= n; j++) {
      if (is(i, j) !== is(i - 1, j)) d += `M${i} ${n - j}v-1`;
      if (is(i, j) !== is(i, j - 1)) d += `M${i} ${n - j}h1`;
    }
  }
  return d;
}
