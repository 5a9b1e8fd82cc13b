// @ts-check
/** A colour that is written as text, picked by eye. */

import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

const COLOUR = /^#[0-9a-f]{6}$/i;

/** @param {string} words @param {HTMLInputElement} input @param {() => void} changed */
export function colourPick(words, input, changed) {
  const pick = make("input", { type: "color", value: COLOUR.test(input.value) ? input.value : "#000000", "aria-label": texts.value.pick(words) });
  pick.addEventListener("input", () => {
    input.value = pick.value;
    changed();
  });
  input.addEventListener("input", () => {
    if (COLOUR.test(input.value.trim())) pick.value = input.value.trim();
  });
  return pick;
}
