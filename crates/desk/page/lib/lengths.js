// @ts-check
/** Lengths and angles as the dial file writes them. */

import { board } from "./board.js";

const INCH = 25.4;

/** @returns {"mm" | "inch"} */
const units = () => board.piece("dial")?.units ?? "mm";

/** The step in which things are dragged, in mm. */
export const grain = () => (units() === "inch" ? INCH / 32 : 0.5);

/** @param {number} mm */
export function length(mm) {
  if (units() === "inch") return `${Number((mm / INCH).toFixed(3))} in`;
  return `${Number(mm.toFixed(2))} mm`;
}

/** @param {number} degrees */
export const angle = (degrees) => `${Number((((degrees % 360) + 360) % 360).toFixed(1))} deg`;

/** A length as it is written, in mm. @param {string} text */
export function mm(text) {
  const unit = /[a-z"]+\s*$/.exec(text)?.[0].trim() ?? "mm";
  return parseFloat(text) * (unit === "mm" ? 1 : unit === "cm" ? 10 : INCH);
}

/** A place from the cover's middle, to the right and up. @param {number} x @param {number} y */
export const point = (x, y) => [length(x + 0), length(y + 0)];

/** How far one step goes, by the unit, and to how many places a figure is then told. @type {Record<string, [number, number]>} */
const STEPS = { "": [1, 2], deg: [1, 2], mm: [0.1, 2], cm: [0.1, 2], rad: [0.1, 2], in: [1 / 64, 6], inch: [1 / 64, 2], N: [0.05, 2], g: [1, 2] };

/** A figure some steps on: "3.2 mm" and 1 give "3.3 mm". @param {string} text @param {number} steps @param {number} [size] Of a step without a unit. */
export function stepped(text, steps, size) {
  const [, figure, unit] = /^\s*(-?[0-9.]+)\s*([a-zA-Z]*)\s*$/.exec(text) ?? [];
  if (figure === undefined || !(unit in STEPS)) return null;
  const [step, places] = STEPS[unit];
  return `${Number((Number(figure) + steps * (unit === "" && size ? size : step)).toFixed(places))}${unit ? ` ${unit}` : ""}`;
}
