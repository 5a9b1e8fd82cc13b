// @ts-check
/** The dial file itself, with the places of its mistakes. What is written here is kept as it is written. */

import { board } from "../lib/board.js";
import { coded, make } from "../lib/dom.js";
import "../parts/workshop-file.js";
import { texts } from "../texts.js";

const words = texts.writing;

class WritingView extends HTMLElement {
  #quiet = new AbortController();
  #text = make("textarea", { "aria-label": words.label, spellcheck: "false", autocomplete: "off", autocapitalize: "off", wrap: "off" });
  /** A field shows a part of what is in it; paper shows all. */
  #paper = make("pre", { class: "for-paper" });
  #status = make("p", { role: "status" });
  #mistakes = make("ul", { class: "mistakes" });
  #keep = make("button", { type: "button", class: "main", onclick: () => this.#write() }, words.keep);
  #throw = make("button", { type: "button", onclick: () => this.#take(true) }, words.throw);
  /** What the file held when its text was last taken over. */
  #disk = "";
  /** The version of that. */
  #on = "";

  connectedCallback() {
    this.#quiet = new AbortController();
    const { signal } = this.#quiet;
    this.className = "calm";
    const side = make("div", {}, make("div", { class: "deeds" }, this.#keep, this.#throw), this.#status, this.#mistakes);
    this.replaceChildren(make("h2", {}, words.heading), make("div", { class: "writing" }, make("div", {}, this.#text, this.#paper), side), make(/** @type {"div"} */ ("workshop-file")));
    board.addEventListener("state", () => this.#take(false), { signal });
    board.addEventListener("pieces", () => this.#show(), { signal });
    addEventListener("hashchange", () => this.#line(), { signal });
    this.#text.addEventListener("input", () => this.#show(), { signal });
    this.#text.addEventListener(
      "keydown",
      (event) => {
        if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "s") {
          event.preventDefault();
          this.#write();
        }
      },
      { signal },
    );
    this.#take(true);
    this.#line();
  }

  disconnectedCallback() {
    this.#quiet.abort();
  }

  /** Takes over what is on disk, unless something is being written here. @param {boolean} surely */
  #take(surely) {
    const now = board.state?.text ?? "";
    if (surely || this.#text.value === this.#disk) this.#text.value = now;
    if (this.#text.value === now) {
      this.#disk = now;
      this.#on = board.state?.version ?? "";
    }
    this.#show();
  }

  #show() {
    const changed = this.#text.value !== (board.state?.text ?? "");
    this.#keep.disabled = !changed;
    this.#throw.disabled = !changed;
    const mistakes = /** @type {import("../lib/types.js").Mistake[]} */ (board.piece("mistakes")?.dial_file ?? []);
    this.#status.textContent = changed ? words.changed : mistakes.length > 0 ? words.mistakes(mistakes.length) : words.well;
    this.#paper.textContent = this.#text.value;
    this.#text.setAttribute("aria-invalid", String(mistakes.length > 0));
    this.#mistakes.replaceChildren(
      ...mistakes.map((mistake) => {
        const places = [mistake.at, ...mistake.also].filter((one) => one !== null);
        const links = places.map((one) => make("p", {}, make("button", { type: "button", onclick: () => this.#select(one.from, one.to) }, words.go(one.line)), ` ${one.words}`));
        return make("li", {}, make("strong", {}, ...coded(mistake.what)), ...links, make("p", {}, words.help, ...coded(mistake.help)));
      }),
    );
  }

  /** @param {number} from @param {number} to */
  #select(from, to) {
    this.#text.focus();
    this.#text.setSelectionRange(from, Math.max(to, from + 1));
    const line = this.#text.value.slice(0, from).split("\n").length;
    this.#text.scrollTop = Math.max(0, (line - 4) * parseFloat(getComputedStyle(this.#text).lineHeight));
  }

  /** Goes to the line that the address names. */
  #line() {
    const line = Number(new URLSearchParams(location.hash.slice(1)).get("line"));
    if (!line) return;
    const before = this.#text.value.split("\n").slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
    const end = this.#text.value.indexOf("\n", before);
    this.#select(before, end < 0 ? this.#text.value.length : end);
  }

  async #write() {
    const refusal = await board.write(this.#text.value, words.words, this.#on);
    // Where both sides changed, this text is kept beside the file and shown above with it.
    this.#take(refusal === null || refusal.status === 409);
  }
}
customElements.define("writing-view", WritingView);
