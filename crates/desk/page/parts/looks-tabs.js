// @ts-check
/** The four places where it is seen how a dial looks, one beside the other at the head of each. */

import { board } from "../lib/board.js";
import { make } from "../lib/dom.js";
import { link } from "../lib/route.js";
import { texts } from "../texts.js";

const PLACES = /** @type {const} */ (["looks", "seat", "picks", "card"]);

/** @param {string} view */
export const isLooks = (view) => PLACES.some((place) => place === view);

/** @param {typeof PLACES[number]} here */
export function tabs(here) {
  const one = (/** @type {typeof PLACES[number]} */ place) => make("a", { href: link({ view: place, dial: board.dial }), "aria-current": place === here && "page" }, texts.looks[place]);
  return make("nav", { class: "looks-tabs", "aria-label": texts.looks.tabs }, ...PLACES.map(one));
}
