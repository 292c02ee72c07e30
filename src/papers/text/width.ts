// How many columns of a terminal a text takes.

/** Signs that stand on the one before: combining marks and joiners. */
const standsOn = /\p{Mn}|\p{Me}|[\u200D\uFE0F]/u;
/** Scripts whose signs take two columns. */
const isWide =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\u33FF\u3400-\u4DBF\u4E00-\u9FFF\uA000-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6]|[\u{1F300}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;
const simple = /^[\u0020-\u007E\u00A0-\u02FF]*$/;

export function widthOf(text: string): number {
  if (simple.test(text)) return text.length;
  let columns = 0;
  for (const sign of text) columns += columnsOf(sign);
  return columns;
}

export function columnsOf(sign: string): number {
  if (standsOn.test(sign)) return 0;
  return isWide.test(sign) ? 2 : 1;
}

export function padEnd(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - widthOf(text)));
}

export function padStart(text: string, width: number): string {
  return ' '.repeat(Math.max(0, width - widthOf(text))) + text;
}
