// @ts-check
/** Adding something: a button that opens a line to write in, and how such a line is read. */

import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.story;

/**
 * @param {string} text The button.
 * @param {string} label The line.
 * @param {string} example
 * @param {(text: string) => Promise<string>} add Adds what was written; says what is wrong with it, if anything is.
 */
export function adder(text, label, example, add) {
  const input = make("input", { type: "text", "aria-label": label, placeholder: example });
  const wrong = make("p", { class: "wrong", role: "alert" });
  const form = make("form", { class: "editor", hidden: true }, make("label", {}, label), make("div", { class: "row" }, input, make("button", { type: "submit" }, texts.value.set)), wrong);
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const sent = input.value;
    wrong.textContent = await add(sent.trim());
    // The next may be under way already.
    if (!wrong.textContent && input.value === sent) input.value = "";
  });
  const button = make("button", { type: "button", "aria-expanded": "false", onclick: () => {
    form.hidden = !form.hidden;
    button.setAttribute("aria-expanded", String(!form.hidden));
    if (!form.hidden) input.focus();
  } }, text);
  return make("div", { class: "adder" }, button, form);
}

/** The name and the rest of "my oak: oak, 3.2 mm"; null where there is no name. @param {string} text */
export function named(text) {
  const found = /^([^"\\:]+):(.*)$/.exec(text);
  return found && { name: found[1].trim(), rest: found[2].trim() };
}

/**
 * Puts "cork, 1 mm" behind a stock's layers.
 * @param {string} stock
 * @param {string} text A material and a thickness.
 * @param {(changes: import("../lib/types.js").Change[], words: string) => Promise<string>} change
 * @returns {Promise<string>} What is wrong.
 */
export async function addLayer(stock, text, change) {
  const found = /^(.*),([^,]*)$/.exec(text);
  if (!found) return `${words.new_layer} ${words.new_layer_example}`;
  const value = { material: found[1].trim(), thickness: found[2].trim() };
  return change([{ do: "add", path: `stocks["${stock}"].layers`, value }], `${words.add_layer}: ${stock}`);
}
