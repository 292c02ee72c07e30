// Names of stores in a row: neighbours in a numbered series are told by the first and the last.
const numbered = /^(.*?)(\d+)$/;

/** `C-05 to C-08, C-11`: at least three neighbours make a series; the order is that in which they are given. */
export function seriesOf(ids: readonly string[]): readonly string[] {
  const said: string[] = [];
  let from = 0;
  while (from < ids.length) {
    let to = from;
    while (to + 1 < ids.length && isNext(ids[to] ?? '', ids[to + 1] ?? '')) to += 1;
    if (to - from >= 2) {
      said.push(`${ids[from]} to ${ids[to]}`.replaceAll(' ', '\u00A0'));
      from = to + 1;
    } else {
      said.push((ids[from] ?? '').replaceAll(' ', '\u00A0'));
      from += 1;
    }
  }
  return said;
}

function isNext(before: string, after: string): boolean {
  const [a, b] = [numbered.exec(before), numbered.exec(after)];
  if (a === null || b === null || a[1] !== b[1] || a[2]?.length !== b[2]?.length) return false;
  return BigInt(b[2] ?? '0') === BigInt(a[2] ?? '0') + 1n;
}
