// @ts-check
/** The address: `#view=mat&dial=harbour/dial.toml`. */

/** @returns {{ view: string, dial: string }} */
export function where() {
  const all = new URLSearchParams(location.hash.slice(1));
  return { view: all.get("view") ?? "mat", dial: all.get("dial") ?? "" };
}

/** @param {{ view: string, dial: string }} place */
export const link = ({ view, dial }) => `#${new URLSearchParams(dial ? { view, dial } : { view })}`;

/** @param {{ view: string, dial: string }} place @param {boolean} [instead] Without a step in the browser's history. */
export function go(place, instead = false) {
  if (!instead) {
    location.hash = link(place);
    return;
  }
  history.replaceState(null, "", link(place));
  // The browser tells of no such step.
  dispatchEvent(new Event("placed"));
}
