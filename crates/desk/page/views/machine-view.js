// @ts-check
/** Each setup as it lies in the machine: its steps played in order, its ticket beside it; and the job folder. */

import { ask, post, Sorry } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, draw, make, still } from "../lib/dom.js";
import { length } from "../lib/lengths.js";
import { where } from "../lib/route.js";
import "../parts/papers.js";
import "../parts/workshop-story.js";
import { texts } from "../texts.js";

const words = texts.machine;
/** How long a step is shown while they play, in ms. */
const STEP = 1100;

/** A depth as this maker reads it. @param {number | null} depth */
const deep = (depth) => (depth === null ? null : length(depth));

class MachineView extends HTMLElement {
  #quiet = new AbortController();
  #making = make("section", { "aria-label": texts.make.heading });
  #sheets = make("div");
  /** @type {number[]} */
  #timers = [];
  #shown = "";

  connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    this.className = "sheet-page";
    this.replaceChildren(this.#making, make(/** @type {"div"} */ ("paper-list")), make(/** @type {"div"} */ ("workshop-story")), make("h2", {}, words.heading), this.#sheets);
    board.addEventListener("state", () => this.#show(), { signal });
    addEventListener("hashchange", () => this.#asked(), { signal });
    this.#offer();
    this.#show();
    this.#asked();
  }

  disconnectedCallback() {
    this.#quiet.abort();
    this.#timers.forEach(clearInterval);
  }

  /** Whether the head's button asked for the job folder. */
  #asked() {
    if (!location.hash.endsWith("&make")) return;
    history.replaceState(null, "", location.hash.replace(/&make$/, ""));
    if (where().view === "machine") this.#make();
  }

  #offer() {
    const button = make("button", { type: "button", class: "main", onclick: () => this.#make() }, texts.make.again);
    this.#making.replaceChildren(make("h2", {}, texts.make.heading), button, make("p", {}, texts.make.caution));
  }

  async #make() {
    const steps = Object.keys(texts.make.steps);
    const bar = make("progress", { max: steps.length, value: 0, "aria-label": texts.make.heading });
    const says = make("p", { role: "status" });
    this.#making.replaceChildren(make("h2", {}, texts.make.heading), bar, says);
    const response = await post("/make", { dial: board.dial });
    let text = "";
    const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
    /** @type {any} */
    let last = {};
    for (;;) {
      const part = await reader?.read();
      if (!part || part.done) break;
      text += part.value;
      const lines = text.split("\n");
      text = lines.pop() ?? "";
      for (const line of lines) {
        last = JSON.parse(line);
        if (last.step) {
          bar.value = steps.indexOf(last.step) + 1;
          says.textContent = texts.make.steps[last.step] ?? last.step;
        }
      }
    }
    this.#made(last.sorry ? { sorry: last.sorry } : response.ok ? last : { sorry: JSON.parse(text) });
  }

  /** @param {any} made */
  #made(made) {
    this.#offer();
    if (made.sorry) {
      this.#making.append(make("p", { class: "wrong", role: "alert" }, `${made.sorry.what}. ${made.sorry.help}`));
      announce(made.sorry.what);
      return;
    }
    const says = { new: texts.make.new(made.folder), unchanged: texts.make.unchanged(made.folder), anew: texts.make.anew(made.folder, made.kept) }[/** @type {"new"} */ (made.made)];
    const files = made.files.map((/** @type {{ path: string }} */ file) => {
      const href = `/made?${new URLSearchParams({ dial: board.dial, path: file.path })}`;
      const picture = /^pictures\/.*\.png$/.test(file.path) ? make("img", { src: href, alt: "", loading: "lazy" }) : null;
      return make("li", {}, make("a", { href, target: "_blank" }, picture, file.path));
    });
    this.#making.append(make("p", { role: "status", class: "verdict-line" }, says), make("p", {}, `${texts.make.where} `, make("code", {}, made.path)), make("ul", { class: "made" }, ...files));
    announce(says);
  }

  async #show() {
    // What is seen follows the workshop and the standard as it does the file.
    const version = board.look;
    if (version === this.#shown) return;
    this.#shown = version;
    this.#timers.forEach(clearInterval);
    try {
      const job = await ask("/sheets", { dial: board.dial });
      if (version !== this.#shown) return;
      const setups = job.sheets.flatMap((/** @type {any} */ sheet) => sheet.setups.map((/** @type {any} */ setup) => this.#setup(sheet, setup)));
      this.#sheets.replaceChildren(...setups);
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.#sheets.replaceChildren(make("p", { class: "wrong" }, `${words.none} ${error.refusal.what}. ${error.refusal.help}`));
    }
  }

  /** @param {any} sheet @param {any} setup */
  #setup(sheet, setup) {
    const svg = pictureOf(sheet, setup);
    const groups = [...svg.querySelectorAll('[id^="step-"]')];
    const status = make("p", { role: "status" });
    /** @type {number | null} */
    let timer = null;
    const buttons = setup.steps.map((/** @type {any} */ step, /** @type {number} */ n) => make("button", { type: "button", "aria-pressed": "false", onclick: () => (hold(), upTo(n)) }, words.step(n + 1, step.kind, deep(step.depth_mm))));
    const upTo = (/** @type {number} */ n) => {
      groups.forEach((group, k) => group.classList.toggle("later", k > n));
      buttons.forEach((/** @type {HTMLElement} */ button, /** @type {number} */ k) => button.setAttribute("aria-pressed", String(k === n)));
      status.textContent = n < setup.steps.length ? words.step(n + 1, setup.steps[n].kind, deep(setup.steps[n].depth_mm)) : "";
    };
    const hold = () => {
      if (timer !== null) clearInterval(timer);
      timer = null;
      play.textContent = words.play;
    };
    const play = make("button", { type: "button", class: "main", onclick: () => {
      if (timer !== null) return hold();
      let n = 0;
      upTo(0);
      play.textContent = words.pause;
      const next = () => (++n < groups.length ? upTo(n) : hold());
      if (still()) upTo(groups.length - 1), hold();
      else this.#timers.push((timer = window.setInterval(next, STEP)));
    } }, words.play);
    const all = make("button", { type: "button", onclick: () => (hold(), upTo(groups.length)) }, words.all);
    const title = words.setup(setup.number, setup.turned ? words.turned : words.face_up);
    return make(
      "section",
      { class: "setup", "aria-label": title },
      make("div", {}, make("h2", {}, title), make("p", {}, words.on(sheet.stock, length(Math.ceil(sheet.width_mm)), length(Math.ceil(sheet.height_mm)))), make("div", { class: "bed" }, svg), make("div", { class: "steps" }, play, all, ...buttons), status),
      make("div", {}, make("h3", {}, words.ticket), make("pre", { tabindex: 0, role: "region", "aria-label": `${words.ticket}: ${title}` }, setup.ticket)),
    );
  }
}
customElements.define("machine-view", MachineView);

/** The sheet's own file, read as a picture, over the parts' stock. @param {any} sheet @param {any} setup */
function pictureOf(sheet, setup) {
  const read = new DOMParser().parseFromString(setup.svg, "image/svg+xml").documentElement;
  const svg = /** @type {SVGSVGElement} */ (/** @type {unknown} */ (document.importNode(read, true)));
  svg.removeAttribute("width");
  svg.removeAttribute("height");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", words.picture(setup.number));
  const parts = draw("g", { "aria-hidden": "true" });
  for (const d of sheet.outlines) parts.append(draw("path", { d, fill: sheet.colour }));
  svg.querySelector("g")?.before(parts);
  // Names of groups are the sheet's own; on a page with several sheets they would not be the only ones.
  svg.querySelectorAll("[stroke-width]").forEach((one) => one.setAttribute("stroke-width", "0.45"));
  return svg;
}
