// @ts-check
/**
 * The order as a story in plain words. Each value in it is a word that can be touched and changed in place; what the
 * story does not tell stands folded under it, so that everything in the dial file can be reached.
 */

import { ask } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, coded, make } from "../lib/dom.js";
import { texts } from "../texts.js";
import { adder, addLayer, named } from "./adder.js";
import { standardTrouble } from "./standard-trouble.js";
import { Editor } from "./value-editor.js";
import { sayValue, sentence, valueWord } from "./value-words.js";

const words = texts.story;

/** @typedef {import("../lib/types.js").Value} Value */
/** @typedef {import("../lib/types.js").Param} Param */

class OrderStory extends HTMLElement {
  #quiet = new AbortController();
  /** @type {import("../lib/types.js").Parameters | null} */
  #table = null;
  #editor = new Editor();
  /** What the story is built from; another shape of it is built anew. */
  #built = "";

  async connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    board.addEventListener("pieces", (event) => {
      const changed = /** @type {CustomEvent<Set<string>>} */ (event).detail;
      if (changed.has("order") || changed.has("dial")) this.#show();
    }, { signal });
    this.#table ??= /** @type {any} */ (await ask("/parameters"));
    this.#show();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  /** @returns {Record<string, Value>} */
  get #order() {
    return board.piece("order") ?? {};
  }

  /** The parameter of a path. @param {string} path @returns {Param | undefined} */
  #param(path) {
    const inner = path.slice(path.lastIndexOf("].") + 2);
    if (path.startsWith("counter[")) return this.#table?.counter[inner];
    if (path.startsWith("cover.art[")) return this.#table?.art[inner];
    if (path.startsWith("stocks[")) return path.includes("].layers[") ? this.#table?.layer[inner] : this.#table?.stock[inner];
    return this.#table?.dial[path];
  }

  #show() {
    const paths = Object.keys(this.#order);
    if (!this.#table || paths.length === 0) return;
    const chosen = paths.filter((path) => /(^|\.)(stock|values|symbols|text|symbol)$/.test(path)).map((path) => `${path} ${this.#order[path].from}`);
    const shape = `${board.dial} ${paths.length} ${chosen.join()}`;
    if (shape !== this.#built) {
      this.#built = shape;
      this.#build();
    }
    this.querySelectorAll("[data-path]").forEach((word) => this.#say(/** @type {HTMLElement} */ (word)));
    this.#troubled();
    this.#editor.follow();
  }

  /** A standard that cannot be had is told where it is chosen. */
  #troubled() {
    const word = this.querySelector('[data-path="standard"]');
    const trouble = standardTrouble();
    word?.classList.toggle("troubled", trouble.length > 0);
    const there = this.querySelector(".standard-trouble");
    if (!there) word?.closest("p")?.after(make("div", { class: "standard-trouble", role: "status" }, ...trouble));
    else if (there.textContent !== trouble.map((one) => one.textContent).join("")) there.replaceChildren(...trouble);
  }

  /** @param {HTMLElement} word */
  #say(word) {
    const path = word.dataset.path ?? "";
    const value = this.#order[path];
    const param = this.#param(path);
    if (!value || !param) return;
    sayValue(word, value, param);
  }

  /** A value as a word of the story. @param {string} path */
  #value(path) {
    return valueWord(path, (word) => this.#edit(word, path));
  }

  /** @param {HTMLButtonElement} word @param {string} path */
  #edit(word, path) {
    const param = this.#param(path);
    if (param) this.#editor.toggle(word, path, param, this.#table?.symbols ?? [], () => this.#order[path]);
  }

  #build() {
    this.#editor.close();
    const open = [...this.querySelectorAll("details")].map((one) => one.open);
    const order = this.#order;
    const counters = board.wheels.length;
    const told = new Set();
    const line = (/** @type {string} */ text, /** @type {string} */ base) => this.#line(text, base, told);
    const dial = words.dial.map(({ id, heading, lines }) =>
      make("section", { "data-part": id }, heading && make("h2", {}, heading), ...lines.map((text) => make("p", {}, ...line(text, "")))),
    );
    const each = Array.from({ length: counters }, (_, i) => this.#counter(i, line));
    const opening = make("p", {}, (words.count[counters] ?? String(counters)) + words.under);
    this.replaceChildren(
      make("h2", {}, words.heading),
      opening,
      ...dial.slice(0, 1),
      ...each,
      adder(words.add_counter, words.new_counter, words.new_counter_example, (text) => this.#addCounter(text)),
      ...dial.slice(1),
      this.#art(line),
      this.#rarer(Object.keys(order).filter((path) => !path.includes("[") && !told.has(path))),
      this.#stocks(),
    );
    this.querySelectorAll("details").forEach((one, n) => (one.open = open[n] ?? false));
  }

  /** Text with values in it; `{a|b}` is whichever of the two is written. @param {string} text @param {string} base @param {Set<string>} told */
  #line(text, base, told) {
    return sentence(text, (part) => {
      const all = part.split("|").map((path) => base + path);
      const path = all.find((one) => this.#order[one]?.from === "written") ?? all[0];
      all.forEach((one) => told.add(one));
      if (all.length > 1 && part === "stock|cover.stock") all.forEach((one) => one !== path && told.delete(one));
      return this.#value(path);
    });
  }

  /** @param {number} i @param {(text: string, base: string) => (Node | string)[]} line */
  #counter(i, line) {
    const base = `counter[${i}].`;
    const name = board.wheels[i]?.name ?? "";
    const lines = words.counter.map((text) => make("p", {}, ...line(text, base)));
    const told = new Set([...lines.flatMap((one) => [...one.querySelectorAll("[data-path]")].map((word) => /** @type {HTMLElement} */ (word).dataset.path))]);
    const rest = Object.keys(this.#order).filter((path) => path.startsWith(base) && !told.has(path));
    const remove = board.wheels.length > 1 && make("button", { type: "button", onclick: () => this.#change([{ do: "remove", path: `counter[${i}]` }], `${words.remove_counter}: ${name}`) }, words.remove_counter);
    return make("section", {}, make("h2", {}, name), ...lines, this.#rarer(rest, words.only_here, remove || null));
  }

  /** @param {(text: string, base: string) => (Node | string)[]} line */
  #art(line) {
    const count = Object.keys(this.#order).filter((path) => /^cover\.art\[\d+\]\.at$/.test(path)).length;
    const each = Array.from({ length: count }, (_, k) =>
      make("p", {}, ...line(words.art, `cover.art[${k}].`), " ", make("button", { type: "button", onclick: () => this.#change([{ do: "remove", path: `cover.art[${k}]` }], words.remove_art) }, words.remove_art)),
    );
    const symbols = this.#table?.symbols ?? [];
    const add = (/** @type {string} */ text) => {
      const value = symbols.includes(text) ? { symbol: text } : { text };
      return this.#change([{ do: "add", path: "cover.art", value: { ...value, at: ["0 mm", "0 mm"] } }], `${words.add_art}: ${text}`);
    };
    return make("section", {}, make("h2", {}, words.art_heading), ...each, adder(words.add_art, words.add_art, symbols[0] ?? "", add));
  }

  /** Stocks that the file describes itself: their layers, and what else is known of them. */
  #stocks() {
    const paths = Object.keys(this.#order).filter((path) => path.startsWith("stocks["));
    const names = new Set(paths.map((path) => path.slice('stocks["'.length, path.indexOf('"]'))));
    const each = [...names].map((name) => {
      const base = `stocks["${name}"]`;
      const layers = paths.filter((path) => path.startsWith(`${base}.layers[`) && path.endsWith(".material")).map((path, k) => {
        const layer = path.slice(0, -".material".length);
        const rest = paths.filter((one) => one.startsWith(`${layer}.`) && !/\.(material|thickness)$/.test(one));
        const out = make("button", { type: "button", onclick: () => this.#change([{ do: "remove", path: layer }], words.layer_out) }, words.layer_out);
        return make("div", {}, make("p", {}, words.layer(k + 1), this.#value(path), ", ", this.#value(`${layer}.thickness`), "."), this.#rarer(rest, words.layer_rarer, out));
      });
      const rest = paths.filter((path) => path.startsWith(`${base}.`) && !path.includes("].layers["));
      const out = make("button", { type: "button", onclick: () => this.#change([{ do: "leave", path: base }], `${words.stock_out}: ${name}`) }, words.stock_out);
      return make("section", {}, make("h3", {}, name), ...layers, adder(words.add_layer, words.new_layer, words.new_layer_example, (text) => this.#addLayer(name, text)), this.#rarer(rest, words.stock_rarer, out));
    });
    const add = (/** @type {string} */ text) => {
      const found = named(text);
      return found ? this.#addLayer(found.name, found.rest) : Promise.resolve(`${words.new_stock} ${words.new_stock_example}`);
    };
    return make("section", { "data-part": "stocks" }, make("h2", {}, words.stocks_heading), ...each, adder(words.add_stock, words.new_stock, words.new_stock_example, add));
  }

  /** @param {string} stock @param {string} text A material and a thickness. */
  #addLayer(stock, text) {
    return addLayer(stock, text, (changes, what) => this.#change(changes, what));
  }

  /** @param {string} text */
  #addCounter(text) {
    const found = /^(.*?)[:\s]+(-?\d+\s*\.\..*)$/.exec(text) ?? /^(.*?):(.*)$/.exec(text);
    if (!found) return Promise.resolve(`${words.new_counter} ${words.new_counter_example}`);
    const values = found[2].includes("..") ? found[2].trim() : found[2].split(",").map((one) => one.trim());
    return this.#change([{ do: "add", path: "counter", value: { name: found[1].trim(), values } }], `${words.add_counter}: ${found[1]}`);
  }

  /** @param {import("../lib/types.js").Change[]} changes @param {string} what @returns {Promise<string>} What is wrong. */
  async #change(changes, what) {
    const refusal = await board.edit(changes, what);
    announce(refusal ? refusal.refusal.what : what);
    return refusal ? refusal.says : "";
  }

  /** Values that the story does not tell, folded. @param {string[]} paths @param {string} [heading] @param {Node | null} [more] */
  #rarer(paths, heading = words.rarer, more = null) {
    const rows = paths.flatMap((path) => [make("dt", {}, ...coded(this.#param(path)?.words ?? path)), make("dd", {}, this.#value(path))]);
    return make("details", { class: "rarer" }, make("summary", {}, heading), make("dl", {}, ...rows), more);
  }
}
customElements.define("order-story", OrderStory);
