// The commands that a remedy names, for a page on which there is no room for the whole of it.

/** A command ends at a comma, a semicolon, or a point that ends the sentence; not inside quotes. */
const command = /\bwaterwright(?: (?:"[^"]*"|[^\s",;.]+(?:[.,][^\s",;.]+)*))+/g;

/** `waterwright store show C-07`; in the order of the remedy. */
export function commandsIn(remedy: string): readonly string[] {
  return remedy.match(command) ?? [];
}

/**
 * Two ways to go on one line, where they differ in the last word alone: `waterwright log decide 35 36 merge | both`.
 * Otherwise each stands by itself.
 */
export function saidWays(commands: readonly string[]): readonly string[] {
  const [first, ...others] = commands;
  if (first === undefined) return [];
  const stem = stemOf(first);
  if (others.length === 0 || others.some((each) => stemOf(each) !== stem)) return commands;
  return [[first, ...others.map((each) => each.slice(stem.length + 1))].join(' | ')];
}

function stemOf(line: string): string {
  return line.slice(0, Math.max(0, line.lastIndexOf(' ')));
}

/** Shorter than this a text before a colon is only the head of what follows. */
const HEAD = 30;

/** What it is, without how sure and what follows: up to the first point or colon that ends a thought. */
export function firstThought(text: string): string {
  for (const end of text.matchAll(/[.:](?= )/g)) {
    const isThought =
      text[end.index] === '.' ? /^ [A-Z\u2026"]/.test(text.slice(end.index + 1)) : end.index >= HEAD;
    if (isThought) return `${text.slice(0, end.index)}.`;
  }
  return text;
}
