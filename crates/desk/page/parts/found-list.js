// @ts-check
/**
 * What was found, the gravest first. Touching a finding shows its place on the dial (event `place`, detail: the finding
 * or null). Mends are asked for when the page has been quiet a moment: each was tried by the desk before it is offered.
 */

import { ask } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, coded, make } from "../lib/dom.js";
import { link } from "../lib/route.js";
import { texts } from "../texts.js";
import { standardTrouble } from "./standard-trouble.js";

const words = texts.found;
/** How long the page is quiet before mends are asked for, in ms. */
const QUIET = 250;

/** @typedef {import("../lib/types.js").Finding} Finding */
/** @typedef {import("../lib/types.js").Change} Change */
/** @typedef {import("../lib/types.js").Mend} Mend */

class FoundList extends HTMLElement {
  #quiet = new AbortController();
  #heading = make("h2", {}, words.heading);
  #verdict = make("p", { class: "verdict-line", role: "status" });
  #list = make("ol");
  #chosen = "";
  #timer = 0;
  /** What the list shows: only if that changed is it made anew. */
  #shown = "";
  /** @type {{ look: string, mends: (Mend | null)[] }} */
  #known = { look: "", mends: [] };

  connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    this.replaceChildren(this.#heading, this.#verdict, this.#list);
    board.addEventListener("pieces", (event) => this.#changed(/** @type {CustomEvent} */ (event).detail), { signal });
    this.#show();
    this.#later();
  }

  disconnectedCallback() {
    this.#quiet.abort();
    clearTimeout(this.#timer);
  }

  /** @param {Set<string>} changed */
  #changed(changed) {
    if (["dial", "findings", "mistakes"].some((name) => changed.has(name))) this.#show();
    this.#later();
  }

  #later() {
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(async () => {
      const look = board.look;
      const findings = /** @type {Finding[]} */ (board.piece("findings") ?? []);
      if (board.stale || board.trying || this.#known.look === look || !findings.some((one) => one.severity !== "note")) return;
      const mends = await ask("/mends", { dial: board.dial, have: look }).catch(() => []);
      if (look !== board.look) return;
      this.#known = { look, mends };
      this.#show();
    }, QUIET);
  }

  #show() {
    const mistakes = board.piece("mistakes");
    const broken = /** @type {import("../lib/types.js").Mistake[]} */ (mistakes?.dial_file ?? []);
    const workshop = /** @type {import("../lib/types.js").Mistake[]} */ (mistakes?.workshop_file ?? []);
    const dial = board.piece("dial");
    if (!dial && broken.length === 0) {
      this.#verdict.textContent = "";
      this.#list.replaceChildren();
      this.#shown = "";
      return;
    }
    const says = broken.length > 0 ? words.broken : dial.refuse > 0 ? words.to_refuse(dial.refuse) : dial.mend > 0 ? words.to_mend(dial.mend) : words.well;
    if (this.#verdict.textContent !== says) this.#verdict.textContent = says;
    const focused = this.#list.contains(document.activeElement) ? /** @type {HTMLElement} */ (document.activeElement).dataset.key : undefined;
    const mends = this.#known.look === board.look ? this.#known.mends : [];
    const now = JSON.stringify([mistakes, broken.length === 0 && board.piece("findings"), mends, this.#chosen]);
    if (now === this.#shown) return;
    this.#shown = now;
    const items = broken.map((mistake) => mistakeItem(mistake));
    if (workshop.length > 0) items.push(make("li", { class: "mend" }, make("p", {}, words.workshop), ...workshop.map((one) => make("p", { class: "why" }, one.what))));
    if (mistakes?.standard) items.push(make("li", { class: "mend" }, ...standardTrouble(true)));
    if (broken.length === 0) {
      items.push(.../** @type {Finding[]} */ (board.piece("findings") ?? []).map((one, n, all) => this.#item(one, mends[n], keyOf(one, n, all))));
    }
    this.#list.replaceChildren(...items);
    if (focused) /** @type {HTMLElement | null} */ (this.#list.querySelector(`[data-key="${CSS.escape(focused)}"]`))?.focus();
  }

  /** @param {Finding} finding @param {Mend | null | undefined} mend @param {string} key */
  #item(finding, mend, key) {
    const touch = make(
      "button",
      { type: "button", class: "touch", "data-key": key, "aria-pressed": String(this.#chosen === key), onclick: () => this.#choose(finding, key) },
      make("span", { class: "weight" }, `${words.weights[finding.severity]}: `),
      make("span", { class: "what" }, ...coded(finding.what)),
    );
    const line = finding.line ? make("a", { href: `${link({ view: "writing", dial: board.dial })}&line=${finding.line}` }, words.line(finding.line)) : null;
    const advice = finding.mend ? make("p", { class: "why" }, words.advice, ...coded(finding.mend), ".") : null;
    const offered = mend ? this.#offered(mend, key) : [];
    return make(
      "li",
      { class: `${finding.severity}${this.#chosen === key ? " chosen" : ""}` },
      touch,
      make("p", { class: "why" }, words.why(finding.part_words, finding.measured, finding.limit, finding.source), " ", line),
      advice,
      ...offered,
    );
  }

  /** What a mend changes and what comes of it is said before it is made. @param {Mend} mend @param {string} key */
  #offered(mend, key) {
    const says = inWords(mend.changes);
    const about = `mend-${key.replace(/[^a-z0-9]+/gi, "-")}`;
    const before = mend.changes.map((one, n) => words.before(called(one.path), mend.before[n] ?? (board.piece("order")?.[one.path]?.shown || null))).join(", ");
    const { refuse, mend: left, size } = mend.then;
    return [
      make("button", { type: "button", "data-key": `mend ${key}`, "aria-describedby": about, onclick: () => this.#mend(mend.changes) }, `${words.mend}: ${says}`),
      make("p", { class: "why", id: about }, words.by[mend.by], " ", words.then(before, size, refuse, left)),
    ];
  }

  /** @param {Finding} finding @param {string} key */
  #choose(finding, key) {
    this.#chosen = this.#chosen === key ? "" : key;
    document.querySelector("dial-mat")?.dispatchEvent(new CustomEvent("place", { detail: this.#chosen ? finding : null }));
    this.#show();
  }

  /** @param {Change[]} mend */
  async #mend(mend) {
    const says = words.mending(inWords(mend));
    if ((await board.edit(mend, says)) === null) announce(says);
    this.#heading.tabIndex = -1;
    if (!this.#list.contains(document.activeElement)) this.#heading.focus();
  }
}
customElements.define("found-list", FoundList);

/** A name for a finding: its rule and part, and which of those. @param {Finding} one @param {number} n @param {Finding[]} all */
function keyOf(one, n, all) {
  const before = all.slice(0, n).filter((other) => other.rule === one.rule && other.part === one.part).length;
  return `${one.rule} ${one.part}${before > 0 ? ` ${before + 1}` : ""}`;
}

/** @param {Change[]} changes */
function inWords(changes) {
  return changes.map((one) => (one.do === "set" ? words.set(called(one.path), String(one.value)) : words.leave(called(one.path)))).join(", ");
}

/** A path as a maker says it: `mark.height of mood`. @param {string} path */
function called(path) {
  const found = /^counter\[(\d+)\]\.(.*)$/.exec(path);
  return found ? words.of(found[2], board.wheels[Number(found[1])]?.name ?? found[1]) : path;
}

/** @param {import("../lib/types.js").Mistake} mistake */
export function mistakeItem(mistake) {
  const line = mistake.at?.line;
  const place = line ? make("a", { href: `${link({ view: "writing", dial: board.dial })}&line=${line}` }, words.line(line)) : null;
  const also = mistake.also.map((one) => make("p", { class: "why" }, `${words.line(one.line)}: ${one.words}`));
  return make(
    "li",
    { class: "refuse" },
    make("p", {}, make("strong", {}, ...coded(mistake.what)), mistake.at ? `: ${mistake.at.words} ` : " ", place),
    ...also,
    make("p", { class: "why" }, ...coded(mistake.help)),
  );
}
