// How often chance alone draws so many marked things out of a heap: the upper tail of the hypergeometric distribution.

/** Up to here the sum is made in a moment; no outpost has more stores. */
const MOST = 1_000_000;

export interface Draw {
  /** Things in the heap, marked ones among them. */
  readonly total: number;
  readonly marked: number;
  /** Things drawn without putting any back. */
  readonly drawn: number;
}

/**
 * The probability that at least so many of the drawn things are marked: Σ C(K, x) C(N − K, n − x) / C(N, n) over x ≥ k.
 * It is Fisher's exact test of a table of two by two, one-sided.
 *
 * The terms are made from the largest one by the ratio of neighbours, so that none is too large for a number and what
 * vanishes was nothing beside the rest. Error: about as many units in the last place as there are terms.
 * @param draw whole numbers, marked and drawn at most the total, the total at most a million
 * @throws RangeError if a number is none of these: such a table says nothing
 * @source fisher-exact
 * @example atLeastDrawn({ total: 8, marked: 4, drawn: 4 }, 3) // 0.24285714285714285
 */
export function atLeastDrawn({ total, marked, drawn }: Draw, atLeast: number): number {
  const whole = [total, marked, drawn, atLeast].every((each) => Number.isInteger(each) && each >= 0);
  if (!whole || marked > total || drawn > total || total > MOST)
    throw new RangeError(`no such draw: ${drawn} of ${total} with ${marked} marked, at least ${atLeast}`);
  const low = Math.max(0, drawn + marked - total);
  const high = Math.min(drawn, marked);
  if (atLeast <= low) return 1;
  if (atLeast > high) return 0;
  const middle = Math.floor(((drawn + 1) * (marked + 1)) / (total + 2));
  const start = Math.min(high, Math.max(low, middle));
  const ratio = (x: number) => ((marked - x) * (drawn - x)) / ((x + 1) * (total - marked - drawn + x + 1));
  let [below, tail] = [0, 0];
  const add = (x: number, term: number) => {
    if (x >= atLeast) tail += term;
    else below += term;
  };
  for (let x = start, term = 1; x <= high && term > 0; term *= ratio(x), x += 1) add(x, term);
  for (let x = start - 1, term = 1; x >= low; x -= 1) {
    term /= ratio(x);
    if (term === 0) break;
    add(x, term);
  }
  return tail / (below + tail);
}
