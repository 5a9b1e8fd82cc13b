// @ts-check
/** The head of the page: the dial's name, where to look, undo and redo, and whether the last change is on disk. */

import { board } from "../lib/board.js";
import { make } from "../lib/dom.js";
import { link, where } from "../lib/route.js";
import { texts } from "../texts.js";
import { isLooks } from "./looks-tabs.js";

const words = texts.head;

class DeskHead extends HTMLElement {
  #name = make("h1");
  #nav = make("nav", { "aria-label": words.views });
  #undo = make("button", { type: "button", onclick: () => board.undo() }, words.undo_short);
  #redo = make("button", { type: "button", onclick: () => board.redo() }, words.redo_short);
  #kept = make("span", { class: "kept", role: "status" });
  #make = make("button", { type: "button", class: "main", onclick: () => (location.hash = link({ view: "machine", dial: board.dial }) + "&make") }, words.make);

  connectedCallback() {
    const deeds = make("div", { class: "deeds" }, this.#kept, this.#undo, this.#redo, this.#make);
    this.append(make("header", {}, this.#name), this.#nav, deeds);
    for (const event of ["pieces", "state", "opened"]) board.addEventListener(event, () => this.#show());
    board.addEventListener("kept", (event) => {
      const how = /** @type {CustomEvent} */ (event).detail;
      this.#kept.textContent = how === "keeping" ? words.keeping : how === "kept" ? words.kept : words.not_kept;
    });
    board.addEventListener("answers", (event) => {
      if (!(/** @type {CustomEvent} */ (event).detail)) this.#kept.textContent = words.cut_off;
      else if (this.#kept.textContent === words.cut_off) this.#kept.textContent = "";
    });
    for (const event of ["hashchange", "placed"]) addEventListener(event, () => this.#show());
    addEventListener("keydown", (event) => this.#key(event));
    this.#show();
  }

  /** Ctrl-Z and Ctrl-Shift-Z, except where the browser undoes what is being typed. @param {KeyboardEvent} event */
  #key(event) {
    const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || typing) return;
    event.preventDefault();
    if (event.shiftKey) board.redo();
    else board.undo();
  }

  #show() {
    const { view } = where();
    this.#name.textContent = board.piece("dial")?.name || (board.dial || words.nothing);
    const places = { mat: words.mat, magnets: words.magnets, looks: words.looks, machine: words.machine, writing: words.writing, shelf: words.shelf };
    this.#nav.replaceChildren(
      ...Object.entries(places).map(([name, text]) =>
        make("a", { href: link({ view: name, dial: board.dial }), "aria-current": (name === view || (name === "looks" && isLooks(view))) && "page" }, text),
      ),
    );
    const { undo = null, redo = null } = board.state ?? {};
    for (const [button, what, say] of /** @type {const} */ ([
      [this.#undo, undo, words.undo],
      [this.#redo, redo, words.redo],
    ])) {
      button.disabled = !what;
      button.title = say(what);
      button.setAttribute("aria-label", say(what));
    }
    this.#make.disabled = !board.dial;
  }
}
customElements.define("desk-head", DeskHead);
