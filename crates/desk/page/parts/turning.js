// @ts-check
/** Wheels turned with a finger or the mouse: by the bared rim, or through the window. */

import { board } from "../lib/board.js";
import { still } from "../lib/dom.js";
import { turns } from "../lib/turns.js";
import { wheel as byMouseWheel } from "./wheel-knobs.js";

/** How long a wheel takes to come to rest, in ms. */
const REST = 160;

/**
 * @param {SVGSVGElement} svg
 * @param {() => boolean} allowed
 * @param {AbortSignal} signal
 */
export function turnByHand(svg, allowed, signal) {
  /** @type {{ wheel: number, pointer: number, angle: number, grip: Element } | null} */
  let held = null;

  /** @param {Event} event */
  const wheelAt = (event) => {
    const part = event.target instanceof Element ? event.target.closest("[data-wheel]") : null;
    return part && allowed() ? { part, wheel: Number(part.getAttribute("data-wheel")) } : null;
  };

  /** Angle of the pointer about a wheel's middle, in degrees as SVG turns. @param {PointerEvent} event @param {number} i */
  const angleAt = (event, i) => {
    const group = /** @type {SVGGraphicsElement | null} */ (svg.querySelector(`.wheel[data-wheel="${i}"]`));
    const matrix = group?.getScreenCTM();
    if (!matrix) return 0;
    const p = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return (Math.atan2(p.y, p.x) * 180) / Math.PI;
  };

  svg.addEventListener(
    "pointerdown",
    (event) => {
      const at = wheelAt(event);
      if (!at || event.button !== 0) return;
      event.preventDefault();
      held = { wheel: at.wheel, pointer: event.pointerId, angle: angleAt(event, at.wheel), grip: at.part };
      svg.setPointerCapture(event.pointerId);
      at.part.classList.add("held");
    },
    { signal },
  );
  svg.addEventListener(
    "pointermove",
    (event) => {
      if (!held || event.pointerId !== held.pointer) return;
      const now = angleAt(event, held.wheel);
      // The shorter way round.
      const by = ((now - held.angle + 540) % 360) - 180;
      held.angle = now;
      const step = board.wheels[held.wheel]?.step;
      if (step) turns.turn(held.wheel, turns.at(held.wheel) + by / step);
    },
    { signal },
  );
  // A finger on a wheel, or on a handle, moves that and not the page.
  svg.addEventListener(
    "touchstart",
    (event) => {
      if (wheelAt(event) || (event.target instanceof Element && event.target.closest(".handle-group"))) event.preventDefault();
    },
    { signal, passive: false },
  );
  const letGo = (/** @type {PointerEvent} */ event) => {
    if (!held || event.pointerId !== held.pointer) return;
    held.grip.classList.remove("held");
    comeToRest(held.wheel);
    held = null;
  };
  svg.addEventListener("pointerup", letGo, { signal });
  svg.addEventListener("pointercancel", letGo, { signal });
  svg.addEventListener(
    "wheel",
    (event) => {
      const at = wheelAt(event);
      if (at) byMouseWheel(event, at.wheel);
    },
    { signal, passive: false },
  );
}

/** Slides on to the nearest stop. @param {number} wheel */
function comeToRest(wheel) {
  const from = turns.at(wheel);
  const to = Math.round(from);
  if (still() || from === to) return turns.rest(wheel);
  const began = performance.now();
  const slide = (/** @type {number} */ now) => {
    const part = Math.min((now - began) / REST, 1);
    turns.turn(wheel, from + (to - from) * (1 - (1 - part) ** 3));
    if (part < 1) requestAnimationFrame(slide);
    else turns.turn(wheel, to);
  };
  requestAnimationFrame(slide);
}
