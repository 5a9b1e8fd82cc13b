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

/** A length with another figure: "3.2 mm" and 0.1 give "3.3 mm". @param {string} text @param {number} steps */
export function stepped(text, steps) {
  const found = /^\s*(-?[0-9.]+)\s*(mm|cm|in|inch|deg|rad|)\s*$/.exec(text);
  if (!found) return null;
  const unit = found[2];
  const size = unit === "deg" ? 1 : unit === "in" || unit === "inch" ? 1 / 64 : unit === "" ? 1 : 0.1;
  const decimals = unit === "in" || unit === "inch" ? 6 : 2;
  return `${Number((Number(found[1]) + steps * size).toFixed(decimals))}${unit ? ` ${unit}` : ""}`;
}
