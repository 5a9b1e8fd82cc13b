// @ts-check
/** The page begins: which dial lies on the mat, and which view is open. Both stand in the address, so a reload keeps them. */

import { ask, Sorry } from "./lib/api.js";
import { board } from "./lib/board.js";
import { make } from "./lib/dom.js";
import { go, link, where } from "./lib/route.js";
import "./parts/desk-head.js";
import { say } from "./parts/desk-news.js";
import { texts } from "./texts.js";
import "./views/card-view.js";
import "./views/looks-view.js";
import "./views/machine-view.js";
import "./views/magnets-view.js";
import "./views/mat-view.js";
import "./views/picks-view.js";
import "./views/seat-view.js";
import "./views/shelf-view.js";
import "./views/writing-view.js";

const VIEWS = { mat: "mat-view", magnets: "magnets-view", looks: "looks-view", picks: "picks-view", seat: "seat-view", card: "card-view", machine: "machine-view", writing: "writing-view", shelf: "shelf-view" };

/** Views that have something to show without a dial. */
const WITHOUT = ["shelf", "card"];

const main = /** @type {HTMLElement} */ (document.getElementById("view"));
let shown = "";

async function show() {
  const asked = where().dial;
  if (asked && asked !== board.dial) await board.open(asked);
  // Meanwhile the maker may have gone elsewhere.
  const { view, dial } = where();
  if (dial !== asked) return;
  const tag = VIEWS[/** @type {keyof typeof VIEWS} */ (view)] ?? VIEWS.mat;
  if (shown !== `${tag} ${dial}`) {
    const first = shown === "";
    shown = `${tag} ${dial}`;
    main.replaceChildren(board.dial || WITHOUT.includes(view) ? make(/** @type {"div"} */ (tag)) : nothing());
    if (!first) main.focus();
  }
  document.title = texts.title(board.piece("dial")?.name ?? "");
}

/** Where there is no dial yet, the way to one. */
function nothing() {
  return make("div", { class: "calm" }, make("p", {}, texts.dial.nothing, " ", make("a", { href: link({ view: "shelf", dial: "" }) }, texts.dial.to_shelf)));
}

board.addEventListener("pieces", () => {
  document.title = texts.title(board.piece("dial")?.name ?? "");
});
board.addEventListener("refused", (event) => {
  const error = /** @type {CustomEvent} */ (event).detail;
  if (error instanceof Sorry && error.status !== 404) say(error.refusal);
});
addEventListener("hashchange", show);

const begun = await ask("/desk");
if (!where().dial) go({ view: begun.first ? where().view : "shelf", dial: begun.first ?? "" }, true);
await show();
