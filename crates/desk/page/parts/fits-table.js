// @ts-check
/** A family of dials side by side: which wheel fits which place of which cover, and why not. */

import { ask } from "../lib/api.js";
import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.shelf;

class FitsTable extends HTMLElement {
  async connectedCallback() {
    const { dials, fits, left_out } = await ask("/fits");
    /** @type {{ at: string, name: string }[]} */
    const all = dials.flatMap((/** @type {any} */ dial, /** @type {number} */ d) => dial.wheels.map((/** @type {string} */ wheel, /** @type {number} */ i) => ({ at: `${d} ${i}`, name: `${dial.name}: ${wheel}` })));
    if (all.length < 2) return;
    const why = new Map(fits.map((/** @type {any} */ fit) => [`${fit.wheel.join(" ")}/${fit.place.join(" ")}`, fit.why_not]));
    const head = make("tr", {}, make("td"), ...all.map((place) => make("th", { scope: "col" }, place.name)));
    const rows = all.map((wheel) => {
      const cells = all.map((place) => {
        /** @type {string[]} */
        const not = why.get(`${wheel.at}/${place.at}`) ?? [];
        if (not.length === 0) return make("td", { class: "fits" }, make("span", { "aria-hidden": "true" }, "+"), make("span", { class: "only-heard" }, words.family_fits));
        return make("td", { class: "not" }, make("details", {}, make("summary", { "aria-label": words.family_not }, "\u2212"), make("p", {}, not.join("; "))));
      });
      return make("tr", {}, make("th", { scope: "row" }, wheel.name), ...cells);
    });
    const good = fits.every((/** @type {any} */ fit) => fit.why_not.length === 0);
    this.replaceChildren(
      make(
        "section",
        { "data-part": "family" },
        make("h2", {}, words.family),
        make("p", {}, good ? words.family_all : words.family_how),
        left_out > 0 ? make("p", {}, words.family_left_out(left_out)) : null,
        make("div", { class: "wide", tabindex: 0, role: "region", "aria-label": words.family }, make("table", { class: "fits" }, make("thead", {}, head), make("tbody", {}, ...rows))),
      ),
    );
  }
}
customElements.define("fits-table", FitsTable);
