// @ts-check
"use strict";
(() => {
  /** All words of the page, in one place. */
  const WORDS = {
    how: "Turn a wheel by its bared rim in the notch: drag it with a finger or the mouse, use the buttons, or the arrow keys.",
    dial: "The dial", over: "Turn over", front: "Show the front", trueSize: "True size", fitted: "Fit to the screen",
    cardHow: "Hold a bank card to the screen and move the slider until the grey card is exactly as wide.",
    cardLabel: "Width of the card", cardDone: "It fits",
    wheels: "Wheels", less: "one back", more: "one on", shows: "shows", of: "of", count: "stops",
    table: "Seen from the table", reader: "Reader", wheel: "Wheel",
    seen: "The window of {wheel} as {reader} sees it: {shown}.",
    pairings: "Materials", thisOne: "This one", codeWords: "Send this code to the maker; it stands for these materials.",
    notReadable: "Will not do: ", cover: "cover", wheelsOf: "wheels",
    care: "Take care",
    careWords: "This dial holds strong magnets. Swallowed magnets kill: keep them from children, and look for one that is loose now and then. If one may have been swallowed: medical help at once. Keep the dial away from pacemakers and other implants.",
  };
  /** @type {any} */
  const figures = JSON.parse(/** @type {HTMLElement} */ (document.getElementById("figures")).textContent || "{}");
  /** @param {string} id @returns {any} */
  const by = (id) => document.getElementById(id);
  /** @param {string} name @param {Record<string, string>} attributes @param {string} [text] */
  const made = (name, attributes, text) => {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    if (text !== undefined) element.textContent = text;
    return element;
  };
  /** @param {string} id @param {string} text */
  const say = (id, text) => { by(id).textContent = text; };

  // One number for each wheel: how many stops it is turned, whole when it rests; not wrapped, so that it turns the short way.
  /** @type {{ turned: number, stops: number, marks: string[], senses: number, name: string, centre: number[], radius: number }[]} */
  const wheels = figures.wheels.map((/** @type {any} */ one) => ({ ...one, turned: 0, stops: one.marks.length }));
  const wrapped = (/** @type {number} */ k, /** @type {number} */ n) => ((Math.round(k) % n) + n) % n;

  /** Draws one wheel where it is turned to, here and in the reader's window. @param {number} i */
  function draw(i) {
    const wheel = wheels[i];
    const degrees = -wheel.senses * 360 * wheel.turned / wheel.stops;
    for (const group of document.querySelectorAll(`[data-wheel="${i}"].wheel`)) {
      /** @type {SVGGElement} */ (group).style.transform = `rotate(${degrees}deg)`;
    }
    const turner = by(`turner-${i}`);
    if (!turner) return;
    const stop = wrapped(wheel.turned, wheel.stops);
    turner.setAttribute("aria-valuenow", String(stop));
    turner.setAttribute("aria-valuetext", wheel.marks[stop]);
    turner.querySelector(".shown").textContent = wheel.marks[stop];
    if (seat.wheel === i) tell();
  }

  /** @param {number} i @param {number} by how many stops */
  function turn(i, by) {
    wheels[i].turned = Math.round(wheels[i].turned) + by;
    draw(i);
  }

  // The controls: a slider of its own for each wheel, since a stop has a name and no end.
  say("how", WORDS.how); say("dial-head", WORDS.dial); say("over", WORDS.over); say("true-size", WORDS.trueSize);
  say("card-how", WORDS.cardHow); say("card-label", WORDS.cardLabel); say("card-done", WORDS.cardDone);
  say("wheels-head", WORDS.wheels); say("table-head", WORDS.table); say("pairings-head", WORDS.pairings);
  say("this-one", WORDS.thisOne); say("care-head", WORDS.care); say("care-words", WORDS.careWords);
  const seat = { reader: 0, wheel: 0 };
  wheels.forEach((wheel, i) => {
    const box = made("div", { class: "wheel-control" });
    const turner = made("div", {
      class: "turner", id: `turner-${i}`, role: "slider", tabindex: "0", "aria-label": wheel.name,
      "aria-valuemin": "0", "aria-valuemax": String(wheel.stops - 1), "aria-valuenow": "0", "aria-valuetext": wheel.marks[0],
    });
    turner.append(made("span", {}, wheel.name), made("span", { class: "shown" }, wheel.marks[0]));
    turner.addEventListener("keydown", (event) => {
      const steps = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 5, PageDown: -5 };
      const at = wrapped(wheel.turned, wheel.stops);
      const by = event.key === "Home" ? -at : event.key === "End" ? wheel.stops - 1 - at : /** @type {any} */ (steps)[event.key];
      if (by === undefined) return;
      event.preventDefault();
      turn(i, by);
    });
    const less = made("button", { type: "button", "aria-label": `${wheel.name}: ${WORDS.less}` }, "\u2212");
    const more = made("button", { type: "button", "aria-label": `${wheel.name}: ${WORDS.more}` }, "+");
    less.addEventListener("click", () => turn(i, -1));
    more.addEventListener("click", () => turn(i, 1));
    box.append(less, turner, more);
    by("wheels").append(box);
  });

  // Dragging at the bared rim: the wheel follows the finger about its own middle, and comes to rest on a stop.
  for (const grip of /** @type {NodeListOf<SVGElement>} */ (document.querySelectorAll(".grip"))) {
    const i = Number(grip.dataset.wheel);
    const wheel = wheels[i];
    const svg = /** @type {SVGSVGElement} */ (grip.ownerSVGElement);
    let last = /** @type {number | null} */ (null);
    /** @param {PointerEvent} event */
    const angle = (event) => {
      const matrix = /** @type {DOMMatrix} */ (svg.getScreenCTM()).inverse();
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
      return Math.atan2(at.y - wheel.centre[1], at.x - wheel.centre[0]);
    };
    const groups = document.querySelectorAll(`[data-wheel="${i}"].wheel`);
    grip.addEventListener("pointerdown", (event) => {
      grip.setPointerCapture(event.pointerId);
      last = angle(event);
      [grip, ...groups].forEach((one) => one.classList.add("held"));
      event.preventDefault();
    });
    grip.addEventListener("pointermove", (event) => {
      if (last === null) return;
      const now = angle(event);
      let by = now - last;
      if (by > Math.PI) by -= 2 * Math.PI;
      if (by < -Math.PI) by += 2 * Math.PI;
      last = now;
      // On the screen y runs down: a positive angle is clockwise there.
      wheel.turned += -wheel.senses * by / (2 * Math.PI) * wheel.stops;
      draw(i);
    });
    // On a shape within a drawing `touch-action` is not heeded everywhere: a finger that turns must not move the page.
    grip.addEventListener("touchstart", (event) => event.preventDefault(), { passive: false });
    const settle = () => {
      if (last === null) return;
      last = null;
      [grip, ...groups].forEach((one) => one.classList.remove("held"));
      turn(i, 0);
    };
    grip.addEventListener("pointerup", settle);
    grip.addEventListener("pointercancel", settle);
  }

  by("over").addEventListener("click", () => {
    const turned = !by("back").hidden;
    by("back").hidden = turned;
    by("front").hidden = !turned;
    by("over").setAttribute("aria-pressed", String(!turned));
    say("over", turned ? WORDS.over : WORDS.front);
  });

  // True size: pixels for a millimetre, from a bank card (ISO/IEC 7810 ID-1: 85.60 x 53.98 mm).
  let scale = 96 / 25.4;
  try { scale = Number(localStorage.getItem("px-per-mm")) || scale; } catch { /* a page opened from a file may have no store */ }
  function card() {
    by("bank-card").style.width = `${85.6 * scale}px`;
    by("bank-card").style.height = `${53.98 * scale}px`;
    by("mat").style.setProperty("--true-width", `${figures.size[0] * scale}px`);
    by("mat").style.setProperty("--true-height", `${figures.size[1] * scale}px`);
    by("card-size").setAttribute("aria-valuetext", `${Math.round(85.6 * scale)} px`);
  }
  by("card-size").value = String(scale);
  by("card-size").addEventListener("input", () => { scale = Number(by("card-size").value); card(); });
  by("true-size").addEventListener("click", () => {
    const now = !by("mat").classList.contains("true");
    by("mat").classList.toggle("true", now);
    by("card").hidden = !now;
    by("true-size").setAttribute("aria-expanded", String(now));
    say("true-size", now ? WORDS.fitted : WORDS.trueSize);
    card();
  });
  by("card-done").addEventListener("click", () => {
    by("card").hidden = true;
    try { localStorage.setItem("px-per-mm", String(scale)); } catch { /* no store, no memory */ }
    by("true-size").focus();
  });
  card();

  // The window from a seat: three planes, each with its own projective map, so that the cover's edge hides what it hides.
  /** @param {number[][]} h rows @param {number} s pixels for a mm */
  function css(h, s) {
    const m = [[h[0][0], -h[0][1], h[0][2] * s], [-h[1][0], h[1][1], -h[1][2] * s], [h[2][0] / s, -h[2][1] / s, h[2][2]]];
    return `matrix3d(${m[0][0]},${m[1][0]},0,${m[2][0]},${m[0][1]},${m[1][1]},0,${m[2][1]},0,0,1,0,${m[0][2]},${m[1][2]},0,${m[2][2]})`;
  }
  const pxPerMm = 9;
  const worn = [...figures.worn];
  function look() {
    const box = by("seen");
    box.textContent = "";
    const { cover, deep, blur_mm } = figures.seats[seat.reader];
    // How deep the wheel lies hangs on the thickness of the cover that is tried on.
    const under = deep[figures.stocks[worn[0]].deep[seat.wheel]];
    const [cx, cy] = figures.wheels[seat.wheel].window;
    const reach = 80;
    /** @param {string} inner @param {number[][]} plane */
    const layer = (inner, plane) => {
      const holder = document.createElement("div");
      holder.innerHTML = `<svg width="1" height="1" aria-hidden="true"><g transform="scale(${pxPerMm}) translate(${-cx} ${-cy})">${inner}</g></svg>`;
      const svg = /** @type {SVGSVGElement} */ (holder.firstElementChild);
      svg.style.transform = css(plane, pxPerMm);
      svg.style.filter = `blur(${blur_mm * pxPerMm}px)`;
      box.append(svg);
    };
    const near = `M${cx - reach} ${cy - reach}h${2 * reach}v${2 * reach}h${-2 * reach}Z`;
    const wheel = /** @type {Element} */ (document.querySelector(`#front [data-at="${seat.wheel}"]`));
    layer(wheel.outerHTML, under);
    layer(`<path class="wall" d="${near} ${figures.wheels[seat.wheel].opening}"/>`, under);
    layer(`<path class="plate" d="${near} ${figures.wheels[seat.wheel].opening}"/><path class="lip" d="${figures.wheels[seat.wheel].opening}"/>`, cover);
    tell();
  }
  function tell() {
    const wheel = wheels[seat.wheel];
    const words = WORDS.seen.replace("{wheel}", wheel.name).replace("{reader}", figures.seats[seat.reader].name)
      .replace("{shown}", wheel.marks[wrapped(wheel.turned, wheel.stops)]);
    say("seen-words", words);
    by("seen").setAttribute("aria-label", words);
  }
  /** @param {string} label @param {string[]} names @param {(k: number) => void} chosen */
  function choice(label, names, chosen) {
    const list = made("select", { "aria-label": label });
    names.forEach((name, k) => list.append(made("option", { value: String(k) }, name)));
    list.addEventListener("change", () => { chosen(Number(/** @type {HTMLSelectElement} */ (list).value)); look(); });
    by("table-choice").append(list);
  }
  choice(WORDS.wheel, wheels.map((one) => one.name), (k) => { seat.wheel = k; });
  choice(WORDS.reader, figures.seats.map((/** @type {any} */ one) => one.name), (k) => { seat.reader = k; });

  // Materials: two lists, each setting the colours of its part everywhere on the page.
  const parts = [{ name: WORDS.cover, prefix: "cover" }, { name: WORDS.wheelsOf, prefix: "wheel" }];
  function wear() {
    parts.forEach((part, p) => {
      const stock = figures.stocks[worn[p]];
      const colours = { "": stock.face, "-burnt": stock.burnt[p], "-back": stock.back, "-edge": stock.edge };
      for (const [key, colour] of Object.entries(colours)) {
        document.documentElement.style.setProperty(`--${part.prefix}${key}`, colour);
      }
      by(`stocks-${p}`).querySelectorAll("button").forEach((/** @type {Element} */ one, /** @type {number} */ k) => {
        one.setAttribute("aria-checked", String(k === worn[p]));
        one.setAttribute("tabindex", k === worn[p] ? "0" : "-1");
      });
    });
    const why = figures.pairings[worn[0]][worn[1]].why_not;
    say("not-readable", why ? WORDS.notReadable + why : "");
    say("code", "");
    say("code-words", "");
    look();
  }
  parts.forEach((part, p) => {
    const group = made("div", { class: "stocks", id: `stocks-${p}`, role: "radiogroup", "aria-label": `${WORDS.pairings}: ${part.name}` });
    by("pairing-list").append(made("h3", { "aria-hidden": "true" }, part.name), group);
    figures.stocks.forEach((/** @type {any} */ stock, /** @type {number} */ k) => {
      const button = made("button", { type: "button", role: "radio" });
      const patch = made("span", { class: "patch", "aria-hidden": "true" });
      patch.style.background = `linear-gradient(135deg, ${stock.face} 60%, ${stock.burnt[p]} 60%)`;
      button.append(patch, made("span", {}, stock.name));
      button.addEventListener("click", () => { worn[p] = k; wear(); });
      button.addEventListener("keydown", (event) => {
        const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
        if (by === undefined) return;
        event.preventDefault();
        worn[p] = wrapped(worn[p] + by, figures.stocks.length);
        wear();
        /** @type {HTMLElement} */ (group.querySelector('[aria-checked="true"]')).focus();
      });
      group.append(button);
    });
  });
  by("this-one").addEventListener("click", () => {
    say("code", figures.pairings[worn[0]][worn[1]].code);
    say("code-words", WORDS.codeWords);
  });
  wear();
  wheels.forEach((_, i) => draw(i));
})();
