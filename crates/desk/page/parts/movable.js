// @ts-check
/** What can be moved on the dial, where it may snap to, and the change that a move makes in the file. */

import { board } from "../lib/board.js";
import { angle, grain, length, mm, point } from "../lib/lengths.js";
import { texts } from "../texts.js";

const words = texts.dial.handles;
const snaps = texts.dial.snaps;

/** @typedef {import("../lib/types.js").Place} Place */
/** @typedef {{ x: number } | { y: number } | { from: Place, angle: number }} Guide */
/** @typedef {{ changes: import("../lib/types.js").Change[], says: string, snapped: string, guides: Guide[] }} Moved */
/**
 * @typedef {{ name: string, words: string, at: Place, d?: string, shift?: Place,
 *   move: (to: Place, free: boolean) => Moved, nudge: (x: number, y: number) => Moved }} Handle
 */

/** Within so many degrees, or mm, a thing comes in line. */
const NEAR_DEGREES = 5;
const NEAR = 1.2;
/** A window is moved in or out only when it is dragged farther than this, in mm: else it just goes round. */
const RADIAL = 1.5;

/** @returns {Handle[]} */
export function allHandles() {
  const all = [...cover()];
  board.wheels.forEach((_, i) => all.push(middle(i), window(i), notch(i)));
  const art = /** @type {import("../lib/types.js").Art[]} */ (board.piece("art") ?? []);
  art.forEach((one) => one.path && all.push(ofArt(one, one.path)));
  return all;
}

/** @param {string} path @param {any} value @returns {import("../lib/types.js").Change} */
const set = (path, value) => ({ do: "set", path, value });

const turn = (/** @type {number} */ degrees) => ((degrees % 360) + 360) % 360;
const apart = (/** @type {number} */ a, /** @type {number} */ b) => Math.abs(((a - b + 540) % 360) - 180);

/** The nearest of some directions. @param {number} degrees @param {[number, string][]} places @param {boolean} free */
function snapAngle(degrees, places, free) {
  const near = places.map(([to, why]) => ({ to: turn(to), why, off: apart(degrees, to) })).sort((a, b) => a.off - b.off)[0];
  if (!free && near && near.off <= NEAR_DEGREES) return { degrees: near.to, why: near.why };
  return { degrees: Math.round(degrees), why: "" };
}

/** @param {number} value @param {[number, string][]} places @param {boolean} free */
function snapTo(value, places, free) {
  const near = places.map(([to, why]) => ({ to, why, off: Math.abs(value - to) })).sort((a, b) => a.off - b.off)[0];
  if (!free && near && near.off <= NEAR) return { value: near.to, why: near.why };
  return { value: Math.round(value / grain()) * grain(), why: "" };
}

/** Directions that look right from a wheel's middle. @param {number} i @param {(wheel: import("../lib/types.js").Wheel) => number} of */
function directions(i, of) {
  const wheels = board.wheels;
  const { at } = wheels[i];
  /** @type {[number, string][]} */
  const places = [0, 90, 180, 270].map((degrees) => [degrees, snaps.quarter]);
  places.push(...[45, 135, 225, 315].map((degrees) => /** @type {[number, string]} */ ([degrees, snaps.eighth])));
  if (Math.hypot(at.x, at.y) > 1) places.push([(Math.atan2(at.y, -at.x) * 180) / Math.PI, snaps.middle]);
  wheels.forEach((other, j) => {
    if (j === i) return;
    const mirrored = [180 - of(other), -of(other)];
    for (const degrees of mirrored) places.push([degrees, snaps.mirror(other.name)]);
    places.push([of(other), snaps.same(other.name)]);
  });
  return places;
}

/** @param {number} i @returns {Handle} */
function window(i) {
  const wheel = board.wheels[i];
  const { at, d, distance } = wheel.window;
  const path = `counter[${i}].window`;
  /** @param {number} degrees @param {number} far @param {string} why @returns {Moved} */
  const moved = (degrees, far, why) => {
    const changes = [set(`${path}.angle`, angle(degrees))];
    const round = Math.round(far / grain()) * grain();
    if (Math.abs(far - distance) > RADIAL) changes.push(set(`${path}.distance`, length(round)));
    const says = changes.map((one) => ("value" in one ? one.value : "")).join(", ");
    return { changes, says, snapped: why, guides: why ? [{ from: wheel.at, angle: (-degrees * Math.PI) / 180 }] : [] };
  };
  return {
    name: `window/${i}`,
    words: words.window(wheel.name),
    at,
    d,
    shift: at,
    move: (to, free) => {
      const [x, y] = [to.x - wheel.at.x, wheel.at.y - to.y];
      const { degrees, why } = snapAngle(turn((Math.atan2(y, x) * 180) / Math.PI), directions(i, (one) => one.window.angle), free);
      return moved(degrees, Math.hypot(x, y), why);
    },
    nudge: (x, y) => (y ? moved(wheel.window.angle, distance - y * (RADIAL + 0.5), "") : moved(turn(wheel.window.angle - 5 * x), distance, "")),
  };
}

/** @param {number} i @returns {Handle} */
function notch(i) {
  const wheel = board.wheels[i];
  const moved = (/** @type {number} */ degrees, /** @type {string} */ why) => ({
    changes: [set(`counter[${i}].notch.angle`, angle(degrees))],
    says: angle(degrees),
    snapped: why,
    guides: why ? [{ from: wheel.at, angle: (-degrees * Math.PI) / 180 }] : [],
  });
  return {
    name: `notch/${i}`,
    words: words.notch(wheel.name),
    at: wheel.notch.mouth,
    d: wheel.notch.cutter,
    move: (to, free) => {
      const degrees = turn((Math.atan2(wheel.at.y - to.y, to.x - wheel.at.x) * 180) / Math.PI);
      const places = directions(i, (one) => one.notch.angle);
      places.push([wheel.window.angle + 180, snaps.opposite]);
      const snapped = snapAngle(degrees, places, free);
      return moved(snapped.degrees, snapped.why);
    },
    nudge: (x, y) => moved(turn(wheel.notch.angle - 5 * (x || y)), ""),
  };
}

/** A place that snaps to the cover's middle and to other things. @param {Place} to @param {Place[]} others @param {boolean} free */
function place(to, others, free) {
  /** @param {"x" | "y"} axis @returns {[number, string][]} */
  const lines = (axis) => [[0, snaps.axis], ...others.flatMap((one) => /** @type {[number, string][]} */ ([[one[axis], snaps.same("")], [-one[axis], snaps.mirror("")]]))];
  const [x, y] = [snapTo(to.x, lines("x"), free), snapTo(to.y, lines("y"), free)];
  /** @type {Guide[]} */
  const guides = [];
  if (x.why) guides.push({ x: x.value });
  if (y.why) guides.push({ y: y.value });
  return { x: x.value, y: y.value, why: [x.why, y.why].filter(Boolean)[0]?.trim() ?? "", guides };
}

/** @param {string} path @param {{ x: number, y: number, why: string, guides: Guide[] }} to @returns {Moved} */
const movedTo = (path, to) => {
  const value = point(to.x, -to.y);
  return { changes: [set(path, value)], says: value.join(", "), snapped: to.why, guides: to.guides };
};

/** @param {number} i @returns {Handle} */
function middle(i) {
  const wheel = board.wheels[i];
  const others = board.wheels.filter((_, j) => j !== i).map((one) => one.at);
  const path = `counter[${i}].at`;
  return {
    name: `middle/${i}`,
    words: words.middle(wheel.name),
    at: wheel.at,
    move: (to, free) => movedTo(path, place(to, others, free)),
    nudge: (x, y) => movedTo(path, { x: wheel.at.x + x * grain(), y: wheel.at.y + y * grain(), why: "", guides: [] }),
  };
}

/** @param {import("../lib/types.js").Art} art @param {string} path @returns {Handle} */
function ofArt(art, path) {
  const others = board.wheels.map((one) => one.at);
  return {
    name: path,
    words: words.art(art.what),
    at: art.at,
    d: art.d,
    shift: art.at,
    move: (to, free) => movedTo(`${path}.at`, place(to, others, free)),
    nudge: (x, y) => movedTo(`${path}.at`, { x: art.at.x + x * grain(), y: art.at.y + y * grain(), why: "", guides: [] }),
  };
}

/** A corner of a free polygon. @param {string[][]} all @param {number} n @returns {Handle} */
function corner(all, n) {
  const at = { x: mm(all[n][0]), y: -mm(all[n][1]) };
  const others = all.filter((_, k) => k !== n).map(([x, y]) => ({ x: mm(x), y: -mm(y) }));
  /** @param {{ x: number, y: number, why: string, guides: Guide[] }} to @returns {Moved} */
  const moved = (to) => {
    const value = point(to.x, -to.y);
    return { changes: [set("cover.points", all.map((one, k) => (k === n ? value : one)))], says: value.join(", "), snapped: to.why, guides: to.guides };
  };
  return {
    name: `cover.points/${n}`,
    words: words.corner(n + 1),
    at,
    move: (to, free) => moved(place(to, others, free)),
    nudge: (x, y) => moved({ x: at.x + x * grain(), y: at.y + y * grain(), why: "", guides: [] }),
  };
}

/** The cover's right and lower edge: both sides move, so that its middle stays. @returns {Handle[]} */
function cover() {
  const corners = board.piece("order")?.["cover.points"]?.written;
  if (Array.isArray(corners)) return corners.map((_, n) => corner(corners, n));
  const { box } = board.piece("cover");
  /** @param {"width" | "height"} side @param {number} mm @param {boolean} free @returns {Moved} */
  const moved = (side, mm, free) => {
    const other = side === "width" ? box.height : box.width;
    const { value, why } = snapTo(Math.max(mm, 10), [[other, snaps.square]], free);
    const says = length(value);
    return { changes: [set(`cover.${side}`, says)], says, snapped: why, guides: side === "width" ? [{ x: value / 2 }, { x: -value / 2 }] : [{ y: value / 2 }, { y: -value / 2 }] };
  };
  const [x, y] = [box.x + box.width, box.y + box.height];
  return [
    { name: "cover.width", words: words.width, at: { x, y: box.y + box.height / 4 }, move: (to, free) => moved("width", 2 * Math.abs(to.x), free), nudge: (dx, dy) => moved("width", box.width + 2 * grain() * (dx || -dy), true) },
    { name: "cover.height", words: words.height, at: { x: box.x + box.width / 4, y }, move: (to, free) => moved("height", 2 * Math.abs(to.y), free), nudge: (dx, dy) => moved("height", box.height + 2 * grain() * (dx || dy), true) },
  ];
}
