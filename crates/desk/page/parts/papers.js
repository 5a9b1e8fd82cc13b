// @ts-check
/** What leaves the house without a job folder: the workbook and each document of it, the turning page, and the code that comes back. */

import { ask, Sorry, tell } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.papers;

class PaperList extends HTMLElement {
  #quiet = new AbortController();
  #documents = make("ul", { class: "papers" });
  #says = make("div", { role: "status" });
  /** @type {{ word: string, title: string }[] | null} */
  #known = null;

  async connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    const code = make("input", { type: "text", "aria-label": words.code, placeholder: "7KQ-2M4X", autocomplete: "off", spellcheck: "false" });
    const form = make("form", { class: "code" }, make("label", {}, words.code), make("div", { class: "row" }, code, make("button", { type: "submit" }, words.read)), this.#says);
    form.addEventListener("submit", (event) => (event.preventDefault(), this.#read(code.value)));
    this.replaceChildren(make("h2", {}, words.heading), this.#documents, make("h3", {}, words.client), make("p", {}, words.client_how), this.#turning, form);
    board.addEventListener("pieces", () => this.#show(), { signal });
    this.#known ??= /** @type {any} */ (await ask("/papers"));
    this.#show();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  #turning = make("p");

  #show() {
    const query = (/** @type {Record<string, string>} */ more) => new URLSearchParams({ dial: board.dial, ...more });
    const open = (/** @type {string} */ href, /** @type {string} */ text) => make("a", { href, target: "_blank", class: "button" }, text);
    this.#turning.replaceChildren(open(`/turning?${query({})}`, words.turning));
    const dial = board.piece("dial");
    const says = !this.#known ? "" : this.#known.length === 0 ? words.without : board.stale || !dial || dial.refuse > 0 ? words.refused : "";
    if (says || !this.#known) return this.#documents.replaceChildren(make("li", { class: "says" }, says));
    const all = [{ word: "", title: words.whole }, ...this.#known];
    this.#documents.replaceChildren(...all.map(({ word, title }) => make("li", {}, open(`/paper?${query(word ? { document: word } : {})}`, title))));
  }

  /** @param {string} code */
  async #read(code) {
    try {
      const { cover, wheel, changes } = await tell("/choice", { dial: board.dial, code });
      const says = words.pairing(cover, wheel);
      const wear = make("button", { type: "button", class: "main", onclick: async () => {
        const refusal = await board.edit(changes, words.worn(cover, wheel));
        this.#says.replaceChildren(refusal ? make("p", { class: "wrong" }, refusal.says) : make("p", {}, words.worn(cover, wheel)));
      } }, words.wear);
      this.#says.replaceChildren(make("p", {}, says), wear);
      announce(says);
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.#says.replaceChildren(make("p", { class: "wrong" }, error.refusal.what));
    }
  }
}
customElements.define("paper-list", PaperList);
