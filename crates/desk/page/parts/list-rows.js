// @ts-check
/** Lists that are written as text, changed row by row: a free polygon's corners, and words of which several may be chosen. */

import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.value;

/** @param {HTMLInputElement} input @param {() => void} changed */
function writes(input, changed) {
  return (/** @type {string} */ text) => {
    input.value = text;
    changed();
  };
}

/** Corners as rows of two lengths each. @param {HTMLInputElement} input @param {() => void} changed */
export function cornerRows(input, changed) {
  const room = make("div", { class: "corners", role: "group", "aria-label": words.corners });
  const write = writes(input, changed);
  const read = () => input.value.split(";").map((pair) => pair.split(",").map((one) => one.trim())).filter((pair) => pair.length === 2);
  const tell = (/** @type {string[][]} */ all) => write(all.map((pair) => pair.join(", ")).join("; "));
  const fill = () => {
    const all = read();
    const rows = all.map((pair, n) => {
      const one = (/** @type {0 | 1} */ k) => make("input", { type: "text", value: pair[k], "aria-label": words.corner(n + 1, k), onchange: (/** @type {Event} */ event) => {
        pair[k] = /** @type {HTMLInputElement} */ (event.target).value;
        tell(all);
      } });
      const out = make("button", { type: "button", "aria-label": words.corner_out(n + 1), onclick: () => (tell(all.filter((_, other) => other !== n)), fill()) }, "\u2212");
      return make("div", { class: "row" }, one(0), one(1), out);
    });
    const add = make("button", { type: "button", onclick: () => {
      const [a, b] = [all.at(-1) ?? ["0 mm", "0 mm"], all[0] ?? ["10 mm", "0 mm"]];
      // Midway between the last corner and the first.
      tell([...all, [between(a[0], b[0]), between(a[1], b[1])]]);
      fill();
    } }, words.corner_add);
    room.replaceChildren(...rows, add);
  };
  fill();
  return room;
}

/** Midway between two lengths of one unit. @param {string} a @param {string} b */
function between(a, b) {
  const unit = /[a-z"]+\s*$/.exec(a)?.[0].trim() ?? "mm";
  return `${Number(((parseFloat(a) + parseFloat(b)) / 2).toFixed(3))} ${unit}`;
}

/** Words of which several may be chosen; the order is that of the choosing. @param {HTMLInputElement} input @param {string[]} all @param {() => void} changed */
export function wordBoxes(input, all, changed) {
  const write = writes(input, changed);
  const chosen = () => input.value.split(",").map((one) => one.trim()).filter((one) => all.includes(one));
  const boxes = all.map((word) => {
    const box = make("input", { type: "checkbox", checked: chosen().includes(word), onchange: () => write((box.checked ? [...chosen(), word] : chosen().filter((one) => one !== word)).join(", ")) });
    return make("label", { class: "choose" }, box, make("span", {}, word));
  });
  return make("div", { role: "group", "aria-label": words.several }, ...boxes);
}
