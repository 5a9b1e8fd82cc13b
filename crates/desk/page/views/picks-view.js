// @ts-check
/** What people picked: two pairings side by side, or a ranking; and who leads, with how sure that is. */

import { ask, Sorry, tell } from "../lib/api.js";
import { board } from "../lib/board.js";
import { announce, draw, make } from "../lib/dom.js";
import { say } from "../parts/desk-news.js";
import { tabs } from "../parts/looks-tabs.js";
import { dressedPicture, pairingPicture, pairingWords, wear } from "../parts/pairing-card.js";
import { texts } from "../texts.js";

const words = texts.picks;

/** @typedef {import("../parts/pairing-card.js").Pairing} Pairing */
/** @typedef {{ name: string, share: number | null, log_strength: number | null, standard_error: number | null, laid_out: number }} Picked */
/** @typedef {{ file: string, picked: { choices: number, verdict: string, ranking: Picked[] } | null, last: string[] | null, candidates: Pairing[] }} Votes */

class PicksView extends HTMLElement {
  #quiet = new AbortController();
  /** @type {Votes | null} */
  #votes = null;
  /** The two that lie side by side, by name. @type {[string, string] | null} */
  #two = null;
  /** Pairs that were laid out at this page, so that others come first. @type {string[]} */
  #laid = [];
  /** @type {string[]} */
  #ranking = [];
  #ask = make("div");
  #order = make("div");
  #result = make("div");
  #shown = "";
  #drawn = "";
  #asked = 0;
  #answered = 0;

  connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    this.className = "calm looks picks";
    board.addEventListener("state", () => this.#show(), { signal });
    // Votes may have been given at another desk meanwhile.
    addEventListener("focus", () => this.#show(true), { signal });
    this.replaceChildren(
      tabs("picks"),
      make("section", {}, make("h2", {}, words.heading), make("p", {}, words.how), this.#ask, make("details", {}, make("summary", {}, words.ranking), this.#order)),
      make("section", {}, make("h2", {}, words.result), this.#result),
    );
    this.#show();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  async #show(anew = false) {
    const version = `${board.dial} ${board.look}`;
    if (!board.dial || (version === this.#shown && !anew)) return;
    this.#shown = version;
    try {
      await this.#answer(ask("/votes", { dial: board.dial }));
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      this.#ask.replaceChildren(make("p", { class: "wrong" }, error.says));
      this.#result.replaceChildren();
    }
  }

  /** Takes an answer in, unless that to a later question is here already. @param {Promise<Votes>} answer */
  async #answer(answer) {
    const mine = ++this.#asked;
    const votes = await answer;
    if (mine < this.#answered) return;
    this.#answered = mine;
    this.#take(votes);
  }

  /** @param {Votes} votes */
  #take(votes) {
    this.#votes = votes;
    const there = (/** @type {string} */ name) => votes.candidates.some((one) => one.name === name);
    if (!this.#two || !this.#two.every(there)) this.#next();
    this.#ranking = this.#ranking.filter(there);
    this.#redraw();
    this.#result.replaceChildren(...this.#ranked(votes));
  }

  /** What has not changed stays, and with it the focus and a press that has begun. */
  #redraw() {
    const drawn = JSON.stringify([board.look, this.#two, this.#votes?.candidates]);
    if (drawn === this.#drawn) return;
    this.#drawn = drawn;
    this.#drawTwo();
    this.#drawOrder();
  }

  /** Lays out the two that were laid out least; one of them was laid out before, so that all can be held against each other. */
  #next() {
    const names = this.#votes?.candidates.map((one) => one.name) ?? [];
    const often = new Map(this.#votes?.picked?.ranking.map((one) => [one.name, one.laid_out]));
    let best = Infinity;
    /** @type {[string, string] | null} */
    let two = null;
    for (const [i, a] of names.entries()) {
      for (const b of names.slice(i + 1)) {
        const laid = this.#laid.filter((one) => one === [a, b].sort().join("\n")).length;
        const apart = often.size > 0 && !often.has(a) && !often.has(b);
        const count = 100 * laid + (apart ? 50 : 0) + (often.get(a) ?? 0) + (often.get(b) ?? 0);
        if (count < best) [best, two] = [count, [a, b]];
      }
    }
    this.#two = two;
  }

  #drawTwo() {
    const votes = this.#votes;
    const two = this.#two;
    if (!votes || !two) return this.#ask.replaceChildren(make("p", {}, words.too_few));
    const side = (/** @type {0 | 1} */ k) => {
      const one = votes.candidates.find(({ name }) => name === two[k]);
      const select = make("select", { "data-side": String(k), "aria-label": k === 0 ? words.left : words.right, onchange: () => {
        two[k] = select.value;
        this.#redraw();
        /** @type {HTMLElement | null} */ (this.#ask.querySelector(`[data-side="${k}"]`))?.focus();
      } }, ...votes.candidates.filter(({ name }) => name !== two[1 - k]).map(({ name }) => make("option", { value: name, selected: name === two[k] }, name)));
      const rather = make("button", { type: "button", class: "main", "data-rather": String(k), "aria-label": words.rather_label(two[k]), onclick: () => this.#vote([two[k], two[1 - k]], k) }, words.rather);
      return make("div", { class: "one-of-two" }, select, make("strong", { class: "for-paper" }, two[k]), one && dressedPicture(one), one && pairingPicture(one), ...(one ? pairingWords(one) : []), rather);
    };
    const next = make("button", { type: "button", onclick: () => {
      this.#laid.push([...two].sort().join("\n"));
      this.#next();
      this.#redraw();
    } }, words.next);
    this.#ask.replaceChildren(make("div", { class: "two" }, side(0), side(1)), next);
  }

  /** @param {string[]} best_first @param {0 | 1} [side] Whose button was pressed. */
  async #vote(best_first, side) {
    if (!(await this.#send("/votes", best_first))) return;
    if (side === undefined) {
      this.#ranking = [];
      this.#drawOrder();
      announce(words.recorded(best_first.length));
      return;
    }
    this.#laid.push([...best_first].sort().join("\n"));
    this.#next();
    this.#redraw();
    /** @type {HTMLElement | null} */ (this.#ask.querySelector(`[data-rather="${side}"]`))?.focus();
    announce(words.voted(best_first[0], best_first[1]));
  }

  /** @param {string} path @param {string[]} best_first @returns {Promise<boolean>} Whether it is on disk. */
  async #send(path, best_first) {
    try {
      await this.#answer(tell(path, { dial: board.dial, best_first }));
      return true;
    } catch (error) {
      if (!(error instanceof Sorry)) throw error;
      say(error.refusal);
      return false;
    }
  }

  #drawOrder() {
    const all = this.#votes?.candidates ?? [];
    const ranking = this.#ranking;
    const changed = (/** @type {string[]} */ next, /** @type {string} */ focus) => {
      this.#ranking = next;
      this.#drawOrder();
      /** @type {HTMLElement | null} */ (this.#order.querySelector(focus) ?? this.#order.querySelector("button"))?.focus();
    };
    const rows = ranking.map((name, k) => make(
      "li",
      {},
      make("span", {}, name),
      k > 0 && make("button", { type: "button", "aria-label": words.up(name), "data-up": String(k), onclick: () => changed([...ranking.slice(0, k - 1), name, ranking[k - 1], ...ranking.slice(k + 1)], `[data-up="${k - 1}"]`) }, "\u2191"),
      make("button", { type: "button", "aria-label": words.out(name), onclick: () => changed(ranking.filter((one) => one !== name), "[data-add]") }, "\u00d7"),
    ));
    const left = all.filter((one) => !ranking.includes(one.name)).map(({ name }) => make("li", {}, make("button", { type: "button", "data-add": name, onclick: () => changed([...ranking, name], "[data-add]") }, words.add(name))));
    const record = make("button", { type: "button", class: "main", disabled: ranking.length < 2, onclick: () => this.#vote(ranking) }, words.record);
    this.#order.replaceChildren(make("p", {}, words.ranking_how), make("ol", { class: "ranking" }, ...rows), record, make("ul", { class: "to-rank" }, ...left));
  }

  /** @param {Votes} votes */
  #ranked(votes) {
    const { last } = votes;
    const back = last && make("button", { type: "button", "data-back": "", "aria-label": words.back_label(last), onclick: async () => {
      if (await this.#send("/votes/back", last)) announce(words.taken_back);
    } }, words.back);
    const kept = make("p", { class: "kept-in" }, words.file(votes.file));
    if (!votes.picked) return [make("p", {}, words.no_votes), kept, back || null].filter((one) => one !== null);
    const { choices, verdict, ranking } = votes.picked;
    const reach = Math.max(1, ...ranking.map((one) => Math.abs(one.log_strength ?? 0) + 1.96 * (one.standard_error ?? 0)));
    const rows = ranking.map((one) => {
      const known = votes.candidates.find(({ name }) => name === one.name);
      const note = !known ? words.elsewhere : known.does ? "" : words.fails;
      return make(
        "li",
        {},
        make("strong", {}, one.name),
        note && make("small", {}, note),
        make("span", {}, words.share(one.share, one.laid_out)),
        ...sureness(one, reach),
        known && (known.worn ? make("span", { class: "worn" }, texts.looks.worn) : make("button", { type: "button", "aria-label": texts.looks.wear_label(known.name), onclick: () => wear(known) }, texts.looks.wear)),
      );
    });
    return [
      make("p", { class: "verdict-line", role: "status" }, `${verdict[0].toUpperCase()}${verdict.slice(1)}.`),
      make("p", {}, words.cast(choices)),
      make("p", {}, words.drawn),
      make("ol", { class: "picked" }, ...rows),
      kept,
      ...(back ? [back] : []),
    ];
  }
}
customElements.define("picks-view", PicksView);

/** A strength with where it lies in 95 of 100 cases, drawn to one scale. @param {Picked} one @param {number} reach */
function sureness(one, reach) {
  const { log_strength: log, standard_error: error } = one;
  if (log === null || error === null) return [make("span", {}, words.not_ranked)];
  const at = (/** @type {number} */ value) => 50 + (48 * value) / reach;
  const svg = draw("svg", { viewBox: "0 0 100 12", class: "sureness", "aria-hidden": "true" }, draw("path", { class: "middle", d: "M50 0V12" }), draw("path", { class: "whisker", d: `M${at(log - 1.96 * error)} 6H${at(log + 1.96 * error)}` }), draw("circle", { cx: at(log), cy: 6, r: 3.2 }));
  return [svg, make("span", {}, words.strength(log, error))];
}
