// @ts-check
/** The wheels' figures side by side, beside the map: force, clicks, rest, gap and verdict of each. */

import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.magnets;

/** @param {any[]} wheels What the report says of each wheel's magnets. */
export function wheelFigures(wheels) {
  const figure = (/** @type {number | null} */ value, /** @type {string} */ unit) => (value === null ? words.off : `${Math.round(value * 100) / 100} ${unit}`);
  const spread = (/** @type {any} */ one, /** @type {string} */ unit) => words.spread(figure(one.likely, unit), figure(one.least, unit), figure(one.most, unit));
  const rows = wheels.map(({ wheel, held, clicks }) => {
    if (!held) return make("tr", {}, make("th", { scope: "row" }, wheel), make("td", { colspan: words.wheel_columns.length - 1 }, words.no_pair));
    const felt = clicks ? words.clicks(clicks.felt, clicks.torque_n_mm ?? null) : words.no_clicks;
    const cells = [spread(held.effort_n, words.units.n), felt, spread(held.rest_mm, words.units.mm), spread(held.gap_mm, words.units.mm)];
    return make("tr", {}, make("th", { scope: "row" }, wheel), ...cells.map((cell) => make("td", {}, cell)), make("td", { class: held.verdict === "easy and keeps" ? "well" : "mend" }, held.verdict));
  });
  return make(
    "div",
    { class: "wide", tabindex: 0, role: "region", "aria-label": words.wheels },
    make("table", { class: "plain wheel-figures" }, make("thead", {}, make("tr", {}, ...words.wheel_columns.map((column) => make("th", { scope: "col" }, column)))), make("tbody", {}, ...rows)),
  );
}
