// @ts-check
/** The mat: the dial in the middle, its order as a story on one side, what was found on the other, all windows below. */

import "../parts/dial-mat.js";
import "../parts/found-list.js";
import "../parts/order-story.js";
import "../parts/wheel-knobs.js";
import "../parts/window-strip.js";
import { make } from "../lib/dom.js";

class MatView extends HTMLElement {
  connectedCallback() {
    const part = (/** @type {string} */ tag) => make(/** @type {"div"} */ (tag));
    this.replaceChildren(
      make("div", { class: "middle" }, part("dial-mat"), part("wheel-knobs"), part("window-strip")),
      part("found-list"),
      part("order-story"),
    );
  }
}
customElements.define("mat-view", MatView);
