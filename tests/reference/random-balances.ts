// Random steady networks with a solution that closes, and measurements of it, from a seed.
import { type Chance, type Matrix, seededChance } from '../../src/ground/maths/index.ts';
import { made, spreadBy } from './dense.ts';
import type { Problem } from './reconcile.ts';

export interface Sample {
  readonly problem: Problem;
  readonly truth: Float64Array;
  readonly chance: Chance;
}

/** Streams between nodes and the outside; every node has streams of both directions. */
export function randomBalances(seed: number): Sample {
  const chance = seededChance({ seed });
  const nodes = 2 + chance.integerBelow(5);
  const streams = 2 * nodes + 1 + chance.integerBelow(6);
  const ends = Array.from({ length: streams }, (_, stream) => endsOf(chance, stream, nodes));
  const balances = made(nodes, streams, (node, stream) =>
    ends[stream]!.to === node ? 1 : ends[stream]!.from === node ? -1 : 0,
  );
  const raw = Float64Array.from({ length: streams }, () => 5 + 20 * chance.uniform());
  // What does not close in the truth leaves by the node's own outlet, stream 2 k + 1.
  const totals = Float64Array.from({ length: nodes }, (_, node) => 2 * chance.uniform() - 1 + node);
  const truth = closed(balances, raw, totals);
  const covariance = withCorrelations(chance, streams);
  const noise = correlatedNoise(chance, covariance);
  return {
    problem: { measured: truth.map((value, at) => value + noise[at]!), covariance, balances, totals },
    truth,
    chance,
  };
}

function endsOf(chance: Chance, stream: number, nodes: number): { from: number; to: number } {
  const node = Math.floor(stream / 2);
  if (node < nodes) return stream % 2 === 0 ? { from: node - 1, to: node } : { from: node, to: -1 };
  const from = chance.integerBelow(nodes);
  return { from, to: (from + 1 + chance.integerBelow(nodes - 1)) % nodes };
}

/** Sets the outlet of each node to what the others leave over. Outlets go outside, so that they touch no other node. */
function closed(balances: Matrix, raw: Float64Array, totals: Float64Array): Float64Array {
  const truth = raw.slice();
  for (let node = 0; node < balances.rows; node += 1) {
    const outlet = 2 * node + 1;
    let sum = 0;
    for (let stream = 0; stream < balances.columns; stream += 1) {
      if (stream !== outlet) sum += balances.values[node * balances.columns + stream]! * truth[stream]!;
    }
    truth[outlet] = sum - totals[node]!;
  }
  return truth;
}

/** L Lᵀ with a lower triangle of small random numbers: no two doubts are quite independent. */
function withCorrelations(chance: Chance, order: number): Matrix {
  const triangle = made(order, order, (row, column) => {
    if (column > row) return 0;
    return column === row ? 0.3 + chance.uniform() : 0.3 * (chance.uniform() - 0.5);
  });
  return spreadBy(
    triangle,
    made(order, order, (row, column) => (row === column ? 1 : 0)),
  );
}

/** Noise with a covariance, by its Cholesky factor written out. */
function correlatedNoise(chance: Chance, covariance: Matrix): Float64Array {
  const { rows: order, values } = covariance;
  const factor = made(order, order, () => 0);
  for (let row = 0; row < order; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let left = values[row * order + column]!;
      for (let k = 0; k < column; k += 1)
        left -= factor.values[row * order + k]! * factor.values[column * order + k]!;
      factor.values[row * order + column] =
        column === row ? Math.sqrt(left) : left / factor.values[column * order + column]!;
    }
  }
  const white = Float64Array.from({ length: order }, () => chance.normal());
  return Float64Array.from({ length: order }, (_, row) => {
    let sum = 0;
    for (let k = 0; k <= row; k += 1) sum += factor.values[row * order + k]! * white[k]!;
    return sum;
  });
}
