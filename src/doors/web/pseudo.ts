// A language that does not exist: every text twice as long, so that what has no room for other languages shows.

/** The same table of words, each text followed by itself. */
export function twiceAsLong<T>(words: T): T {
  return twice(words) as T;
}

function twice(word: unknown): unknown {
  if (typeof word === 'string') return longer(word);
  if (typeof word === 'function') {
    const said = word as (...told: readonly unknown[]) => unknown;
    return (...told: readonly unknown[]) => twice(said(...told));
  }
  if (Array.isArray(word)) return word.map(twice);
  if (typeof word !== 'object' || word === null) return word;
  return Object.fromEntries(
    Object.entries(word).map(([key, value]) => [
      key,
      key === 'language' || key === 'rows' ? value : twice(value),
    ]),
  );
}

/** A figure with its unit stays one figure; only its word grows. */
function longer(text: string): string {
  if (text.length < 3) return text;
  const [, figure, word] = /^([\d.]+\u00A0)(\p{L}+)$/u.exec(text) ?? [];
  return figure === undefined ? `${text} ${text}` : `${figure}${word}${word}`;
}
