// @ts-check
/** Stocks chosen by their picture, every pairing of them, best first, and two colours against each other. */

import { ask, Sorry } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, make } from "../lib/dom.js";
import "../parts/contrast-check.js";
import { say } from "../parts/desk-news.js";
import { tabs } from "../parts/looks-tabs.js";
import { pairingCard } from "../parts/pairing-card.js";
import { stockChanges, stockChoice } from "../parts/stock-choice.js";
import { texts } from "../texts.js";

const words = texts.looks;
/** How many pairings are shown at first, and how many more each time. */
const FEW = 8;

class LooksView extends HTMLElement {
  #quiet = new AbortController();
  #shown = "";
  #asked = { show: "", cover: "", wheel: "", count: FEW };
  #says = make("p");
  #cards = make("ol", { class: "pairings" });
  #matching = make("p", { role: "status", class: "matching" });
  #more = make("button", { type: "button", onclick: () => this.#showMore() }, words.more);

  connectedCallback() {
    this.#quiet = new AbortController();
    this.className = "calm looks";
    board.addEventListener("state", () => this.#show(), { signal: this.#quiet.signal });
    this.replaceChildren(
      tabs("looks"),
      make("section", {}, make("h2", {}, words.stocks), make("p", {}, words.stocks_how), ...chooser()),
      make("section", { class: "board" }, make("h2", {}, words.board), this.#says, this.#filters(), this.#matching, this.#cards, make("div", { class: "row" }, this.#more, make("a", { class: "button", target: "_blank", href: `/board?${new URLSearchParams({ dial: board.dial })}` }, words.sheet))),
      make("section", {}, make("h2", {}, words.contrast), make(/** @type {"div"} */ ("contrast-check"))),
    );
    this.#show();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  #filters() {
    const pick = (/** @type {"show" | "cover" | "wheel"} */ name, /** @type {string} */ label, /** @type {[string, string][]} */ options) => {
      const select = make("select", { "data-filter": name, onchange: () => {
        this.#asked = { ...this.#asked, [name]: select.value, count: FEW };
        this.#show();
      } }, ...options.map(([value, text]) => make("option", { value }, text)));
      return make("label", {}, label, " ", select);
    };
    /** @type {[string, string][]} */
    const stocks = [["", words.any], ...(board.piece("stocks") ?? []).map((/** @type {string} */ name) => [name, name])];
    return make("div", { class: "filters" }, pick("show", words.filter, Object.entries(words.shows)), pick("cover", words.cover, stocks), pick("wheel", words.wheel, stocks));
  }

  #showMore() {
    const first = this.#cards.children.length;
    this.#asked.count += 3 * FEW;
    this.#show().then(() => /** @type {HTMLElement | undefined} */ (this.#cards.children[first]?.querySelector("button"))?.focus());
  }

  async #show() {
    const version = `${board.dial} ${board.look} ${JSON.stringify(this.#asked)}`;
    if (!board.dial || version === this.#shown) return;
    this.#shown = version;
    try {
      const { count, ...asked } = this.#asked;
      const told = await ask("/looks", { dial: board.dial, ...asked, count: String(count) });
      if (version !== this.#shown) return;
      this.#says.className = "";
      this.#says.textContent = words.board_says(told.does, told.all);
      this.#matching.textContent = words.matching(told.pairings.length, told.matching);
      const picked = (/** @type {string} */ name) => {
        const found = told.picked?.ranking.find((/** @type {{ name: string }} */ one) => one.name === name);
        if (!found || found.share === null) return "";
        return told.picked.favourite === name ? words.favourite : words.picked(found.share);
      };
      this.#cards.replaceChildren(...told.pairings.map((/** @type {import("../parts/pairing-card.js").Pairing} */ one) => pairingCard(one, picked(one.name))));
      this.#more.hidden = told.pairings.length >= told.matching;
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.#says.className = "wrong";
      this.#says.textContent = `${words.none} ${error.refusal.help}`;
      this.#cards.replaceChildren();
    }
  }
}
customElements.define("looks-view", LooksView);

/** The stocks of one part, and which part. */
function chooser() {
  const order = board.piece("order") ?? {};
  // One stock for all is changed as one, until somebody wants two.
  const both = order.stock?.from === "written" && order["cover.stock"]?.from !== "written" && order["wheel.stock"]?.from !== "written";
  const stocks = stockChoice(both ? "stock" : "cover.stock");
  const part = make("select", { "data-choose": "part", onchange: () => (stocks.path = part.value) }, ...Object.entries(words.parts).map(([path, name]) => make("option", { value: path, selected: path === stocks.path }, name)));
  stocks.addEventListener("chosen", async (event) => {
    const name = /** @type {CustomEvent} */ (event).detail;
    const path = stocks.path;
    const changes = stockChanges(path, name);
    if (path === "stock") changes.push({ do: "leave", path: "cover.stock" }, { do: "leave", path: "wheel.stock" });
    const done = words.chosen(words.parts[path], name);
    const refusal = await board.edit(changes, done);
    if (refusal) say(refusal.refusal);
    else announce(done);
  });
  return [make("label", { class: "which" }, words.which, " ", part), make("div", { class: "shelf-of-stocks" }, stocks)];
}
