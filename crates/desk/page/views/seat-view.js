// @ts-check
/** A reader's seat at the table, moved by hand, and the window as it is seen from there: its figures, and what would pass. */

import { ask, Sorry } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, coded, make } from "../lib/dom.js";
import { angle, length } from "../lib/lengths.js";
import { say } from "../parts/desk-news.js";
import { tabs } from "../parts/looks-tabs.js";
import { TablePlan, USUAL } from "../parts/table-plan.js";
import { texts } from "../texts.js";

const words = texts.seat;

class SeatView extends HTMLElement {
  #quiet = new AbortController();
  #plan = /** @type {TablePlan} */ (/** @type {unknown} */ (make(/** @type {"div"} */ ("table-plan"))));
  #wheel = make("select", { "data-seat": "wheel", onchange: () => this.#ask() });
  /** What is asked for: as the maker wrote it, or nothing at first, for the seat of the file. @type {{ away: string, eye: string, side: string }} */
  #at = { away: "", eye: "", side: "" };
  /** @type {Record<"away" | "eye" | "side", HTMLInputElement>} */
  #fields;
  #wrong = make("p", { class: "wrong", role: "alert" });
  #told = make("div", { class: "told" });
  #must = make("div", { class: "must" });
  #busy = false;
  #again = false;
  #wheels = "";

  constructor() {
    super();
    const field = (/** @type {"away" | "eye" | "side"} */ name) => {
      const input = make("input", { type: "text", spellcheck: "false", autocomplete: "off", "data-seat": name });
      input.addEventListener("change", () => {
        this.#at = { ...this.#at, [name]: input.value.trim() };
        this.#ask();
      });
      return input;
    };
    this.#fields = { away: field("away"), eye: field("eye"), side: field("side") };
    this.#plan.addEventListener("moved", (event) => {
      const { away, eye, side } = /** @type {CustomEvent} */ (event).detail;
      this.#at = { away: length(away), eye: length(eye), side: angle(side) };
      this.#write();
      this.#ask();
    });
  }

  connectedCallback() {
    this.#quiet = new AbortController();
    this.className = "calm looks seat";
    board.addEventListener("state", () => this.#ask(), { signal: this.#quiet.signal });
    const label = (/** @type {"away" | "eye" | "side"} */ name, /** @type {string} */ help = "") => make("label", {}, words[name], help && make("small", {}, ` ${help}`), this.#fields[name]);
    const usual = Object.entries(USUAL).map(([who, seat]) => make("button", { type: "button", onclick: () => {
      this.#plan.seat = seat;
      this.#at = { away: length(seat.away), eye: length(seat.eye), side: angle(seat.side) };
      this.#write();
      this.#ask();
    } }, words.sit(words.seats[who])));
    this.replaceChildren(
      tabs("seat"),
      make("section", { class: "where" },
        make("h2", {}, words.heading),
        make("p", {}, words.how),
        this.#plan,
        make("div", { class: "row" }, ...usual),
        make("div", { class: "fields" }, label("away"), label("eye"), label("side", words.side_help)),
        this.#wrong,
        this.#must,
      ),
      make("section", { class: "from-there" }, make("h2", {}, words.window), make("label", { class: "which" }, words.wheel, " ", this.#wheel), this.#told),
    );
    this.#ask();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  /** Writes the seat into the fields, except where somebody is writing. */
  #write() {
    for (const name of /** @type {const} */ (["away", "eye", "side"])) {
      if (document.activeElement !== this.#fields[name]) this.#fields[name].value = this.#at[name];
    }
  }

  #fillWheels() {
    const names = board.wheels.map((wheel) => wheel.name);
    if (names.join("\n") === this.#wheels) return;
    this.#wheels = names.join("\n");
    const chosen = this.#wheel.value;
    this.#wheel.replaceChildren(...names.map((name, i) => make("option", { value: String(i), selected: String(i) === chosen }, name)));
  }

  /** Asks what is seen; while one answer is awaited only the newest question is kept. */
  async #ask() {
    if (!board.dial) return;
    this.#fillWheels();
    if (this.#busy) {
      this.#again = true;
      return;
    }
    this.#busy = true;
    const asked = this.#at;
    try {
      const told = await ask("/seat", { dial: board.dial, wheel: this.#wheel.value || "0", ...asked });
      if (asked === this.#at) this.#take(told);
      this.#wrong.textContent = "";
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.#wrong.textContent = error.says;
    } finally {
      this.#busy = false;
    }
    if (this.#again) {
      this.#again = false;
      this.#ask();
    }
  }

  /** @param {any} told */
  #take(told) {
    const { away_mm: away, eye_mm: eye, azimuth_deg: turned } = told.reader;
    const side = ((turned % 360) + 360) % 360;
    const seat = this.#plan.seat;
    if (seat.away !== away || seat.eye !== eye || seat.side !== side) this.#plan.seat = { away, eye, side };
    if (!this.#at.away) this.#at = { away: length(away), eye: length(eye), side: angle(side) };
    this.#write();
    this.#told.replaceChildren(...seen(told, board.wheels[Number(this.#wheel.value || 0)]?.name ?? ""));
    this.#mustRead(told.readers);
  }

  /** Who must read the dial by its file, and how this seat gets in. @param {any[]} readers */
  #mustRead(readers) {
    const order = board.piece("order") ?? {};
    const own = order["reading.distance"]?.from === "written";
    const names = readers.map((reader) => reader.name);
    const boxes = Object.keys(USUAL).map((who) => {
      const box = make("input", { type: "checkbox", checked: names.includes(who), "aria-label": words.must(words.seats[who]) });
      box.addEventListener("change", () => {
        const seats = Object.keys(USUAL).filter((one) => (one === who ? box.checked : names.includes(one)));
        change([{ do: "set", path: "reading.seats", value: seats }], words.seats_done(seats.map((one) => words.seats[one]).join(", ")));
      });
      return make("label", { class: "box" }, box, words.seats[who]);
    });
    const shape = JSON.stringify([names, own, order["reading.distance"]?.shown]);
    if (this.#must.dataset.shape === shape) return;
    this.#must.dataset.shape = shape;
    const write = make("button", { type: "button", class: "main", onclick: () => this.#keep() }, words.write);
    const out = own && make("button", { type: "button", onclick: () => change(/** @type {const} */ (["reading.distance", "reading.eye", "reading.side"]).map((path) => ({ do: "leave", path })), words.taken_out) }, words.take_out);
    const focused = this.#must.contains(document.activeElement) ? document.activeElement?.textContent : null;
    this.#must.replaceChildren(make("fieldset", {}, make("legend", {}, words.must_heading), ...boxes, own && make("p", {}, names[names.length - 1])), make("div", { class: "row" }, write, out));
    if (focused !== null) write.focus();
  }

  #keep() {
    const { away, eye, side } = this.#at;
    change([
      { do: "set", path: "reading.distance", value: away },
      { do: "set", path: "reading.eye", value: eye },
      { do: "set", path: "reading.side", value: side },
    ], words.written(away));
  }
}
customElements.define("seat-view", SeatView);

/** What is seen, in pictures and figures. @param {any} told @param {string} wheel */
function seen(told, wheel) {
  const better = told.findings.filter((/** @type {any} */ one) => one.severity !== "note");
  const rows = words.rows;
  /** @type {[string, string][]} */
  const table = [
    [rows.angle, words.angle(told.angle, told.least.arcmin)],
    [rows.seen, words.part_seen(told.seen.seen_height_share, told.hidden, told.extent)],
    [rows.contrast, words.ratio(told.ratio)],
    [rows.least, words.for_angle(told.least.height, told.least.arcmin)],
    [rows.preferred, words.for_angle(told.preferred.height, told.preferred.arcmin)],
    [rows.window, words.high(told.window_for_all)],
    [rows.eye, words.distance(length(told.reader.distance_mm))],
  ];
  const picture = (/** @type {string} */ svg, /** @type {string} */ eyes, /** @type {string} */ name) => make("figure", {}, drawn(svg, name, `${words.shows(told.mark, wheel)}, ${eyes}`), make("figcaption", {}, eyes));
  return [
    make("p", {}, words.shows(told.mark, wheel)),
    make("div", { class: "panels" }, picture(told.svg, words.eyes(words.normal), "normal"), picture(told.svg_weak, words.eyes(told.eyesight), "asked")),
    make("p", { class: `verdict-line ${better.length ? "fails" : "well"}`, role: "status" }, better.length ? words.not : words.well),
    make("table", {}, make("tbody", {}, ...table.map(([name, value]) => make("tr", {}, make("th", { scope: "row" }, name), make("td", {}, value))))),
    make("ul", { class: "from-here" }, ...told.findings.map((/** @type {any} */ one) => make("li", { class: one.severity }, make("p", {}, make("b", {}, texts.found.weights[one.severity]), ...coded(` \u2013 ${one.what}`)), one.mend && make("p", {}, ...coded(`${texts.found.advice}${one.mend}.`)), make("p", { class: "why" }, words.by(one.source))))),
  ];
}

/** A picture that the press drew; its own names get another end, so that two of them on one page stay apart. @param {string} svg @param {string} name @param {string} label */
function drawn(svg, name, label) {
  const element = document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
  for (const one of element.querySelectorAll("[id], [filter]")) {
    if (one.id) one.id = `${one.id}-${name}`;
    const filter = one.getAttribute("filter");
    if (filter) one.setAttribute("filter", filter.replace(")", `-${name})`));
  }
  element.removeAttribute("width");
  element.removeAttribute("height");
  element.setAttribute("role", "img");
  element.setAttribute("aria-label", label);
  return element;
}

/** @param {import("../lib/types.js").Change[]} changes @param {string} done */
async function change(changes, done) {
  const refusal = await board.edit(changes, done);
  if (refusal) say(refusal.refusal);
  else announce(done);
}
