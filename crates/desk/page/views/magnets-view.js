// @ts-check
/** Magnets: how the wheels are held, seats, the map, the pairs on the shelf, the pole plan, the order of gluing. */

import { ask, Sorry } from "../lib/api.js";
import { board } from "../lib/board.js";
import { make } from "../lib/dom.js";
import "../parts/magnet-map.js";
import { say } from "../parts/desk-news.js";
import { wheelFigures } from "../parts/wheel-figures.js";
import { texts } from "../texts.js";

const words = texts.magnets;
const SPREADS = ["effort_n", "pull_n", "gap_mm", "drift_mm", "rest_mm", "centred_by_deg"];
/** How many pairs that do the job are shown. */
const BEST = 8;

const figure = (/** @type {number | null} */ value, /** @type {string} */ unit) => (value === null ? words.off : `${Math.round(value * 100) / 100} ${unit}`);

class MagnetsView extends HTMLElement {
  #quiet = new AbortController();
  #shown = "";

  connectedCallback() {
    this.#quiet = new AbortController();
    this.className = "calm magnets";
    board.addEventListener("state", () => this.#show(), { signal: this.#quiet.signal });
    this.#show();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  async #show() {
    // What is seen follows the workshop and the standard as it does the file.
    const version = board.look;
    if (!board.dial || version === this.#shown) return;
    this.#shown = version;
    try {
      const all = await ask("/magnets", { dial: board.dial });
      if (version !== this.#shown) return;
      // What had the focus keeps it: an arrow key on the map changes the dial and draws all this anew.
      const focused = this.contains(document.activeElement) ? document.activeElement?.className : null;
      this.replaceChildren(
        make("section", {}, make("h2", {}, words.heading), ...held(all.figures.wheels), make("p", { class: "caution" }, words.care)),
        make("section", {}, make("h2", {}, words.seat), seats()),
        make("section", {}, make("h2", {}, words.map), map(all.map)),
        make("section", {}, make("h2", {}, words.wheels), wheelFigures(all.figures.wheels)),
        make("section", {}, make("h2", {}, words.chooser), chooser(all.chooser)),
        make("section", {}, make("h2", {}, words.poles), make("p", {}, words.poles_how), picture(all.pole_plan)),
        make("details", {}, make("summary", {}, words.page), make("pre", { tabindex: 0, role: "region", "aria-label": words.page }, all.page)),
      );
      if (focused) /** @type {HTMLElement | null} */ (this.querySelector(`.${focused.split(" ").join(".")}`))?.focus();
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.replaceChildren(make("p", { class: "wrong" }, `${words.none} ${error.refusal.help}`));
    }
  }
}
customElements.define("magnets-view", MagnetsView);

/** Wheels that are held alike are told once. @param {any[]} wheels */
function held(wheels) {
  /** @type {Map<string, { names: string[], held: any }>} */
  const alike = new Map();
  for (const one of wheels) {
    if (!one.held) continue;
    const key = JSON.stringify(one.held);
    const group = alike.get(key) ?? { names: [], held: one.held };
    group.names.push(one.wheel);
    alike.set(key, group);
  }
  return [...alike.values()].map(({ names, held }) => {
    const rows = SPREADS.map((name) => {
      const unit = words.units[name.slice(name.lastIndexOf("_") + 1)];
      const { least, likely, most } = held[name];
      return make("tr", {}, make("th", { scope: "row" }, words.figures[name]), make("td", {}, words.spread(figure(likely, unit), figure(least, unit), figure(most, unit))));
    });
    return make(
      "div",
      { class: "held" },
      make("h3", { class: held.verdict === "easy and keeps" ? "well" : "mend" }, words.held(names.join(", "), held.verdict)),
      make("table", {}, make("tbody", {}, ...rows)),
      make("p", {}, words.forgiven(figure(held.window_forgives_mm, "mm"))),
      make("p", {}, words.keeps(String(Math.round(held.thrown_at_g)), String(Math.round(held.drop_on_its_edge_m * 100) / 100))),
    );
  });
}

function seats() {
  const now = board.piece("order")?.["magnet.seat"]?.shown ?? "flush";
  const group = make("div", { class: "seats", role: "radiogroup", "aria-label": words.seat });
  for (const [seat, says] of Object.entries(words.seats)) {
    const input = make("input", { type: "radio", name: "seat", value: seat, checked: seat === now });
    input.addEventListener("change", () => change([
      { do: "set", path: "magnet.seat", value: seat },
      { do: "leave", path: "magnet.cover_pocket" },
      { do: "leave", path: "magnet.wheel_pocket" },
    ], words.seat_done(seat)));
    group.append(make("label", {}, input, make("span", {}, make("strong", {}, seat), ` \u2014 ${says}`)));
  }
  return group;
}

/** @param {any} figures */
function map(figures) {
  const element = make(/** @type {"div"} */ ("magnet-map"));
  /** @type {any} */ (element).map = figures;
  element.addEventListener("depths", (event) => {
    const [cover, wheel] = /** @type {CustomEvent} */ (event).detail;
    const mm = (/** @type {number} */ depth) => `${Math.round(depth * 100) / 100} mm`;
    change([
      { do: "set", path: "magnet.cover_pocket", value: mm(cover) },
      { do: "set", path: "magnet.wheel_pocket", value: mm(wheel) },
    ], words.pockets_done);
  });
  const back = make("button", { type: "button", onclick: () => change([
    { do: "leave", path: "magnet.cover_pocket" },
    { do: "leave", path: "magnet.wheel_pocket" },
  ], words.to_seat_done) }, words.to_seat);
  return make("div", {}, element, back);
}

/** @param {any[]} all */
function chooser(all) {
  const name = (/** @type {any} */ one) => (one.cover === one.wheel ? one.cover : `${one.cover} + ${one.wheel}`);
  const rows = all.filter((one) => one.does).slice(0, BEST).map((one) => make(
    "tr",
    {},
    make("th", { scope: "row" }, name(one)),
    make("td", {}, figure(one.effort_n, "N")),
    make("td", {}, figure(one.drift_mm, "mm")),
    make("td", {}, figure(one.cover_pocket_mm, "mm")),
    make("td", {}, figure(one.may_be_deeper_mm, "mm")),
    make("td", {}, one.price_of_a_pair === null ? "" : String(one.price_of_a_pair)),
    make("td", {}, make("button", { type: "button", "aria-label": words.take_label(name(one)), onclick: () => change(one.changes, words.taken(name(one))) }, words.take)),
  ));
  const not = all.filter((one) => !one.does && one.cover === one.wheel).map((one) => make("li", {}, `${name(one)}: ${one.why_not}`));
  return make(
    "div",
    { class: "wide", tabindex: 0, role: "region", "aria-label": words.chooser },
    make("table", {}, make("thead", {}, make("tr", {}, ...words.columns.map((column) => (column ? make("th", { scope: "col" }, column) : make("td"))))), make("tbody", {}, ...rows)),
    make("details", {}, make("summary", {}, words.not_these), make("ul", {}, ...not)),
  );
}

/** A picture that the press drew. @param {string} svg */
function picture(svg) {
  const read = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  const element = document.importNode(read, true);
  element.setAttribute("aria-label", words.poles);
  return make("div", { class: "plate-picture" }, element);
}

/** @param {import("../lib/types.js").Change[]} changes @param {string} done */
async function change(changes, done) {
  const refusal = await board.edit(changes, done);
  if (refusal) say(refusal.refusal);
}
