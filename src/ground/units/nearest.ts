// The names nearest to a mistyped one: what "did you mean" is made of.

/** Folds A-Z only: names are ASCII, and no language's rules of case may change an answer. */
function folded(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => String.fromCharCode(letter.charCodeAt(0) + 32));
}

/** How many letters must be added, left out, replaced or swapped with a neighbour (optimal string alignment). */
export function editDistance(first: string, second: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: second.length + 1 }, (_, column) => column);
  for (let row = 1; row <= first.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= second.length; column += 1) {
      const same = first[row - 1] === second[column - 1];
      const replaced = at(last, column - 1) + (same ? 0 : 1);
      let best = Math.min(at(last, column) + 1, at(current, column - 1) + 1, replaced);
      const swapped =
        row > 1 &&
        column > 1 &&
        first[row - 1] === second[column - 2] &&
        first[row - 2] === second[column - 1];
      if (swapped) best = Math.min(best, at(beforeLast, column - 2) + 1);
      current.push(best);
    }
    beforeLast = last;
    last = current;
  }
  return at(last, second.length);
}

function at(row: readonly number[], column: number): number {
  return row[column] ?? Number.POSITIVE_INFINITY;
}

/**
 * The candidates nearest to a name, best first, at most `max`; ties keep the order given.
 * A candidate that shares too little with the name (more than a third of its letters, and one more, are wrong) is left out.
 * Names longer than 64 letters have no near ones: the work grows with the product of the lengths.
 * @example nearest('c07', ['C-07', 'C-08', 'KB']) // ['C-07', 'C-08']
 */
export function nearest(name: string, candidates: readonly string[], max = 3): string[] {
  const longest = 64;
  if (name.length > longest) return [];
  const wanted = folded(name);
  const limit = 1 + Math.floor(wanted.length / 3);
  return candidates
    .filter((candidate) => candidate.length <= longest)
    .map((candidate, order) => ({ candidate, order, distance: editDistance(wanted, folded(candidate)) }))
    .filter((each) => each.distance <= limit)
    .sort((a, b) => a.distance - b.distance || a.order - b.order)
    .slice(0, max)
    .map((each) => each.candidate);
}
