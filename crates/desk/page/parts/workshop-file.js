// @ts-check
/** The workshop file, read and written like the dial file, with its places; and what stands on the workshop's shelf. */

import { coded, make } from "../lib/dom.js";
import { shop } from "../lib/shop.js";
import { texts } from "../texts.js";
import { bothVersions } from "./both-versions.js";

const words = texts.workshop;

class WorkshopFile extends HTMLElement {
  #quiet = new AbortController();
  #text = make("textarea", { "aria-label": words.label, spellcheck: "false", autocomplete: "off", autocapitalize: "off", wrap: "off" });
  #keep = make("button", { type: "button", class: "main", onclick: () => this.#do(shop.write(this.#text.value, texts.workshop.words, this.#on)) }, texts.writing.keep);
  #throw = make("button", { type: "button", onclick: () => this.#take(true) }, texts.writing.throw);
  #undo = make("button", { type: "button", onclick: () => this.#do(shop.undo()) }, texts.head.undo_short);
  #redo = make("button", { type: "button", onclick: () => this.#do(shop.redo()) }, texts.head.redo_short);
  /** A field shows a part of what is in it; paper shows all. */
  #paper = make("pre", { class: "for-paper" });
  #status = make("p", { role: "status" });
  #wrong = make("p", { class: "wrong", role: "alert" });
  #mistakes = make("ul", { class: "mistakes" });
  #where = make("p");
  #both = make("div");
  #writing = make("div", { class: "writing" });
  #shelf = make("div");
  /** What the file held when its text was last taken over, and the version of that. */
  #disk = "";
  #on = "";

  connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    this.#writing.replaceChildren(make("div", {}, this.#text, this.#paper), make("div", {}, make("div", { class: "deeds" }, this.#keep, this.#throw, this.#undo, this.#redo), this.#status, this.#wrong, this.#mistakes));
    this.replaceChildren(make("h2", {}, words.heading), this.#where, this.#both, this.#writing, this.#shelf);
    this.#text.addEventListener("input", () => this.#show(), { signal });
    shop.follow(signal, () => this.#take(false));
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  /** @param {Promise<import("../lib/api.js").Sorry | null>} deed */
  async #do(deed) {
    const refusal = await deed;
    this.#wrong.textContent = refusal ? refusal.says : "";
    if (!refusal) this.#take(true);
  }

  /** What the file holds now. */
  get #now() {
    return shop.state?.file ? shop.state.text : "";
  }

  /** Takes over what is on disk, unless something is being written here. @param {boolean} surely */
  #take(surely) {
    const now = this.#now;
    if (surely || this.#text.value === this.#disk) this.#text.value = now;
    if (this.#text.value === now) [this.#disk, this.#on] = [now, shop.state?.version ?? ""];
    this.#show();
  }

  #show() {
    const told = shop.state;
    if (!told) return;
    this.#writing.hidden = told.file === null;
    this.#text.readOnly = !told.ours;
    const begin = make("button", { type: "button", onclick: () => this.#do(shop.begin()) }, words.begin);
    this.#where.replaceChildren(...(told.file === null ? [words.none, " ", begin] : [words.lies(told.file), " ", told.ours ? "" : words.above]));
    const changed = this.#text.value !== this.#now;
    this.#keep.disabled = this.#throw.disabled = !changed || !told.ours;
    this.#undo.disabled = changed || !told.undo;
    this.#redo.disabled = changed || !told.redo;
    const { mistakes } = told;
    this.#status.textContent = changed ? texts.writing.changed : mistakes.length > 0 ? texts.writing.mistakes(mistakes.length) : texts.writing.well;
    this.#paper.textContent = this.#text.value;
    this.#text.setAttribute("aria-invalid", String(mistakes.length > 0));
    this.#mistakes.replaceChildren(...mistakes.map((mistake) => {
      const places = [mistake.at, ...mistake.also].filter((one) => one !== null);
      const links = places.map((one) => make("p", {}, make("button", { type: "button", onclick: () => this.#select(one.from, one.to) }, texts.writing.go(one.line)), ` ${one.words}`));
      return make("li", {}, make("strong", {}, ...coded(mistake.what)), ...links, make("p", {}, texts.writing.help, ...coded(mistake.help)));
    }));
    this.#both.replaceChildren(...bothVersions(told, (kept, take) => this.#do(shop.settle(kept, take))));
    const { has } = told;
    const open = [...this.#shelf.querySelectorAll("details")].map((one) => one.open);
    this.#shelf.replaceChildren(
      make("p", {}, words.machine(has.machine, has.bed)),
      table(words.stocks(has.stocks.length), words.stock_columns, has.stocks.map((/** @type {any} */ one) => [one.name, one.layers, one.thickness, one.kerf, one.source])),
      table(words.magnets(has.magnets.length), words.magnet_columns, has.magnets.map((/** @type {any} */ one) => [one.name, one.size, one.remanence, one.price ?? "", one.source])),
    );
    this.#shelf.querySelectorAll("details").forEach((one, n) => (one.open = open[n] ?? false));
  }

  /** @param {number} from @param {number} to */
  #select(from, to) {
    this.#text.focus();
    this.#text.setSelectionRange(from, Math.max(to, from + 1));
  }
}
customElements.define("workshop-file", WorkshopFile);

/** @param {string} title @param {string[]} columns @param {any[][]} rows */
function table(title, columns, rows) {
  return make(
    "details",
    {},
    make("summary", {}, title),
    make(
      "div",
      { class: "wide", tabindex: 0, role: "region", "aria-label": title },
      make(
        "table",
        { class: "plain" },
        make("thead", {}, make("tr", {}, ...columns.map((column) => make("th", { scope: "col" }, column)))),
        make("tbody", {}, ...rows.map(([first, ...rest]) => make("tr", {}, make("th", { scope: "row" }, first), ...rest.map((cell) => make("td", {}, String(cell)))))),
      ),
    ),
  );
}
