// @ts-check
/** The dials of the opened folder: put on the mat, duplicated, begun from a brief; and those that were opened lately. */

import { ask, Sorry, tell } from "../lib/api.js";
import { board } from "../lib/board.js";
import { make } from "../lib/dom.js";
import { go } from "../lib/route.js";
import "../parts/fits-table.js";
import { stockChoice, swatch } from "../parts/stock-choice.js";
import { texts } from "../texts.js";

const words = texts.shelf;

class ShelfView extends HTMLElement {
  async connectedCallback() {
    this.className = "calm";
    const desk = await ask("/desk");
    this.replaceChildren(
      make("h2", {}, words.heading(desk.folder ?? "")),
      desk.dials.length === 0 ? make("p", {}, words.none) : make("ul", { class: "shelf" }, ...desk.dials.map((/** @type {string} */ dial) => this.#card(dial))),
      this.#brief(desk.stock),
      make(/** @type {"div"} */ ("fits-table")),
      this.#recent(desk.recent),
    );
  }

  /** @param {string} dial */
  #card(dial) {
    const open = make("button", { type: "button", onclick: () => go({ view: "mat", dial }) }, words.open);
    const picture = make("img", { src: `/picture?${new URLSearchParams({ dial, version: dial === board.dial ? board.version : "" })}`, alt: words.picture(dial), loading: "lazy" });
    picture.addEventListener("error", () => picture.replaceWith(make("p", { class: "wrong" }, words.unread)), { once: true });
    const name = make("input", { type: "text", "aria-label": `${words.copy_name}: ${dial}`, placeholder: words.copy_name, required: true });
    const wrong = make("p", { class: "wrong", role: "alert" });
    const form = make("form", { class: "acts" }, name, make("button", { type: "submit" }, words.copy), wrong);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#begin("/duplicate", { dial, name: name.value }, wrong);
    });
    return make("li", {}, picture, make("strong", {}, dial), make("div", { class: "acts" }, open), form);
  }

  /** @param {string} usual The stock it is cut from, unless another is chosen. */
  #brief(usual) {
    const name = make("input", { type: "text", required: true, placeholder: words.name_example, name: "name" });
    const counters = make("textarea", { required: true, rows: 4, placeholder: words.counters_example, name: "counters" });
    let stock = usual;
    const stocks = stockChoice("stock");
    const picture = make("img", { alt: "", width: 240, height: 104 });
    const chosen = make("strong");
    const summary = make("summary", {}, make("span", {}, words.stock, " ", chosen));
    const fold = make("details", {}, summary);
    const show = () => {
      picture.src = swatch({ brief: counters.value, stock });
      chosen.textContent = stock;
      if (fold.open) stocks.brief = { counters: counters.value, stock };
    };
    stocks.addEventListener("chosen", (event) => {
      stock = /** @type {CustomEvent} */ (event).detail;
      show();
      fold.open = false;
      summary.focus();
    });
    // Every stock is tried on the dial that is briefed: only when somebody looks.
    fold.addEventListener("toggle", () => {
      show();
      if (fold.open && !stocks.isConnected) fold.append(make("div", { class: "shelf-of-stocks" }, stocks));
    });
    counters.addEventListener("change", show);
    show();
    const wrong = make("p", { class: "wrong", role: "alert" });
    const form = make(
      "form",
      { class: "brief" },
      make("h2", {}, words.new_heading),
      make("label", {}, words.name, name),
      make("label", {}, words.counters, counters),
      make("div", { class: "cut-from" }, picture, fold),
      make("div", {}, make("button", { type: "submit", class: "main" }, words.begin)),
      wrong,
    );
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const lines = counters.value.split("\n").map((line) => line.trim()).filter(Boolean);
      this.#begin("/new", { name: name.value, counters: lines, stock }, wrong);
    });
    return form;
  }

  /** @param {string} path @param {object} body @param {HTMLElement} wrong */
  async #begin(path, body, wrong) {
    try {
      const { dial } = await tell(path, body);
      go({ view: "mat", dial });
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      wrong.textContent = error.says;
    }
  }

  /** @param {{ dial: string | null, path: string }[]} recent */
  #recent(recent) {
    if (recent.length === 0) return make("div");
    const items = recent.map(({ dial, path }) => make("li", {}, dial ? make("button", { type: "button", onclick: () => go({ view: "mat", dial }) }, path) : `${path} (${words.elsewhere})`));
    return make("section", {}, make("h2", {}, words.recent), make("ul", { class: "recent" }, ...items));
  }
}
customElements.define("shelf-view", ShelfView);
