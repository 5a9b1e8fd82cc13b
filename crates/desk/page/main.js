// @ts-check
/** The page begins: which dial lies on the mat, and which view is open. Both stand in the address, so a reload keeps them. */

import { ask, Sorry } from "./lib/api.js";
import { board } from "./lib/board.js";
import { make } from "./lib/dom.js";
import { go, where } from "./lib/route.js";
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

const main = /** @type {HTMLElement} */ (document.getElementById("view"));
let shown = "";

async function show() {
  const { view, dial } = where();
  if (dial && dial !== board.dial) await board.open(dial);
  const tag = VIEWS[/** @type {keyof typeof VIEWS} */ (view)] ?? VIEWS.mat;
  if (shown !== `${tag} ${dial}`) {
    const first = shown === "";
    shown = `${tag} ${dial}`;
    main.replaceChildren(make(/** @type {"div"} */ (tag)));
    if (!first) main.focus();
  }
  document.title = texts.title(board.piece("dial")?.name ?? "");
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
