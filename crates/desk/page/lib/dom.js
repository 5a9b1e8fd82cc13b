// @ts-check
/** Small helpers to make elements. Text enters as text, never as markup. */

const SVG = "http://www.w3.org/2000/svg";

/** @typedef {Node | string | null | undefined | false} Child */

/**
 * @param {Element} element
 * @param {Record<string, any>} attributes
 */
export function dress(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on") && typeof value === "function") {
      element.addEventListener(name.slice(2), value);
    } else if (value === null || value === undefined || value === false) {
      element.removeAttribute(name);
    } else {
      const text = value === true ? "" : String(value);
      if (element.getAttribute(name) !== text) element.setAttribute(name, text);
    }
  }
  return element;
}

/**
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {Record<string, any>} [attributes]
 * @param {...Child} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  dress(element, attributes);
  element.append(.../** @type {(Node | string)[]} */ (children.filter((child) => child !== null && child !== undefined && child !== false)));
  return element;
}

/**
 * @template {keyof SVGElementTagNameMap} K
 * @param {K} tag
 * @param {Record<string, any>} [attributes]
 * @param {...Child} children
 * @returns {SVGElementTagNameMap[K]}
 */
export function draw(tag, attributes = {}, ...children) {
  const element = document.createElementNS(SVG, tag);
  dress(element, attributes);
  element.append(.../** @type {(Node | string)[]} */ (children.filter((child) => child !== null && child !== undefined && child !== false)));
  return element;
}

/**
 * A text of the desk's: what stands in it between backticks is written so in a file or typed as a command.
 * @param {string} text
 * @returns {(Node | string)[]}
 */
export function coded(text) {
  return text.split("`").map((part, n, all) => (n % 2 === 1 && n < all.length - 1 ? make("code", {}, part) : n % 2 === 1 ? `\`${part}` : part));
}

/**
 * Says something to screen readers.
 * @param {string} words
 */
export function announce(words) {
  let region = document.getElementById("announced");
  if (!region) {
    region = make("div", { id: "announced", class: "only-heard", role: "status", "aria-live": "polite" });
    document.body.append(region);
  }
  region.textContent = words;
}

export const still = () => matchMedia("(prefers-reduced-motion: reduce)").matches;
