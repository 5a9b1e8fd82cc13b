// @ts-check
/** Two versions of a file side by side, where both sides changed the same place: one is chosen, none is lost. */

import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.news;

/**
 * The versions that were set aside, each beside what the file holds.
 * @param {import("../lib/types.js").State | null} state
 * @param {(kept: string, take: boolean) => unknown} settle
 */
export function bothVersions(state, settle) {
  const now = state?.text ?? "";
  return (state?.kept ?? []).map((one) => {
    const choose = (/** @type {boolean} */ take) => () => settle(one.version, take);
    return make(
      "section",
      { class: "both", "aria-label": words.yours(one.words) },
      make("p", {}, words.both),
      make("div", {}, make("h2", {}, words.file_now), lines(now, one.text, "del"), make("button", { type: "button", onclick: choose(false) }, words.leave)),
      make("div", {}, make("h2", {}, words.yours(one.words)), lines(one.text, now, "ins"), make("button", { type: "button", onclick: choose(true) }, words.take)),
    );
  });
}

/** A text with the lines marked that the other does not have. @param {string} text @param {string} other @param {"ins" | "del"} mark */
function lines(text, other, mark) {
  const there = new Set(other.split("\n"));
  const all = text.split("\n").map((line) => (there.has(line) ? `${line}\n` : make(mark, {}, line)));
  return make("pre", { tabindex: 0 }, ...all);
}
