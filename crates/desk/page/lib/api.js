// @ts-check
/** What the page asks of the desk. Every answer is JSON; a refusal is thrown as `Sorry`. */

/** @typedef {{ what: string, help: string, mistakes?: import("./types.js").Mistake[], kept?: string | null }} Refusal */

/** A refusal in words. */
export class Sorry extends Error {
  /**
   * @param {number} status
   * @param {Refusal} refusal
   */
  constructor(status, refusal) {
    super(refusal.what);
    this.status = status;
    this.refusal = refusal;
  }

  /** What is the matter, and what helps. */
  get says() {
    return [this.refusal.what, this.refusal.help].filter((one) => one).join(". ");
  }
}

/** @param {Response} response */
async function answer(response) {
  const text = await response.text();
  if (response.ok) return JSON.parse(text);
  let refusal = { what: text || response.statusText, help: "" };
  try {
    refusal = JSON.parse(text);
  } catch {
    // Plain words.
  }
  throw new Sorry(response.status, refusal);
}

/**
 * @param {string} path
 * @param {Record<string, string>} [query]
 */
export async function ask(path, query = {}) {
  return answer(await fetch(`${path}?${new URLSearchParams(query)}`));
}

/**
 * @param {string} path
 * @param {object} body
 */
export async function tell(path, body) {
  return answer(await post(path, body));
}

/**
 * @param {string} path
 * @param {object} body
 */
export function post(path, body) {
  return fetch(path, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) });
}
