// @ts-check
/** A family of dials side by side: what is found of them as one set, which wheel fits which place of which cover, and why not. */

import { ask } from "../lib/api.js";
import { coded, make } from "../lib/dom.js";
import { link } from "../lib/route.js";
import { texts } from "../texts.js";

const words = texts.shelf;

class FitsTable extends HTMLElement {
  async connectedCallback() {
    const { dials, fits, left_out, set } = await ask("/fits");
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
        left_out.length > 0 ? make("p", {}, words.family_left_out, " ", ...leading(left_out)) : null,
        ...(set.length > 0 ? asSet(set, dials, good) : []),
        make("h3", {}, words.family_fits_what),
        make("p", {}, good ? words.family_all : words.family_how),
        make("div", { class: "wide", tabindex: 0, role: "region", "aria-label": words.family }, make("table", { class: "fits" }, make("thead", {}, head), make("tbody", {}, ...rows))),
      ),
    );
  }
}
customElements.define("fits-table", FitsTable);

/** Names of files, each leading to what is written in it. @param {string[]} files */
function leading(files) {
  return files.flatMap((file, n) => [n > 0 ? ", " : "", make("a", { href: link({ view: "writing", dial: file }) }, file)]);
}

/** What was found of each two dials, each name leading to its dial. @param {any[]} set @param {any[]} dials @param {boolean} good */
function asSet(set, dials, good) {
  const count = set.filter((one) => one.severity !== "note").length;
  const says = count > 0 ? texts.found.to_mend(count) : good ? words.set_well : words.set_notes;
  const items = set.map((one) => {
    const name = (/** @type {string} */ file) => make("a", { href: link({ view: "mat", dial: file }) }, dials.find((dial) => dial.file === file)?.name ?? file);
    const why = [one.mend ? `${texts.found.advice}${one.mend}.` : "", one.source ? texts.value.source(one.source) : ""].filter(Boolean).join(" ");
    return make("li", { class: one.severity, "data-of": one.of, "data-about": one.about },
      make("p", {}, make("strong", {}, `${texts.found.weights[one.severity]}: `), name(one.of), ` ${words.set_with} `, name(one.about)),
      make("p", { class: "what" }, ...coded(one.what)),
      why && make("p", { class: "why" }, why),
    );
  });
  return [make("h3", {}, words.set), make("p", { class: "verdict-line" }, says), make("p", {}, words.set_how), make("ul", { class: "from-here" }, ...items)];
}
