// @ts-check
/**
 * Changes one value in place, under the paragraph it stands in: by its kind from the parameter table, with its range,
 * where it comes from, and what it means. While one types or steps, the dial follows, or a mistake is told; Enter writes it.
 */

import { board } from "../lib/board.js";
import { announce, coded, make } from "../lib/dom.js";
import { point, stepped } from "../lib/lengths.js";
import { texts } from "../texts.js";
import { colourPick } from "./colour-pick.js";
import { cornerRows, wordBoxes } from "./list-rows.js";
import { stockChanges, stockChoice } from "./stock-choice.js";

const words = texts.value;

/** @typedef {import("../lib/types.js").Param} Param */
/** @typedef {import("../lib/types.js").Value} Value */

/**
 * A file that values are changed in: the dial on the mat, or the workshop.
 * @typedef {{ state: { version: string } | null, trying: boolean, giveUp: () => unknown,
 *   attempt: (changes: import("../lib/types.js").Change[]) => Promise<import("../lib/api.js").Sorry | null>,
 *   edit: (changes: import("../lib/types.js").Change[], words: string, on?: string) => Promise<import("../lib/api.js").Sorry | null> }} InFile
 */

export class Editor {
  /** @type {InFile} */
  #file;
  /** @type {HTMLButtonElement | null} */
  #word = null;
  #path = "";
  /** The version that the maker saw when the editor was opened. */
  #on = "";
  /** @type {HTMLElement | null} */
  #room = null;
  /** @type {HTMLInputElement | HTMLSelectElement | null} */
  #input = null;
  #wrong = make("p", { class: "wrong", role: "alert" });
  /** @type {() => Value | undefined} */
  #value = () => undefined;
  #from = make("p", { class: "help" });
  /** @type {Param | null} */
  #param = null;

  /** @param {InFile} [file] */
  constructor(file = board) {
    this.#file = file;
  }

  /**
   * @param {HTMLButtonElement} word
   * @param {string} path
   * @param {Param} param
   * @param {string[]} symbols
   * @param {() => Value | undefined} value
   */
  toggle(word, path, param, symbols, value) {
    const same = this.#word === word;
    this.close();
    if (same) return;
    this.#word = word;
    this.#path = path;
    this.#on = this.#file.state?.version ?? "";
    this.#param = param;
    this.#value = value;
    this.#wrong.textContent = "";
    word.setAttribute("aria-expanded", "true");
    this.#room = make("div", { class: "editor here", role: "group", "aria-label": param.words, onkeydown: (/** @type {KeyboardEvent} */ event) => this.#key(event) });
    this.#fill(param, symbols);
    const dd = word.closest("dd");
    if (dd) dd.append(this.#room);
    else word.closest("p")?.after(this.#room);
    this.#input?.focus();
    if (this.#input instanceof HTMLInputElement) this.#input.select();
  }

  close() {
    if (!this.#word) return;
    this.#word.setAttribute("aria-expanded", "false");
    this.#room?.remove();
    this.#word = null;
    this.#room = null;
    if (this.#file.trying) this.#file.giveUp();
  }

  /** Says anew where the value comes from. */
  follow() {
    const [value, param] = [this.#value(), this.#param];
    if (!this.#room || !value || !param) return;
    const derived = value.from === "derived" && param.derived ? param.derived : "";
    this.#from.replaceChildren(...coded(`${words.from[value.from]}${derived}`));
  }

  /** @param {Param} param @param {string[]} symbols */
  #fill(param, symbols) {
    const value = this.#value();
    const written = value?.written ?? null;
    const options = optionsOf(param, symbols);
    const shown = value?.from === "derived" && !["length", "angle", "values", "text", "point"].includes(param.kind) ? "" : asText(written ?? value?.shown ?? "");
    /** @type {import("./stock-choice.js").StockChoice | null} */
    let stocks = null;
    if (param.kind === "stock") {
      this.#input = make("input", { type: "hidden", value: shown });
      stocks = stockChoice(this.#path);
      stocks.addEventListener("chosen", (event) => this.#choose(/** @type {CustomEvent} */ (event).detail));
      stocks.addEventListener("filled", () => stocks?.focus(), { once: true });
    } else if (options) {
      const choices = options.map((one) => make("option", { value: one, selected: one === shown }, param.kind === "flag" ? (one === "true" ? words.yes : words.no) : one));
      if (!options.includes(shown)) choices.unshift(make("option", { value: "", selected: true }, value?.shown || words.none));
      const select = make("select", { "aria-label": param.words, onchange: () => this.#keep() }, ...choices);
      this.#input = select;
    } else {
      const text = make("input", { type: "text", "aria-label": param.words, spellcheck: "false", autocomplete: "off", value: shown, oninput: () => this.#try() });
      this.#input = text;
    }
    const back = param.usual !== null ? words.back_to_usual(param.usual) : words.leave;
    const leave = !param.required && value?.from === "written" ? make("button", { type: "button", onclick: () => this.#leave() }, back) : null;
    const set = options || stocks ? null : make("button", { type: "button", class: "main", onclick: () => this.#keep() }, words.set);
    const close = make("button", { type: "button", onclick: () => this.#done() }, words.close);
    const keys = ["length", "angle", "count", "share", "number", "unit"].includes(param.kind) ? ` ${words.keys}` : "";
    const rows = this.#input instanceof HTMLInputElement ? rowsOf(param, this.#input, () => this.#try()) : null;
    this.#room?.append(
      make("p", { class: "help" }, ...coded(`${param.words[0].toUpperCase()}${param.words.slice(1)}.`)),
      make("div", { class: "row" }, this.#input, set, leave, close),
      ...(rows ? [rows] : []),
      stocks ?? "",
      this.#wrong,
      make("p", { class: "help" }, `${words.write(param.range)}${keys}`),
      this.#from,
      make("p", { class: "help" }, words.source(param.source)),
    );
    this.follow();
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    if (event.key === "Escape") {
      event.preventDefault();
      this.#done();
    } else if (event.key === "Enter" && event.target === this.#input) {
      event.preventDefault();
      this.#keep();
    } else if ((event.key === "ArrowUp" || event.key === "ArrowDown") && this.#input instanceof HTMLInputElement) {
      const next = stepped(this.#input.value, (event.key === "ArrowUp" ? 1 : -1) * (event.shiftKey ? 10 : 1), fine(this.#param));
      if (next === null) return;
      event.preventDefault();
      this.#input.value = next;
      this.#try();
    }
  }

  #done() {
    const word = this.#word;
    this.close();
    word?.focus();
  }

  /** What is written, as the file's own kind of value. @returns {any} */
  #written() {
    const text = this.#input?.value.trim() ?? "";
    const list = () => text.split(",").map((one) => one.trim()).filter(Boolean);
    switch (this.#param?.kind) {
      case "flag":
        return text === "true";
      case "count":
      case "share":
      case "number":
        return text === "" || Number.isNaN(Number(text)) ? text : Number(text);
      case "point":
      case "symbols":
      case "words":
        return list();
      case "points":
        return text.split(";").map((pair) => pair.split(",").map((one) => one.trim())).filter((pair) => pair.length === 2);
      case "values":
        return text.includes("..") ? text : list();
      default:
        return text;
    }
  }

  /** @returns {import("../lib/types.js").Change[]} */
  #changes() {
    if (this.#param?.kind === "stock") return stockChanges(this.#path, this.#written());
    /** @type {import("../lib/types.js").Change[]} */
    const changes = [{ do: "set", path: this.#path, value: this.#written() }];
    // Words and symbols exclude each other; so do a text and a symbol of art.
    const other = { values: "symbols", symbols: "values", text: "symbol" }[this.#path.split(".").pop() ?? ""];
    const art = this.#path.startsWith("cover.art[");
    const partner = art && this.#path.endsWith(".symbol") ? "text" : other;
    if (partner && (art || partner !== "symbol")) changes.unshift({ do: "leave", path: this.#path.replace(/[a-z_]+$/, partner) });
    return [...changes, ...ofOutline(this.#path, this.#written())];
  }

  async #try() {
    const refusal = await this.#file.attempt(this.#changes());
    this.#wrong.replaceChildren(...coded(refusal?.says ?? ""));
  }

  /** A stock that was chosen by its picture. @param {string} name */
  #choose(name) {
    if (this.#input) this.#input.value = name;
    return this.#keep();
  }

  async #keep() {
    if (this.#input?.value === "" && this.#input instanceof HTMLSelectElement) return;
    const says = `${this.#path} = ${this.#input?.value}`;
    const refusal = await this.#file.edit(this.#changes(), says, this.#on);
    if (refusal) {
      this.#wrong.replaceChildren(...coded(refusal.says));
      return;
    }
    announce(says);
    this.#done();
  }

  async #leave() {
    const refusal = await this.#file.edit([{ do: "leave", path: this.#path }], texts.found.leave(this.#path), this.#on);
    if (refusal) this.#wrong.textContent = refusal.refusal.what;
    else this.#done();
  }
}

/** A step of a plain number, where its range is small. @param {Param | null} param */
const fine = (param) => (param && ["share", "number"].includes(param.kind) && (param.high ?? 0) - (param.low ?? 0) < 10 ? 0.05 : undefined);

/** Rows for what is written as a list. @param {Param} param @param {HTMLInputElement} input @param {() => void} changed */
function rowsOf(param, input, changed) {
  if (param.kind === "points") {
    if (!input.value.includes(",")) input.value = "";
    return cornerRows(input, changed);
  }
  if (param.kind === "colour") return colourPick(param.words, input, changed);
  return param.kind === "words" && param.words_known ? wordBoxes(input, param.words_known, changed) : null;
}

/**
 * A free polygon has corners and no other size; another outline has none.
 * @param {string} path @param {any} value @returns {import("../lib/types.js").Change[]}
 */
function ofOutline(path, value) {
  const written = (/** @type {string} */ one) => board.piece("order")?.[one]?.from === "written";
  /** @returns {import("../lib/types.js").Change} */
  const leave = (/** @type {string} */ one) => ({ do: "leave", path: one });
  const sizes = ["cover.width", "cover.height", "cover.sides"].filter(written).map(leave);
  if (path === "cover.points") return [{ do: "set", path: "cover.outline", value: "polygon" }, ...sizes];
  if (path !== "cover.outline") return [];
  if (value !== "polygon") return written("cover.points") ? [leave("cover.points")] : [];
  const { x, y, width, height } = board.piece("cover").box;
  const corners = [[x, y], [x + width, y], [x + width, y + height], [x, y + height]];
  return written("cover.points") ? sizes : [{ do: "set", path: "cover.points", value: corners.map(([right, down]) => point(right, -down)) }, ...sizes];
}

/** What may be chosen, where a value is one of some words. @param {Param} param @param {string[]} symbols @returns {string[] | null} */
function optionsOf(param, symbols) {
  switch (param.kind) {
    case "choice":
      return param.choices ?? [];
    case "symbol":
      return symbols;
    case "flag":
      return ["true", "false"];
    default:
      return null;
  }
}

/** @param {any} value @returns {string} */
function asText(value) {
  if (Array.isArray(value)) return value.map(asText).join(Array.isArray(value[0]) ? "; " : ", ");
  return String(value);
}
