// @ts-check
/**
 * Things moved on the dial itself: windows and notches round their wheels, the cover's edges, the wheels' middles, the
 * maker's own art. While one drags, the desk computes each place anew and nothing is written; letting go writes once.
 */

import { board } from "../lib/board.js";
import { announce, draw, dress } from "../lib/dom.js";
import { texts } from "../texts.js";
import { allHandles } from "./movable.js";

/** @typedef {import("./movable.js").Handle} Handle */
/** @typedef {import("../lib/types.js").Place} Place */

/** Half the width of what a finger must hit, in CSS pixels. */
const REACH = 22;

export class Handles {
  held = false;
  #group = draw("g");
  #guides = draw("g", { "aria-hidden": "true" });
  /** @type {Handle[]} */
  #handles = [];
  #scale = 4;

  /** @param {SVGGElement} overlay @param {(text: string) => void} say */
  constructor(overlay, say) {
    this.overlay = overlay;
    this.say = say;
  }

  show() {
    this.overlay.replaceChildren(this.#guides, this.#group);
    this.#group.replaceChildren();
    this.#guides.replaceChildren();
    this.follow();
  }

  /** Follows what the dial looks like now. */
  follow() {
    this.#handles = allHandles();
    while (this.#group.children.length > this.#handles.length) this.#group.lastElementChild?.remove();
    // To ask for it makes the browser lay out the page at once; while one drags the picture stays as it is.
    if (!this.held) this.#scale = this.#group.getScreenCTM()?.a || 4;
    const scale = this.#scale;
    this.#handles.forEach((handle, n) => {
      const group = this.#group.children[n] ?? this.#group.appendChild(this.#begin(n));
      const [reach, shape, knob] = group.children;
      dress(group, { "aria-label": handle.words, "data-handle": handle.name });
      dress(reach, { cx: handle.at.x, cy: handle.at.y, r: REACH / scale });
      dress(shape, handle.d ? { d: handle.d, transform: handle.shift ? `translate(${handle.shift.x} ${handle.shift.y})` : null } : { d: "M0 0" });
      // What has an outline of its own shows that; a knob would hide what is in it.
      dress(knob, { cx: handle.at.x, cy: handle.at.y, r: handle.shift ? 0 : 5 / scale });
    });
  }

  /** @param {number} n */
  #begin(n) {
    const group = draw("g", { class: "handle-group", tabindex: 0, role: "button" }, draw("circle", { class: "reach" }), draw("path", { class: "handle" }), draw("circle", { class: "knob" }));
    group.addEventListener("pointerdown", (event) => this.#drag(event, n));
    group.addEventListener("keydown", (event) => this.#key(event, n));
    return group;
  }

  /** @param {PointerEvent} event @returns {Place} */
  #place(event) {
    const matrix = this.#group.getScreenCTM();
    const p = matrix ? new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse()) : new DOMPoint();
    return { x: p.x, y: p.y };
  }

  /** @param {PointerEvent} event @param {number} n */
  #drag(event, n) {
    if (event.button !== 0 || this.held) return;
    event.preventDefault();
    event.stopPropagation();
    const handle = this.#handles[n];
    const from = this.#place(event);
    const on = board.state?.version;
    const target = /** @type {SVGElement} */ (event.currentTarget);
    target.setPointerCapture(event.pointerId);
    target.focus();
    this.held = true;
    /** @type {import("./movable.js").Moved | null} */
    let moved = null;
    const quiet = new AbortController();
    const { signal } = quiet;
    target.addEventListener(
      "pointermove",
      (event) => {
        const to = this.#place(event);
        if (!moved && Math.hypot(to.x - from.x, to.y - from.y) < 0.3) return;
        moved = handle.move({ x: handle.at.x + to.x - from.x, y: handle.at.y + to.y - from.y }, event.shiftKey);
        this.#guide(moved);
        this.#try(moved);
      },
      { signal },
    );
    const letGo = (/** @type {boolean} */ keep) => {
      quiet.abort();
      this.held = false;
      this.#guides.replaceChildren();
      if (keep && moved) this.#keep(handle, moved, on);
      else board.giveUp();
    };
    target.addEventListener("pointerup", () => letGo(true), { signal });
    target.addEventListener("pointercancel", () => letGo(false), { signal });
    addEventListener("keydown", (event) => event.key === "Escape" && letGo(false), { signal });
  }

  /** @param {KeyboardEvent} event @param {number} n */
  #key(event, n) {
    const [x, y] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key] ?? [0, 0];
    if (x === 0 && y === 0) return;
    event.preventDefault();
    const handle = this.#handles[n];
    this.#keep(handle, handle.nudge(x, y));
  }

  /** @param {import("./movable.js").Moved} moved */
  async #try(moved) {
    const refusal = await board.attempt(moved.changes);
    this.say(refusal ? refusal.refusal.what : moved.says);
  }

  /** @param {Handle} handle @param {import("./movable.js").Moved} moved @param {string} [on] */
  async #keep(handle, moved, on) {
    const refusal = await board.edit(moved.changes, `${handle.words}: ${moved.says}`, on);
    const text = refusal ? refusal.says : `${handle.words}: ${moved.says}`;
    this.say(text);
    announce(text);
  }

  /** Shows what a thing has come in line with. @param {import("./movable.js").Moved} moved */
  #guide(moved) {
    const { x, y, width, height } = board.piece("dial").around;
    const lines = moved.guides.map((guide) => {
      if ("angle" in guide) {
        const [dx, dy] = [Math.cos(guide.angle) * 60, Math.sin(guide.angle) * 60];
        return `M${guide.from.x - dx} ${guide.from.y - dy}l${2 * dx} ${2 * dy}`;
      }
      return "x" in guide ? `M${guide.x} ${y - 20}v${height + 40}` : `M${x - 20} ${guide.y}h${width + 40}`;
    });
    this.#guides.replaceChildren(...lines.map((d) => draw("path", { class: "guide", d })));
    if (moved.snapped) this.say(`${moved.says}, ${texts.dial.snap(moved.snapped)}`);
  }
}
