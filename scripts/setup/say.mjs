// How a set-up talks: to standard error only, so that data on standard output stays data.

/** Something that stops the set-up, in words for the person who started it. */
export class SetupError extends Error {}

/** @param {string} text */
export function say(text) {
  process.stderr.write(`${text}\n`);
}
