// Best values within walls by brute force: every store free, on its lower wall or on its upper one, and the best of all that hold.
import type { Matrix } from '../../src/ground/maths/index.ts';
import { made, solver } from './dense.ts';

/** A store and its walls, as the account has them. */
interface Walls {
  readonly place: number;
  readonly lowKg: number;
  readonly highKg: number;
}

export interface Free {
  readonly mean: Float64Array;
  readonly covariance: Matrix;
}

export interface Best {
  readonly values: Float64Array;
  /** (x − x̂)ᵀ P⁻¹ (x − x̂). */
  readonly cost: number;
  readonly pinned: readonly number[];
}

/** Of 3ⁿ assignments the one of least cost whose values are all within their walls. */
export function bestOfAll(free: Free, walls: readonly Walls[]): Best {
  let best: Best | null = null;
  for (let code = 0; code < 3 ** walls.length; code += 1) {
    const candidate = pinnedAt(free, walls, code);
    const holds = walls.every(({ place, lowKg, highKg }) => {
      const value = candidate.values[place]!;
      return value >= lowKg - 1e-9 && value <= highKg + 1e-9;
    });
    if (holds && (best === null || candidate.cost < best.cost)) best = candidate;
  }
  if (best === null) throw new Error('no values are within all walls');
  return best;
}

/** x = x̂ + P E (Eᵀ P E)⁻¹ (w − Eᵀ x̂) for the stores that the code pins. */
function pinnedAt({ mean, covariance }: Free, walls: readonly Walls[], code: number): Best {
  const pins = walls.flatMap(({ place, lowKg, highKg }, at) => {
    const side = Math.floor(code / 3 ** at) % 3;
    return side === 0 ? [] : [{ place, value: side === 1 ? lowKg : highKg }];
  });
  if (pins.length === 0) return { values: mean, cost: 0, pinned: [] };
  const order = mean.length;
  const element = (row: number, column: number): number => covariance.values[row * order + column]!;
  const among = made(pins.length, pins.length, (row, column) =>
    element(pins[row]!.place, pins[column]!.place),
  );
  const off = Float64Array.from(pins, ({ place, value }) => value - mean[place]!);
  const multipliers = solver(among)(off);
  const values = mean.map((value, row) =>
    pins.reduce((sum, { place }, at) => sum + element(row, place) * multipliers[at]!, value),
  );
  const cost = off.reduce((sum, each, at) => sum + each * multipliers[at]!, 0);
  return { values, cost, pinned: pins.map(({ place }) => place) };
}
