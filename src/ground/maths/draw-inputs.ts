// Inputs drawn by chance: each of its shape, those that go together by the root of their correlations.
import type { Chance } from './chance.ts';
import { correlationMatrix, correlationRoot } from './correlation-root.ts';
import { type Correlation, type Doubted, mustBeDoubted } from './doubted.ts';
import { expm1 } from './exponential.ts';
import { log } from './logarithm.ts';
import type { Matrix } from './matrix.ts';

const HALF_WIDTH_RECTANGULAR = Math.sqrt(3);
const HALF_WIDTH_TRIANGULAR = Math.sqrt(6);

/** Writes the next draw of every input into `x`. */
export type DrawInto<Name extends string> = (x: Record<Name, number>) => void;

/**
 * A source of draws of these inputs.
 * @throws RangeError if an input is not as it should be, correlations contradict each other, or one that goes together with
 *   another is not normal: for other shapes a correlation does not say how they go together
 * @source jcgm-101, 6.4
 */
export function inputDraws<Name extends string>(
  told: {
    readonly inputs: Readonly<Record<Name, Doubted>>;
    readonly correlations?: readonly Correlation<Name>[];
  },
  chance: Chance,
): DrawInto<Name> {
  const { inputs, correlations = [] } = told;
  const names = Object.keys(inputs) as Name[];
  for (const name of names) mustBeDoubted(name, inputs[name]);
  const tied = new Set(correlations.filter(({ r }) => r !== 0).flatMap(({ of }) => of));
  const free = names.filter((name) => !tied.has(name));
  const together = names.filter((name) => tied.has(name));
  const crooked = together.find((name) => (inputs[name].shape ?? 'normal') !== 'normal');
  if (crooked !== undefined)
    throw new RangeError(`${crooked} goes together with another input: only normal ones are drawn so`);
  const root = correlationRoot(correlationMatrix(names, correlations));
  const draws = free.map((name) => drawOf(inputs[name], chance));
  const normals = new Float64Array(together.length);
  const rows = together.map((name) =>
    rowOf(
      root,
      names.indexOf(name),
      together.map((other) => names.indexOf(other)),
    ),
  );
  return (x) => {
    for (let at = 0; at < free.length; at += 1) x[free[at] as Name] = (draws[at] as () => number)();
    for (let at = 0; at < together.length; at += 1) normals[at] = chance.normal();
    for (let at = 0; at < together.length; at += 1) {
      const row = rows[at] as Float64Array;
      let z = 0;
      for (let k = 0; k <= at; k += 1) z += (row[k] as number) * (normals[k] as number);
      const name = together[at] as Name;
      x[name] = inputs[name].value + inputs[name].u * z;
    }
  };
}

function rowOf({ columns, values }: Matrix, row: number, of: readonly number[]): Float64Array {
  return Float64Array.from(of, (column) => values[row * columns + column] as number);
}

function drawOf({ value, u, degrees, shape = 'normal' }: Doubted, chance: Chance): () => number {
  if (u === 0) return () => value;
  switch (shape) {
    case 'normal':
      return () => value + u * chance.normal();
    case 'student':
      return () => value + u * studentDraw(degrees as number, chance);
    case 'rectangular':
      return () => value + u * HALF_WIDTH_RECTANGULAR * (2 * chance.uniform() - 1);
    case 'triangular':
      return () => value + u * HALF_WIDTH_TRIANGULAR * (chance.uniform() + chance.uniform() - 1);
  }
}

/** A t of so many degrees, by the polar method: a point in the unit circle, w from its middle, gives x √(ν (w^(−2/ν) − 1)/w). @source bailey-1994 */
function studentDraw(degrees: number, chance: Chance): number {
  for (;;) {
    const x = 2 * chance.uniform() - 1;
    const y = 2 * chance.uniform() - 1;
    const w = x * x + y * y;
    if (w >= 1 || w === 0) continue;
    return x * Math.sqrt((degrees * expm1((-2 / degrees) * log(w))) / w);
  }
}
