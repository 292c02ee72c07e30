// Inputs drawn by chance: each of its shape, those that go together by the root of their correlations.
import type { Chance } from './chance.ts';
import { correlationMatrix, correlationRoot } from './correlation-root.ts';
import { type Correlation, type Doubted, mustBeDoubted } from './doubted.ts';
import { expm1 } from './exponential.ts';
import { log } from './logarithm.ts';
import type { Matrix } from './matrix.ts';

const HALF_WIDTH_RECTANGULAR = Math.sqrt(3);
const HALF_WIDTH_TRIANGULAR = Math.sqrt(6);

interface Told<Name extends string> {
  readonly inputs: Readonly<Record<Name, Doubted>>;
  readonly correlations?: readonly Correlation<Name>[];
}

/** The inputs as they were drawn last, and the next draw of them: it writes over what was there. */
export interface InputDraws<Name extends string> {
  readonly x: Readonly<Record<Name, number>>;
  readonly draw: () => void;
}

/**
 * A source of draws of these inputs.
 * @throws RangeError if an input is not as it should be, correlations contradict each other, or one that goes together with
 *   another is not normal: for other shapes a correlation does not say how they go together
 * @source jcgm-101, 6.4
 */
export function inputDraws<Name extends string>(told: Told<Name>, chance: Chance): InputDraws<Name> {
  const { inputs, correlations = [] } = told;
  const names = Object.keys(inputs) as Name[];
  for (const name of names) mustBeDoubted(name, inputs[name]);
  const tied = new Set(correlations.filter(({ r }) => r !== 0).flatMap(({ of }) => of));
  const free = names.filter((name) => !tied.has(name) && inputs[name].u > 0);
  const together = names.filter((name) => tied.has(name));
  const crooked = together.find((name) => (inputs[name].shape ?? 'normal') !== 'normal');
  if (crooked !== undefined)
    throw new RangeError(`${crooked} goes together with another input: only normal ones are drawn so`);
  const x = {} as Record<Name, number>;
  for (const name of names) x[name] = inputs[name].value;
  const draws = free.map((name) => drawOf(inputs[name], chance));
  const drawTogether = togetherDraws(told, { names, together }, chance);
  const draw = (): void => {
    for (let at = 0; at < free.length; at += 1) x[free[at] as Name] = (draws[at] as () => number)();
    drawTogether(x);
  };
  return { x, draw };
}

function togetherDraws<Name extends string>(
  { inputs, correlations = [] }: Told<Name>,
  { names, together }: { readonly names: readonly Name[]; readonly together: readonly Name[] },
  chance: Chance,
): (x: Record<Name, number>) => void {
  const root = correlationRoot(correlationMatrix(names, correlations));
  const places = together.map((name) => names.indexOf(name));
  const rows = places.map((place) => rowOf(root, place, places));
  const normals = new Float64Array(together.length);
  return (x) => {
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
