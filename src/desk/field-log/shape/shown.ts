// What a value is, in words that the table of sentences knows, and how it is quoted: short, on one line.

export function kindOf(value: unknown): string {
  if (value === null || value === undefined) return 'null';
  if (Array.isArray(value)) return 'list';
  if (typeof value === 'object') return 'object';
  if (typeof value === 'string') return 'text';
  return typeof value === 'boolean' ? 'yes-no' : 'number';
}

const LONGEST_QUOTE = 60;

/** A value as written; signs that no screen shows become a question mark, so that a quote cannot move the cursor. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return `[${value.length}]`;
  if (typeof value === 'object' && value !== null) return '{…}';
  const text = String(value).replace(/[\p{Cc}\p{Cs}\p{Cf}]/gu, '?');
  return text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE - 1)}…` : text;
}
