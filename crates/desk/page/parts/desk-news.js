// @ts-check
/** What the maker should know now: refusals, changes from outside, and two versions where both sides changed. */

import { board } from "../lib/board.js";
import { make } from "../lib/dom.js";
import { texts } from "../texts.js";
import { bothVersions } from "./both-versions.js";

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
    this.#both.replaceChildren(...bothVersions(board.state, (kept, take) => board.settle(kept, take)));
  }
}
customElements.define("desk-news", DeskNews);

/** Shows a refusal. @param {{ what: string, help?: string }} refusal */
export function say(refusal) {
  const news = /** @type {DeskNews | null} */ (document.querySelector("desk-news"));
  news?.say(refusal.what, refusal.help);
}
