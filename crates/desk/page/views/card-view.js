// @ts-check
/** A real material measured: the card to print, the sample to cut, the photo of both dropped in and read. */

import { Sorry, tell } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, make } from "../lib/dom.js";
import { cameraButton } from "../parts/camera-button.js";
import { tabs } from "../parts/looks-tabs.js";
import { PhotoFound } from "../parts/photo-found.js";
import { texts } from "../texts.js";

const words = texts.card;
const LARGEST = 40 * 2 ** 20;
const KINDS = ["image/jpeg", "image/png"];

class CardView extends HTMLElement {
  #quiet = new AbortController();
  #paper = choice("paper", Object.entries(words.papers));
  #steps = choice("steps", [5, 6, 7, 8].map((n) => [String(n), String(n)]), "6");
  #stock = make("select", { "data-card": "stock" });
  #white = make("input", { type: "number", min: 0.3, max: 1, step: 0.001, "data-card": "paper_white" });
  #ink = make("input", { type: "number", min: 0.005, max: 0.2, step: 0.001, "data-card": "ink_black" });
  #print = make("div", { class: "to-save" });
  #sample = make("div", { class: "to-save" });
  #drop = make("div", { class: "drop" });
  #found = make("div", { class: "found", role: "status" });
  /** Only the newest photo's answer counts. */
  #asked = 0;

  connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    this.className = "calm looks card";
    board.addEventListener("pieces", () => this.#stocks(), { signal });
    for (const select of [this.#paper, this.#steps, this.#stock]) select.addEventListener("change", () => this.#link(), { signal });
    document.addEventListener("paste", (event) => this.#take(event.clipboardData?.files), { signal });
    const [print, sample, photo] = words.steps_heading;
    const label = (/** @type {string} */ text, /** @type {HTMLElement} */ field) => make("label", {}, `${text} `, field);
    this.replaceChildren(
      tabs("card"),
      make("section", {},
        make("h2", {}, words.heading),
        make("ol", { class: "card-steps" },
          make("li", {}, make("h3", {}, print), make("p", {}, words.print_how), make("div", { class: "filters" }, label(words.paper, this.#paper), label(words.steps, this.#steps)), this.#print),
          make("li", {}, make("h3", {}, sample), make("p", {}, words.sample_how), make("div", { class: "filters" }, label(words.stock, this.#stock)), this.#sample),
          make("li", {}, make("h3", {}, photo), make("p", {}, words.photo_how), make("details", {}, make("summary", {}, words.reflect), make("div", { class: "filters" }, label(words.paper_white, this.#white), label(words.ink_black, this.#ink)))),
        ),
      ),
      make("section", {}, make("h2", {}, words.photo_heading), this.#drop, this.#found),
    );
    this.#stocks();
    this.#dropping();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  #stocks() {
    /** @type {string[]} */
    const names = board.piece("stocks") ?? [];
    if (this.#stock.dataset.names === names.join()) return this.#link();
    this.#stock.dataset.names = names.join();
    const now = board.piece("order")?.["wheel.stock"]?.shown ?? board.piece("order")?.stock?.shown;
    this.#stock.replaceChildren(...names.map((name) => make("option", { value: name, selected: name === now }, name)));
    this.#link();
  }

  /** The files to print and to cut, for what is chosen. */
  #link() {
    const asked = { dial: board.dial, paper: this.#paper.value, steps: this.#steps.value, stock: this.#stock.value };
    const file = (/** @type {string} */ path, /** @type {string} */ alt, /** @type {string} */ open, /** @type {string} */ name) => {
      const href = `${path}?${new URLSearchParams(asked)}`;
      return [make("img", { src: href, alt, loading: "lazy", class: path === "/card/page" ? "sheet" : null }), make("div", { class: "row" }, make("a", { class: "button", href, target: "_blank" }, open), make("a", { class: "button", href, download: name, "aria-label": words.save_label(alt) }, words.save))];
    };
    this.#print.replaceChildren(...file("/card/page", words.print_picture, words.print, "card.svg"));
    // The sample has the dial's own marks on it.
    this.#sample.hidden = !board.dial;
    if (board.dial) this.#sample.replaceChildren(...file("/card/sample", words.sample_picture, words.sample, "sample.svg"));
  }

  /** A photo comes in by choosing, dropping it anywhere on the page, pasting, or from the camera. */
  #dropping() {
    const file = make("input", { type: "file", accept: KINDS.join(), class: "only-heard", "data-photo": "", onchange: () => {
      this.#take(file.files);
      file.value = "";
    } });
    const camera = cameraButton((photo) => this.#read(photo), (why) => this.#say(words.no_camera(why)));
    this.#drop.replaceChildren(make("p", {}, words.drop), make("div", { class: "row" }, make("label", { class: "button" }, words.choose, file), camera.button), camera.viewfinder);
    const { signal } = this.#quiet;
    signal.addEventListener("abort", camera.off);
    const over = (/** @type {boolean} */ is) => this.#drop.classList.toggle("over", is);
    for (const kind of /** @type {const} */ (["dragenter", "dragover"])) {
      document.addEventListener(kind, (event) => {
        event.preventDefault();
        over(true);
      }, { signal });
    }
    document.addEventListener("dragleave", (event) => event.relatedTarget === null && over(false), { signal });
    document.addEventListener("drop", (event) => {
      event.preventDefault();
      over(false);
      this.#take(event.dataTransfer?.files);
    }, { signal });
  }

  /** @param {FileList | null | undefined} files */
  #take(files) {
    if (files?.[0]) this.#read(files[0]);
  }

  /** @param {File} photo */
  async #read(photo) {
    if (!KINDS.includes(photo.type)) return this.#say(words.not_photo);
    if (photo.size > LARGEST) return this.#say(words.too_large);
    const mine = ++this.#asked;
    const found = /** @type {PhotoFound} */ (/** @type {unknown} */ (make(/** @type {"div"} */ ("photo-found"))));
    const says = make("p", {}, words.reading);
    this.#found.replaceChildren(says, found);
    await found.show(photo);
    try {
      const asked = { paper: this.#paper.value, steps: this.#steps.value, ...(this.#white.value && { paper_white: this.#white.value }), ...(this.#ink.value && { ink_black: this.#ink.value }) };
      const told = await read(photo, asked);
      if (mine !== this.#asked) return;
      found.outline(told);
      this.#found.replaceChildren(make("div", {}, ...(told.refused ? refused(told) : [...accepted(told), ...(board.dial ? [this.#keeping(told, photo.name)] : [])])), found);
      announce(told.refused ? words.refused(told.refused) : words.accepted);
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      if (mine === this.#asked) this.#say(error.says);
    }
  }

  /** How a reading is kept in its stock. @param {any} told @param {string} photo */
  #keeping(told, photo) {
    const step = choice("step", told.steps.map((/** @type {any} */ _, /** @type {number} */ k) => [String(k + 1), words.step(k + 1)]), String(told.gentlest_as_good_step));
    const depth = make("input", { type: "text", value: board.piece("order")?.["mark.depth"]?.shown ?? "0.3 mm", "data-card": "depth" });
    const power = make("input", { type: "text", "data-card": "power" });
    const stock = this.#stock.cloneNode(true);
    /** @type {HTMLSelectElement} */ (stock).value = this.#stock.value;
    const says = make("div", { role: "status" });
    const keep = make("button", { type: "submit", class: "main" }, words.keep);
    const label = (/** @type {string} */ text, /** @type {Node} */ field) => make("label", {}, `${text} `, field);
    const form = make("form", { class: "keeping" }, make("h3", {}, words.keep_heading), make("p", {}, words.keep_how), make("div", { class: "filters" }, label(words.stock, stock), label(words.keep_step, step), label(words.keep_depth, depth), label(words.keep_power, power)), keep, says);
    form.addEventListener("submit", async (event) => {
      event.preventDefault();
      const name = /** @type {HTMLSelectElement} */ (stock).value;
      try {
        const kept = await tell("/card/store", { dial: board.dial, reading: told.reading, stock: name, step: Number(step.value), depth: depth.value, power: power.value, photo });
        if (kept.of_dial) {
          const refusal = await board.write(kept.text, words.kept_short(name), kept.on);
          if (refusal) throw refusal;
        }
        const back = make("button", { type: "button", onclick: async () => {
          try {
            if (kept.of_dial) await board.undo();
            else await tell("/card/unstore", { dial: board.dial, on: kept.version });
            says.replaceChildren(make("p", {}, words.taken_back));
          } catch (error) {
            if (!(error instanceof Sorry)) throw error;
            says.append(make("p", { class: "wrong" }, error.says));
          }
        } }, words.take_back);
        says.replaceChildren(make("p", { class: "well" }, words.kept(name, kept.file, kept.looks)), back);
      } catch (error) {
        if (!(error instanceof Sorry)) throw error;
        says.replaceChildren(make("p", { class: "wrong" }, error.says));
      }
    });
    return form;
  }

  /** @param {string} what */
  #say(what) {
    this.#found.replaceChildren(make("p", { class: "wrong", role: "alert" }, what));
  }
}
customElements.define("card-view", CardView);

/** @param {string} name @param {[string, string][]} options @param {string} [chosen] */
function choice(name, options, chosen) {
  return make("select", { "data-card": name }, ...options.map(([value, text]) => make("option", { value, selected: value === chosen }, text)));
}

/** Sends a photo to be read. @param {File} photo @param {Record<string, string>} asked @returns {Promise<any>} */
async function read(photo, asked) {
  const response = await fetch(`/card/read?${new URLSearchParams(asked)}`, { method: "POST", headers: { "content-type": "application/octet-stream" }, body: photo });
  const text = await response.text();
  if (response.ok) return JSON.parse(text);
  throw new Sorry(response.status, text.startsWith("{") ? JSON.parse(text) : { what: text, help: "" });
}

/** @param {any} told */
function refused(told) {
  return [make("p", { class: "verdict-line fails" }, words.refused(told.refused)), told.outlines.card.length > 0 && make("p", {}, words.found_part)].filter((one) => one !== false);
}

/** @param {any} told */
function accepted(told) {
  const rows = told.steps.map((/** @type {any} */ step, /** @type {number} */ k) => make(
    "tr",
    { class: k + 1 === told.gentlest_as_good_step ? "chosen" : "" },
    make("th", { scope: "row" }, words.step(k + 1), k + 1 === told.best_step && make("small", {}, ` ${words.best}`), k + 1 === told.gentlest_as_good_step && k + 1 !== told.best_step && make("small", {}, ` ${words.gentlest}`)),
    make("td", {}, words.measured(step.face.lightness, 0)),
    make("td", {}, words.measured(step.engraved.lightness, 0)),
    make("td", {}, words.measured(step.contrast_ratio, 1)),
  ));
  return [
    make("p", { class: "verdict-line well" }, words.accepted),
    make("div", { class: "wide", tabindex: 0, role: "region", "aria-label": words.accepted }, make("table", { class: "reading" }, make("thead", {}, make("tr", {}, ...words.columns.map((column) => make("th", { scope: "col" }, column)))), make("tbody", {}, ...rows))),
    make("p", {}, `${words.interval} ${words.how_taken(told.tilt_deg, told.px_per_mm)}`),
  ];
}
