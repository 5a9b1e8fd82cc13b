// @ts-check
/**
 * What stands on the workshop's shelf, one by one: a stock with its kerf and layers, a magnet. Each value is changed in place; what is
 * the starter workshop's is copied into the file whole when it is changed.
 */

import { ask, Sorry } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, coded, make } from "../lib/dom.js";
import { shop } from "../lib/shop.js";
import { texts } from "../texts.js";
import { adder, addLayer, named } from "./adder.js";
import { swatch } from "./stock-choice.js";
import { Editor } from "./value-editor.js";
import { sayValue, valueWord } from "./value-words.js";

const words = texts.workshop_shelf;

/** @typedef {import("../lib/types.js").Value} Value */
/** @typedef {import("../lib/types.js").Param} Param */
/** @typedef {import("../lib/types.js").Change} Change */
/** @typedef {{ own: boolean, layers: number, order: Record<string, Value> }} One */

/** One kind of things: `<shelf-of kind="stocks">`. */
class ShelfOf extends HTMLElement {
  #quiet = new AbortController();
  #editor = new Editor(shop);
  /** @type {import("../lib/types.js").Parameters | null} */
  #table = null;
  #which = make("select", { onchange: () => this.#ask() });
  #picture = make("img", { alt: "", width: 240, height: 104 });
  #says = make("p");
  #values = make("div", { class: "of-shelf" });
  #wrong = make("p", { class: "wrong", role: "alert" });
  #fold = make("details");
  /** @type {One | null} */
  #one = null;
  /** What is shown: another shape of it is built anew. */
  #built = "";
  #names = "";

  get #kind() {
    return /** @type {"stocks" | "magnets"} */ (this.getAttribute("kind"));
  }

  /** @param {string} [name] */
  #of(name = this.#which.value) {
    return `${this.#kind}["${name}"]`;
  }

  async connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    const says = words[this.#kind];
    this.#which.setAttribute("aria-label", says.which);
    this.#fold.replaceChildren(make("summary", {}, says.heading), make("p", {}, says.how), make("label", { class: "which" }, `${says.which} `, this.#which), this.#kind === "stocks" ? this.#picture : "", this.#says, this.#values, this.#adder(), this.#wrong);
    this.replaceChildren(this.#fold);
    this.#table ??= /** @type {any} */ (await ask("/parameters"));
    if (signal.aborted) return;
    this.#fold.addEventListener("toggle", () => this.#ask(), { signal });
    shop.follow(signal, () => this.#follow());
  }

  disconnectedCallback() {
    this.#editor.close();
    this.#quiet.abort();
  }

  /** What stands there may have changed. */
  #follow() {
    /** @type {string[]} */
    const names = shop.state?.has[this.#kind].map((/** @type {{ name: string }} */ one) => one.name).sort() ?? [];
    if (this.#names !== names.join("\n")) {
      this.#names = names.join("\n");
      const had = this.#which.value;
      this.#which.replaceChildren(...names.map((name) => make("option", { value: name, selected: name === had }, name)));
    }
    this.hidden = !shop.state?.ours || names.length === 0 || Object.keys(shop.state.order).length === 0;
    this.#ask();
  }

  async #ask() {
    const of = this.#of();
    if (!this.#fold.open || !this.#which.value) return;
    try {
      const one = await ask("/workshop/shelf", { dial: board.dial, of });
      if (of === this.#of()) this.#show(of, one);
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.#wrong.textContent = error.refusal.what;
    }
  }

  /** @param {string} of @param {One} one */
  #show(of, one) {
    this.#one = one;
    const built = `${of} ${one.layers} ${one.own}`;
    if (built !== this.#built) {
      this.#built = built;
      this.#build(of, one);
    }
    this.#says.textContent = one.own ? words.own : words.starters;
    if (this.#kind === "stocks") this.#picture.src = swatch({ dial: board.dial, stock: this.#which.value, path: "stock", of: board.look });
    for (const word of /** @type {NodeListOf<HTMLElement>} */ (this.#values.querySelectorAll("[data-path]"))) {
      const path = word.dataset.path ?? "";
      const param = this.#param(path);
      if (param && one.order[path]) sayValue(word, one.order[path], param);
    }
    this.#editor.follow();
  }

  /** @param {string} path @returns {Param | undefined} */
  #param(path) {
    const table = path.includes('"].layers[') ? this.#table?.layer : this.#kind === "stocks" ? this.#table?.stock : this.#table?.magnet;
    return table?.[path.slice(path.lastIndexOf("].") + 2)];
  }

  /** @param {string} of @param {One} one */
  #build(of, one) {
    const focused = this.#values.contains(document.activeElement) ? /** @type {HTMLElement} */ (document.activeElement).dataset.path : undefined;
    this.#editor.close();
    const rows = (/** @type {string} */ base) => {
      const paths = Object.keys(one.order).filter((path) => path.startsWith(`${base}.`) && !path.slice(base.length + 1).includes("."));
      return make("dl", {}, ...paths.flatMap((path) => [make("dt", {}, ...coded(this.#param(path)?.words ?? path)), make("dd", {}, this.#word(path))]));
    };
    const layers = Array.from({ length: one.layers }, (_, k) => {
      const base = `${of}.layers[${k}]`;
      const out = one.layers > 1 && make("button", { type: "button", onclick: () => this.#change([{ do: "remove", path: base }], `${texts.story.layer_out}: ${this.#which.value}`) }, texts.story.layer_out);
      return make("section", {}, make("h3", {}, words.layer(k + 1)), rows(base), out);
    });
    const add = this.#kind === "stocks" && adder(texts.story.add_layer, texts.story.new_layer, texts.story.new_layer_example, (text) => this.#addLayer(this.#which.value, text));
    const out = one.own && make("button", { type: "button", onclick: () => this.#change([{ do: "leave", path: of }], `${words.out}: ${this.#which.value}`) }, words.out);
    this.#values.replaceChildren(make("div", { class: "rarer" }, rows(of), ...layers), ...[add, out].filter((one) => one !== false));
    if (focused) /** @type {HTMLElement | null} */ (this.#values.querySelector(`[data-path="${CSS.escape(focused)}"]`))?.focus();
  }

  /** @param {string} path */
  #word(path) {
    const param = this.#param(path);
    return valueWord(path, (word) => param && this.#editor.toggle(word, path, param, [], () => this.#one?.order[path]));
  }

  /** A new one, with as much as it must have. */
  #adder() {
    const says = words[this.#kind];
    return adder(says.add, says.new_one, says.example, async (text) => {
      const { name, rest } = named(text) ?? { name: "", rest: "" };
      const parts = rest.split(",").map((one) => one.trim());
      if (!name || (this.#kind === "magnets" && parts.length !== 3)) return `${says.new_one} ${says.example}`;
      const of = this.#of(name);
      const refusal = this.#kind === "stocks"
        ? await this.#addLayer(name, rest)
        : await this.#change(["diameter", "thickness", "grade"].map((key, n) => ({ do: /** @type {const} */ ("set"), path: `${of}.${key}`, value: parts[n] })), `${says.add}: ${name}`);
      if (!refusal) this.#choose(name);
      return refusal;
    });
  }

  /** @param {string} name */
  #choose(name) {
    this.#which.value = name;
    return this.#ask();
  }

  /** @param {string} stock @param {string} text A material and a thickness. */
  #addLayer(stock, text) {
    return addLayer(stock, text, (changes, what) => this.#change(changes, what));
  }

  /** @param {Change[]} changes @param {string} what @returns {Promise<string>} What is wrong. */
  async #change(changes, what) {
    const refusal = await shop.edit(changes, what);
    announce(refusal ? refusal.refusal.what : what);
    const says = refusal ? refusal.says : "";
    this.#wrong.textContent = says;
    return says;
  }
}
customElements.define("shelf-of", ShelfOf);
