// @ts-check
/** The dial drawn: one group for the cover, one for each wheel that turns, and only what changed is touched. */

import { board } from "../lib/board.js";
import { draw, dress } from "../lib/dom.js";
import { turns } from "../lib/turns.js";

/** Room between the layers of a dial lifted apart, in mm. */
const APART = 8;

export class Drawing {
  defs = draw("defs");
  #wheels = draw("g", { class: "wheels" });
  #magnets = draw("g", { class: "magnets" });
  #shadow = draw("path", { class: "shadow", transform: "translate(0.4 0.8)" });
  #face = draw("path", { class: "face" });
  #edge = draw("path", { class: "edge" });
  #pockets = draw("g", { class: "pockets" });
  #art = draw("g", { class: "art" });
  #cover = draw("g", { class: "cover" }, this.#shadow, this.#face, this.#edge, this.#pockets, this.#art);
  #grips = draw("g", { class: "grips" });
  group = draw("g", {}, this.#wheels, this.#magnets, this.#cover, this.#grips);

  /** @param {AbortSignal} signal */
  begin(signal) {
    turns.addEventListener("turn", (event) => this.turn(/** @type {CustomEvent} */ (event).detail), { signal });
  }

  /** @param {Set<string> | null} changed All, if null. @param {"front" | "back" | "apart"} how */
  update(changed, how) {
    const has = (/** @type {string} */ name) => !changed || changed.has(name);
    if (has("cover")) this.#drawCover();
    if (has("art") || has("cover")) this.#drawArt();
    const wheels = board.wheels;
    for (const group of [this.#wheels, this.#grips]) while (group.children.length > wheels.length) group.lastElementChild?.remove();
    while (this.defs.children.length > wheels.length) this.defs.lastElementChild?.remove();
    wheels.forEach((wheel, i) => {
      const fresh = !this.#wheels.children[i];
      if (fresh) this.#begin(i);
      if (fresh || has(`wheel/${i}`)) this.#drawWheel(wheel, i);
      if (fresh || has(`wheel/${i}`) || has(`marks/${i}`)) this.#drawMarks(wheel, i);
      if (fresh || has(`wheel/${i}`)) this.turn(i);
    });
    this.#lie(how);
  }

  #drawCover() {
    const cover = /** @type {import("../lib/types.js").Cover} */ (board.piece("cover"));
    dress(this.#face, { d: cover.face });
    dress(this.#edge, { d: cover.face });
    dress(this.#shadow, { d: cover.face });
    this.#pockets.replaceChildren(...cover.pockets.map((one) => draw("circle", { class: "pocket", cx: one.at.x, cy: one.at.y, r: one.radius })));
    this.#magnets.replaceChildren(...cover.pockets.map((one) => draw("circle", { class: "magnet", cx: one.at.x, cy: one.at.y, r: one.radius * 0.97 })));
  }

  #drawArt() {
    const cover = board.piece("cover");
    const art = /** @type {import("../lib/types.js").Art[]} */ (board.piece("art") ?? []);
    while (this.#art.children.length > art.length) this.#art.lastElementChild?.remove();
    art.forEach((one, k) => {
      const path = this.#art.children[k] ?? this.#art.appendChild(draw("path"));
      dress(path, { d: one.d, fill: cover?.burnt, transform: `translate(${one.at.x} ${one.at.y})` });
    });
  }

  /** @param {number} i */
  #begin(i) {
    const turning = draw("g", { class: "turning" }, draw("path", { class: "rim" }), draw("path", { class: "edge" }), draw("circle", { class: "pocket" }), draw("g", { class: "marks" }));
    this.#wheels.append(draw("g", { class: "wheel", "data-wheel": i }, turning));
    this.defs.append(draw("clipPath", { id: `sight-${i}` }, draw("path")));
    this.#grips.append(draw("path", { class: "grip", "data-wheel": i }));
  }

  /** @param {import("../lib/types.js").Wheel} wheel @param {number} i */
  #drawWheel(wheel, i) {
    const group = this.#wheels.children[i];
    dress(group, { transform: `translate(${wheel.at.x} ${wheel.at.y})` });
    const [rim, edge, pocket] = group.children[0].children;
    dress(rim, { d: wheel.rim });
    dress(edge, { d: wheel.rim });
    dress(pocket, { r: wheel.pocket.radius });
    dress(this.defs.children[i].children[0], { d: wheel.window.d });
    dress(this.#grips.children[i], { d: wheel.notch.cutter });
  }

  /** @param {import("../lib/types.js").Wheel} wheel @param {number} i */
  #drawMarks(wheel, i) {
    const marks = /** @type {import("../lib/types.js").Mark[]} */ (board.piece(`marks/${i}`) ?? []);
    const group = this.#wheels.children[i].children[0].children[3];
    dress(group, { fill: wheel.burnt });
    while (group.children.length > marks.length) group.lastElementChild?.remove();
    const [x, y] = [wheel.window.at.x - wheel.at.x, wheel.window.at.y - wheel.at.y];
    marks.forEach((mark, k) => {
      const place = group.children[k] ?? group.appendChild(draw("g", {}, draw("path", { id: `mark-${i}-${k}` })));
      dress(place, { transform: `rotate(${(-k * wheel.step).toFixed(4)}) translate(${x.toFixed(4)} ${y.toFixed(4)})` });
      dress(place.children[0], { d: mark.d });
    });
  }

  /** Turns a wheel to where it stands. @param {number} i */
  turn(i) {
    const wheel = board.wheels[i];
    const turning = this.#wheels.children[i]?.children[0];
    if (wheel && turning) dress(turning, { transform: `rotate(${((turns.at(i) * wheel.step) % 360).toFixed(4)})` });
  }

  /** How far cover and magnets are lifted when the dial is apart. @param {number} wide @param {number} high */
  apart(wide, high) {
    return wide > 1.6 * high ? { x: 0, y: high + APART } : { x: wide + APART, y: 0 };
  }

  /** @param {"front" | "back" | "apart"} how */
  #lie(how) {
    const dial = board.piece("dial");
    this.group.setAttribute("class", `from-${how}`);
    const mirrored = dial?.turned_sideways ? "scale(-1 1)" : "scale(1 -1)";
    dress(this.group, { transform: how === "back" ? mirrored : null });
    const margin = 10;
    const by = this.apart(dial.around.width + margin, dial.around.height + margin);
    const away = how === "apart";
    dress(this.#cover, { transform: away ? `translate(${by.x} ${-by.y})` : null });
    dress(this.#magnets, { transform: away && by.y ? `translate(0 ${-by.y / 2})` : away ? `translate(${by.x / 2} 0)` : null });
    this.#magnets.toggleAttribute("hidden", !away);
    this.#pockets.toggleAttribute("hidden", how !== "back");
    this.#grips.toggleAttribute("hidden", how !== "front");
    for (const wheel of this.#wheels.querySelectorAll(".pocket")) wheel.toggleAttribute("hidden", !away);
    const side = how === "back" ? "back" : "colour";
    dress(this.#face, { fill: board.piece("cover")?.[side] });
    board.wheels.forEach((wheel, i) => dress(this.#wheels.children[i].children[0].children[0], { fill: wheel[side] }));
    // From behind the wheels lie over the cover.
    if (how === "back") this.group.append(this.#cover, this.#wheels);
    else this.group.append(this.#wheels, this.#magnets, this.#cover, this.#grips);
  }
}
