// @ts-check
/**
 * What the desk tells of a dial. Places in mm, y down, from the cover's middle; angles of `step` in degrees as SVG turns.
 *
 * @typedef {{ x: number, y: number }} Place
 * @typedef {{ x: number, y: number, width: number, height: number }} Area
 * @typedef {{ line: number, from: number, to: number, words: string }} Label
 * @typedef {{ what: string, at: Label | null, also: Label[], help: string }} Mistake
 * @typedef {{ name: string, units: "mm" | "inch", around: Area, width: string, height: string, wheels: number,
 *   turned_sideways: boolean, sizes: string, refuse: number, mend: number, note: number, makeable: boolean, passes: boolean }} Dial
 * @typedef {{ face: string, outline: string, box: Area, colour: string, back: string, burnt: string, stock: string, thickness: string,
 *   pockets: { at: Place, radius: number, depth: string }[] }} Cover
 * @typedef {{ what: string, path: string | null, at: Place, d: string }} Art
 * @typedef {{ name: string, at: Place, radius: number, rim: string, colour: string, back: string, burnt: string, stops: number, step: number,
 *   window: { at: Place, d: string, angle: number, distance: number, width: number, height: number, box: Area },
 *   notch: { angle: number, mouth: Place, push: Place, cutter: string }, pocket: { radius: number } }} Wheel
 * @typedef {{ words: string, d: string }} Mark
 * @typedef {{ words: string, seen: number, margin: string, slack_deg: number, drift: string, drift_mm: number, faults: string[],
 *   others: number[] }} Stop
 * @typedef {{ rule: string, severity: "refuse" | "mend" | "note", what: string, measured: string | null, limit: string | null,
 *   part: string, part_words: string, place: Place | null, source: string, mend: string, keys: string[], line: number | null }} Finding
 * @typedef {{ written: any, shown: string, from: "written" | "dial" | "usual" | "derived" }} Value
 * @typedef {{ kind: string, words: string, range: string, source: string, usual: string | null, derived: string | null,
 *   words_known?: string[], required: boolean, low?: number, high?: number, choices?: string[] }} Param
 * @typedef {{ dial: Record<string, Param>, counter: Record<string, Param>, art: Record<string, Param>, stock: Record<string, Param>,
 *   layer: Record<string, Param>, workshop: Record<string, Param>, symbols: string[] }} Parameters
 * @typedef {{ do: "set", path: string, value: any } | { do: "leave", path: string } | { do: "add", path: string, value: object }
 *   | { do: "remove", path: string }} Change
 * @typedef {{ changes: Change[], by: "rule" | "trying", before: any[], then: { refuse: number, mend: number, size: string } }} Mend
 * @typedef {{ version: string, words: string, text: string }} Kept
 * @typedef {{ version: string, text: string, undo: string | null, redo: string | null, kept: Kept[] }} State
 */
export {};
