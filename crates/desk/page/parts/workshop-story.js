// @ts-check
/** The workshop's machine, and what its hands find easy, in plain words; every value of them is changed in place. */

import { ask } from "../lib/api.js";
import { board } from "../lib/board.js";
import { draw, make } from "../lib/dom.js";
import { link } from "../lib/route.js";
import { shop } from "../lib/shop.js";
import { texts } from "../texts.js";
import { bothVersions } from "./both-versions.js";
import { say } from "./desk-news.js";
import { Editor } from "./value-editor.js";
import { sayValue, sentence, valueWord } from "./value-words.js";

const words = texts.workshop_story;

/** @typedef {import("../lib/types.js").Param} Param */

class WorkshopStory extends HTMLElement {
  #quiet = new AbortController();
  /** @type {Record<string, Param> | null} */
  #table = null;
  #editor = new Editor(shop);
  #undo = make("button", { type: "button", onclick: () => this.#step(() => shop.undo()) }, texts.head.undo_short);
  #redo = make("button", { type: "button", onclick: () => this.#step(() => shop.redo()) }, texts.head.redo_short);
  #where = make("p");
  #both = make("div");
  #lines = make("div", { class: "in-words" });
  #then = make("p", { role: "status" });

  async connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    this.replaceChildren(make("section", {}, make("h2", {}, words.heading), this.#where, this.#both, this.#lines, make("div", { class: "deeds" }, this.#undo, this.#redo), this.#then));
    this.#table ??= /** @type {any} */ (await ask("/parameters")).workshop;
    if (signal.aborted) return;
    shop.follow(signal, () => this.#show());
    board.addEventListener("pieces", () => this.#verdict(), { signal });
  }

  disconnectedCallback() {
    this.#editor.close();
    this.#quiet.abort();
  }

  #show() {
    const { state } = shop;
    if (!state || !this.#table) return;
    const readable = Object.keys(state.order).length > 0;
    const writing = make("a", { href: link({ view: "writing", dial: board.dial }) }, words.writing);
    const lies = state.file === null ? words.none : `${texts.workshop.lies(state.file)} ${state.ours ? "" : texts.workshop.above}`;
    this.#where.replaceChildren(`${lies} `, writing, ".");
    this.#where.className = state.mistakes.length > 0 ? "wrong" : "";
    if (state.mistakes.length > 0) this.#where.prepend(`${texts.found.workshop} `);
    this.#both.replaceChildren(...bothVersions(state, (kept, take) => this.#step(() => shop.settle(kept, take))));
    if (!readable) {
      this.#editor.close();
      this.#lines.replaceChildren();
    } else if (this.#lines.childElementCount === 0) {
      this.#lines.replaceChildren(...words.lines.map((line) => make("p", {}, ...sentence(line, (path) => this.#value(path)))));
    }
    for (const word of /** @type {NodeListOf<HTMLButtonElement>} */ (this.#lines.querySelectorAll("[data-path]"))) {
      const path = word.dataset.path ?? "";
      sayValue(word, state.order[path], this.#table[path]);
      word.disabled = !state.ours;
      word.previousElementSibling?.querySelector("rect")?.setAttribute("fill", state.order[path].shown);
    }
    this.#editor.follow();
    for (const [button, what, tell] of /** @type {const} */ ([
      [this.#undo, state.undo, texts.head.undo],
      [this.#redo, state.redo, texts.head.redo],
    ])) {
      button.disabled = !what || !state.ours;
      button.title = tell(what);
      button.setAttribute("aria-label", tell(what));
    }
    this.#verdict();
  }

  /** What comes of it for the dial on the mat. */
  #verdict() {
    const dial = board.piece("dial");
    const says = !dial || board.stale ? "" : dial.refuse > 0 ? texts.found.to_refuse(dial.refuse) : dial.mend > 0 ? texts.found.to_mend(dial.mend) : texts.found.well;
    if (this.#then.dataset.says === says) return;
    this.#then.dataset.says = says;
    this.#then.replaceChildren(...(says ? [words.then(dial.name, says), " ", make("a", { href: link({ view: "mat", dial: board.dial }) }, words.look)] : []));
  }

  /** A value, and the colour that it names. @param {string} path */
  #value(path) {
    const param = this.#table?.[path];
    const word = valueWord(path, () => param && this.#editor.toggle(word, path, param, [], () => shop.state?.order[path]));
    if (param?.kind !== "colour") return word;
    const patch = draw("svg", { class: "patch", viewBox: "0 0 10 10", "aria-hidden": "true" }, draw("rect", { width: 10, height: 10 }));
    return make("span", { class: "together" }, patch, word);
  }

  /** @param {() => Promise<import("../lib/api.js").Sorry | null>} step */
  async #step(step) {
    this.#editor.close();
    const refusal = await step();
    if (refusal) say(refusal.refusal);
  }
}
customElements.define("workshop-story", WorkshopStory);
