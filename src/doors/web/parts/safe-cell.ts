// A cell of a copied table: no tabs, no line ends, and no text that a sheet would take for a formula.

/** Numbers stay numbers, also below zero; a true minus sign becomes the one that sheets know. */
export function safeCell(text: string): string {
  const cell = text
    .replaceAll('\u00A0', ' ')
    .replaceAll('\u202F', '')
    .replaceAll('\u2212', '-')
    .replace(/[\t\n\r]+/g, ' ');
  const isNumber = /^[-+]?\d/.test(cell);
  return /^[=+\-@]/.test(cell) && !isNumber ? `'${cell}` : cell;
}
