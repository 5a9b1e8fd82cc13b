// @ts-check
/** Values as words of a sentence: each is a button that can be touched and changed in place. */

import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

/** @typedef {import("../lib/types.js").Value} Value */
/** @typedef {import("../lib/types.js").Param} Param */

/** A value as a word; `sayValue` fills it. @param {string} path @param {(word: HTMLButtonElement) => void} edit */
export function valueWord(path, edit) {
  /** @type {HTMLButtonElement} */
  const word = make("button", { type: "button", class: "value", "data-path": path, "aria-expanded": "false", onclick: () => edit(word) });
  return word;
}

/** Says a value, and where it comes from. @param {HTMLElement} word @param {Value} value @param {Param} param */
export function sayValue(word, value, param) {
  const shown = inWords(value, param);
  if (word.textContent !== shown) word.textContent = shown;
  const name = `value ${value.from}`;
  if (word.className !== name) word.className = name;
  const label = texts.value.label(param.words, shown);
  if (word.getAttribute("aria-label") !== label) word.setAttribute("aria-label", label);
}

/** A sentence with values in it; what is said right after a value stays with it. @param {string} text @param {(path: string) => Node} word */
export function sentence(text, word) {
  const parts = text.split(/[{}]/);
  return parts.map((part, n) => {
    if (n % 2 === 0) return n > 0 && /^[.,;:]/.test(part) ? part.slice(1) : part;
    const stop = /^[.,;:]/.test(parts[n + 1] ?? "") ? (parts[n + 1][0] ?? "") : "";
    return stop ? make("span", { class: "together" }, word(part), stop) : word(part);
  });
}

/** @param {Value} value @param {Param} param */
function inWords(value, param) {
  if (param.kind === "flag") return value.shown === "true" ? texts.value.yes : texts.value.no;
  // What the table says of a value that nothing derives yet names other values as a file does.
  return (value.from === "derived" ? value.shown.replaceAll("`", "") : value.shown) || texts.value.none;
}
