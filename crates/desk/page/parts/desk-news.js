// @ts-check
/** What the maker should know now: refusals, changes from outside, and two versions where both sides changed. */

import { board } from "../lib/board.js";
import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.news;

class DeskNews extends HTMLElement {
  #news = make("div", { role: "alert" });
  #both = make("div");

  connectedCallback() {
    this.append(this.#news, this.#both);
    board.addEventListener("outside", () => this.say(words.outside));
    board.addEventListener("gone", () => this.say(words.gone));
    board.addEventListener("state", () => this.#show());
    board.addEventListener("opened", () => this.#news.replaceChildren());
  }

  /** @param {string} text @param {string} [help] */
  say(text, help = "") {
    const close = make("button", { type: "button", onclick: () => this.#news.replaceChildren() }, words.close);
    this.#news.replaceChildren(make("div", { class: "news" }, make("p", {}, help ? `${text}. ${help}` : text), close));
  }

  /** Versions that were set aside, beside what the file holds. */
  #show() {
    const kept = board.state?.kept ?? [];
    const now = board.state?.text ?? "";
    this.#both.replaceChildren(
      ...kept.map((one) => {
        const settle = (/** @type {boolean} */ take) => () => board.settle(one.version, take);
        return make(
          "section",
          { class: "both", "aria-label": words.yours(one.words) },
          make("p", {}, words.both),
          make("div", {}, make("h2", {}, words.file_now), lines(now, one.text, "del"), make("button", { type: "button", onclick: settle(false) }, words.leave)),
          make("div", {}, make("h2", {}, words.yours(one.words)), lines(one.text, now, "ins"), make("button", { type: "button", onclick: settle(true) }, words.take)),
        );
      }),
    );
  }
}
customElements.define("desk-news", DeskNews);

/** A text with the lines marked that the other does not have. @param {string} text @param {string} other @param {"ins" | "del"} mark */
function lines(text, other, mark) {
  const there = new Set(other.split("\n"));
  const all = text.split("\n").map((line) => (there.has(line) ? `${line}\n` : make(mark, {}, line)));
  return make("pre", { tabindex: 0 }, ...all);
}

/** Shows a refusal. @param {{ what: string, help?: string }} refusal */
export function say(refusal) {
  const news = /** @type {DeskNews | null} */ (document.querySelector("desk-news"));
  news?.say(refusal.what, refusal.help);
}
