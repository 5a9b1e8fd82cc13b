// @ts-check
/**
 * Stocks to choose from by their picture, for one value of the dial file: `<stock-choice path="cover.stock">`; or for a dial
 * that is not begun yet: with its `brief`. Arrow keys go from one to the next, Enter chooses (event `chosen`, detail: its name).
 */

import { ask, Sorry } from "../lib/api.js";
import { board } from "../lib/board.js";
import { dress, make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.looks;

/** @typedef {{ name: string, thickness: string, finish: string, back_finish: string, laser: string, looks: string, measured: boolean, own: boolean,
 *   does: boolean | null, why_not: string[] | null, ratio: string | null, price: number | null }} Stock */
/** @typedef {{ button: HTMLButtonElement, picture: HTMLImageElement, verdict: HTMLElement, about: HTMLElement, now: HTMLElement }} Row */

export class StockChoice extends HTMLElement {
  #quiet = new AbortController();
  #list = make("ul", { class: "stocks" });
  /** @type {Map<string, Row>} */
  #rows = new Map();
  #shown = "";
  /** @type {{ counters: string, stock: string } | null} */
  #brief = null;

  connectedCallback() {
    this.#quiet = new AbortController();
    this.replaceChildren(this.#list);
    this.#list.addEventListener("keydown", (event) => this.#key(event), { signal: this.#quiet.signal });
    board.addEventListener("state", () => this.#show(), { signal: this.#quiet.signal });
    this.#show();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  get path() {
    return this.getAttribute("path") ?? "stock";
  }

  /** The stock that is named for this value now. */
  get #now() {
    return this.#brief ? this.#brief.stock : board.piece("order")?.[this.path]?.shown ?? "";
  }

  /** Another value's stocks. @param {string} path */
  set path(path) {
    if (path === this.path) return;
    this.setAttribute("path", path);
    this.#show();
  }

  /** A dial that is not begun yet: its counters, a line each, and the stock that is chosen for it. @param {{ counters: string, stock: string }} brief */
  set brief(brief) {
    this.#brief = brief;
    this.#show();
  }

  /** Which dial is asked about. @returns {Record<string, string>} */
  get #of() {
    return this.#brief ? { brief: this.#brief.counters } : { dial: board.dial };
  }

  async #show() {
    const version = `${this.#brief ? JSON.stringify(this.#brief) : board.look} ${this.path}`;
    if (!this.isConnected || (!board.dial && !this.#brief) || version === this.#shown) return;
    this.#shown = version;
    try {
      /** @type {Stock[]} */
      const stocks = await ask("/stocks", { ...this.#of, path: this.path });
      if (version === this.#shown) this.#fill(stocks, version);
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.#rows.clear();
      this.#list.replaceChildren(make("li", { class: "wrong" }, error.refusal.what));
    }
  }

  /** @param {Stock[]} stocks @param {string} version */
  #fill(stocks, version) {
    // Rings and caps are not looked at.
    const part = this.path in words.parts;
    for (const stock of stocks) {
      const row = this.#rows.get(stock.name) ?? this.#row(stock);
      const { name } = stock;
      const src = swatch({ ...this.#of, stock: name, path: this.path, of: version });
      dress(row.picture, { src });
      const now = name === this.#now;
      dress(row.button, { "aria-pressed": String(now), class: `stock ${stock.does === false ? "not" : ""}` });
      row.now.textContent = now ? words.now : "";
      const about = words.thick(stock.thickness, stock.finish, stock.back_finish);
      row.about.textContent = [about, stock.own && words.own, stock.measured && stock.looks].filter(Boolean).join("; ");
      const untried = part && !stock.own ? words.not_tried : "";
      row.verdict.textContent = stock.why_not === null ? untried : stock.does ? words.reads(stock.ratio) : words.reads_not(stock.why_not);
      row.verdict.className = stock.does ? "well" : stock.does === false ? "fails" : "";
    }
    // Those that do come first; where nothing changes its place, nothing is moved, so that the focus stays.
    const order = [...stocks.filter((one) => one.does), ...stocks.filter((one) => !one.does)];
    const items = order.map(({ name }) => /** @type {HTMLElement} */ (this.#rows.get(name)?.button.parentElement));
    const had = document.activeElement;
    if (items.some((item, k) => this.#list.children[k] !== item) || this.#list.children.length !== items.length) {
      this.#list.replaceChildren(...items);
      if (had instanceof HTMLElement && this.#list.contains(had)) had.focus({ preventScroll: true });
    }
    const buttons = this.#buttons();
    const focused = buttons.find((button) => button === document.activeElement) ?? buttons.find((button) => button.ariaPressed === "true") ?? buttons[0];
    buttons.forEach((button) => (button.tabIndex = button === focused ? 0 : -1));
    this.dispatchEvent(new CustomEvent("filled"));
  }

  /** @param {Stock} stock @returns {Row} */
  #row({ name }) {
    const picture = make("img", { alt: "", loading: "lazy", width: 240, height: 104 });
    const [verdict, about, now] = [make("span"), make("span", { class: "about" }), make("span", { class: "now" })];
    const choose = () => this.dispatchEvent(new CustomEvent("chosen", { detail: name, bubbles: true }));
    const button = make("button", { type: "button", "data-stock": name, onclick: choose }, picture, make("strong", {}, name), now, about, verdict);
    make("li", {}, button);
    const row = { button, picture, verdict, about, now };
    this.#rows.set(name, row);
    return row;
  }

  #buttons() {
    return /** @type {HTMLButtonElement[]} */ ([...this.#list.querySelectorAll("button")]);
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const buttons = this.#buttons();
    const at = buttons.findIndex((button) => button === document.activeElement);
    if (!step || at < 0) return;
    event.preventDefault();
    event.stopPropagation();
    const next = buttons[(at + step + buttons.length) % buttons.length];
    buttons[at].tabIndex = -1;
    next.tabIndex = 0;
    next.focus();
  }

  focus() {
    this.#buttons().find((button) => button.tabIndex === 0)?.focus();
  }
}
customElements.define("stock-choice", StockChoice);

/** Address of a stock's picture. @param {Record<string, string>} asked */
export const swatch = (asked) => `/swatch?${new URLSearchParams(asked)}`;

/** @param {string} path */
export function stockChoice(path) {
  return /** @type {StockChoice} */ (/** @type {unknown} */ (make(/** @type {"div"} */ ("stock-choice"), { path })));
}

/**
 * The changes that name a stock for a value. A stock for all that no part would be cut from any more is a mistake: it is left out then.
 * @param {string} path
 * @param {string} name
 * @returns {import("../lib/types.js").Change[]}
 */
export function stockChanges(path, name) {
  const written = (/** @type {string} */ one) => board.piece("order")?.[one]?.from === "written";
  const other = { "cover.stock": "wheel.stock", "wheel.stock": "cover.stock" }[path];
  const idle = other && written(other) && written("stock");
  return [{ do: "set", path, value: name }, ...(idle ? [/** @type {const} */ ({ do: "leave", path: "stock" })] : [])];
}
