// The order of writing: by line id, where a run of digits counts as a number, so that E999 comes before E1000.

const run = /\d+|\D+/g;
const digits = /^\d/;

/** Negative when `a` was written first. A total order: only the same id compares as 0. */
export function compareLineIds(a: string, b: string): number {
  const runsA = a.match(run) ?? [];
  const runsB = b.match(run) ?? [];
  for (let k = 0; k < Math.max(runsA.length, runsB.length); k++) {
    const order = compareRuns(runsA[k] ?? '', runsB[k] ?? '');
    if (order !== 0) return order;
  }
  // E35 and E035 are two ids with one place: the shorter spelling goes first.
  return a.length === b.length ? compareText(a, b) : a.length - b.length;
}

function compareRuns(a: string, b: string): number {
  if (!digits.test(a) || !digits.test(b)) return compareText(a, b);
  const numberA = a.replace(/^0+/, '');
  const numberB = b.replace(/^0+/, '');
  return numberA.length === numberB.length ? compareText(numberA, numberB) : numberA.length - numberB.length;
}

/** By code units, never by a locale. */
function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
