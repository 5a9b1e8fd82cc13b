// @ts-check
/** A photo of the card, upright, with what was found of it drawn over it. */

import { draw, make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.card;
/** A photo is shown no wider than this, in pixels. */
const WIDEST = 1400;
const KINDS = /** @type {const} */ (["card", "tags", "whites", "blacks", "steps"]);

export class PhotoFound extends HTMLElement {
  #canvas = make("canvas", { "aria-hidden": "true" });
  #over = draw("svg", { class: "over", role: "img" });
  #name = "";

  /** Shows a photo as it will be read: the way up that the phone was held. @param {File} photo */
  async show(photo) {
    this.#name = photo.name;
    this.#over.setAttribute("aria-label", words.photo(photo.name));
    this.replaceChildren(make("div", { class: "photo" }, this.#canvas, this.#over));
    try {
      const bitmap = await createImageBitmap(photo, { imageOrientation: "from-image" });
      const scale = Math.min(1, WIDEST / Math.max(bitmap.width, bitmap.height));
      [this.#canvas.width, this.#canvas.height] = [Math.round(bitmap.width * scale), Math.round(bitmap.height * scale)];
      this.#canvas.getContext("2d")?.drawImage(bitmap, 0, 0, this.#canvas.width, this.#canvas.height);
      bitmap.close();
    } catch {
      // What the browser cannot decode the reader will refuse, and say why.
      this.replaceChildren();
    }
  }

  /** @param {any} told */
  outline(told) {
    if (!told.width || !this.firstChild) return;
    this.#over.setAttribute("viewBox", `0 0 ${told.width} ${told.height}`);
    const ring = (/** @type {number[][]} */ corners) => (corners.length ? `M${corners.map((corner) => corner.join(" ")).join("L")}Z` : "");
    const paths = { ...told.outlines, card: told.outlines.card.length ? [told.outlines.card] : [], steps: told.outlines.steps.flat() };
    const drawn = KINDS.map((kind) => [kind, paths[kind].map(ring).join("")]).filter(([, d]) => d);
    // Twice, pale under dark, so that it is seen on any photo.
    this.#over.replaceChildren(...drawn.flatMap(([kind, d]) => [draw("path", { class: "under", d }), draw("path", { class: `found-${kind}`, d })]));
    const legend = drawn.map(([kind]) => make("li", {}, draw("svg", { viewBox: "0 0 14 14", class: "swatch", "aria-hidden": "true" }, draw("path", { class: `found-${kind}`, d: "M2 2H12V12H2Z" })), words.legend[kind]));
    this.querySelector("ul")?.remove();
    this.append(make("ul", { class: "bands" }, ...legend));
  }
}
customElements.define("photo-found", PhotoFound);
