// @ts-check
/** Why the standard that the dial file names could not be had: its file, the lines of its mistakes, and what to do. */

import { board } from "../lib/board.js";
import { make } from "../lib/dom.js";
import { link } from "../lib/route.js";
import { texts } from "../texts.js";

const words = texts.standard;

/** @typedef {{ what: string, help: string, file: string | null, mistakes: import("../lib/types.js").Mistake[] }} Trouble */

/** Nothing where there is none. @param {boolean} [brief] Without the mistakes in it. @returns {HTMLElement[]} */
export function standardTrouble(brief = false) {
  const trouble = /** @type {Trouble | null | undefined} */ (board.piece("mistakes")?.standard);
  if (!trouble) return [];
  const { file } = trouble;
  const place = (/** @type {number} */ line) => (file ? make("a", { href: `${link({ view: "writing", dial: file })}&line=${line}` }, words.line(file, line)) : words.line("", line));
  const each = (brief ? [] : trouble.mistakes).map((one) => make("p", { class: "why" }, one.at ? place(one.at.line) : "", one.at ? ": " : "", `${one.what}${one.at ? `, ${one.at.words}` : ""}. ${one.help}`));
  return [make("p", {}, `${trouble.what}.`), ...each, make("p", { class: "why" }, texts.writing.help, trouble.help)];
}
