// A table as comma-separated values. @source RFC 4180, with UTF-8, point decimals, and units in the heads

/** Signs at which a spreadsheet would take a text for a formula. @source OWASP, CSV injection */
const formulaLike = /^[=+\-@\t\r]/;

/** One record a line, its end CR LF; numbers as they are, texts in quotes where they need them, null as nothing. */
export function csvText(
  heads: readonly string[],
  rows: readonly (readonly (string | number | null)[])[],
): string {
  return [heads, ...rows].map((cells) => `${cells.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: string | number | null): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return `${cell}`;
  // The quote keeps the text a text; it alters it, and so numbers never get one.
  const text = formulaLike.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
