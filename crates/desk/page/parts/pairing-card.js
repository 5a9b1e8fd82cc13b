// @ts-check
/** One pairing as a card: its picture, its figures, what it costs, and why it fails if it does. */

import { board } from "../lib/board.js";
import { announce, make } from "../lib/dom.js";
import { texts } from "../texts.js";
import { say } from "./desk-news.js";

const words = texts.looks;

/** @typedef {{ stock: string, thickness: string, finish: string, back_finish: string }} Half */
/** @typedef {{ name: string, rank: number, does: boolean, worn: boolean, why_not: string[], cover: Half, wheel: Half, marks_shown: string | null,
 *   art_shown: string | null, effort_n: number | null, turning: string | null, price: number | null, changes: import("../lib/types.js").Change[] }} Pairing */

/** @param {Pairing} one */
export function pairingPicture({ name, cover, wheel }) {
  const src = `/pairing?${new URLSearchParams({ dial: board.dial, cover: cover.stock, wheel: wheel.stock, of: board.look })}`;
  return make("img", { class: "pairing", src, alt: words.picture(name), loading: "lazy", width: 310, height: 85 });
}

/** The whole dial in it. @param {Pairing} one */
export function dressedPicture({ name, cover, wheel }) {
  const src = `/dressed?${new URLSearchParams({ dial: board.dial, cover: cover.stock, wheel: wheel.stock, of: board.look })}`;
  return make("img", { class: "dressed", src, alt: words.dressed(name) });
}

/** What is told of a pairing. @param {Pairing} one */
export function pairingWords(one) {
  const told = [
    words.halves(one.cover.thickness, one.wheel.thickness, one.wheel.back_finish),
    words.contrast_of(one.marks_shown, one.art_shown),
    one.effort_n === null ? "" : words.turning(one.effort_n, one.turning ?? ""),
    words.price(one.price),
  ];
  return [
    make("p", { class: one.does ? "verdict well" : "verdict fails" }, one.does ? words.does : words.fails(one.why_not)),
    ...told.filter(Boolean).map((line) => make("p", {}, line)),
  ];
}

/** @param {Pairing} one @param {string} [picked] What people said of it. */
export function pairingCard(one, picked) {
  const button = one.worn ? make("p", { class: "worn" }, words.worn) : make("button", { type: "button", "aria-label": words.wear_label(one.name), onclick: () => wear(one) }, words.wear);
  return make(
    "li",
    { class: `pairing-card ${one.does ? "" : "not"}`, "data-pairing": one.name },
    pairingPicture(one),
    make("h3", {}, words.pairing(one.rank, one.cover.stock, one.wheel.stock)),
    ...pairingWords(one),
    picked && make("p", { class: "liked" }, picked),
    button,
  );
}

/** Puts a pairing into the file. @param {Pairing} one */
export async function wear(one) {
  const refusal = await board.edit(one.changes, words.wearing(one.name));
  if (refusal) say(refusal.refusal);
  else announce(words.wearing(one.name));
}
