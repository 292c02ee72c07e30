// The ± of results: each input is moved by one standard deviation to both sides, and half of the difference is its part.
import { OutsideRange } from '../../ground/physics/index.ts';
import type { Reckoned, Result } from './calculator.ts';
import type { Inputs } from './inputs.ts';

/** What the doubt of one input does to one result. */
export interface DoubtPart {
  /** Place of the input among all. */
  readonly index: number;
  /** Signed: the change of the result by one standard deviation of the input. */
  readonly part: number;
}

export interface Doubt {
  /** One standard deviation; null where no input has a doubt that bears on it. */
  readonly u: number | null;
  readonly parts: readonly DoubtPart[];
}

/**
 * The combined standard uncertainty of every result, inputs independent of one another:
 * u² = Σ ((f(xᵢ + uᵢ) − f(xᵢ − uᵢ)) / 2)². At the end of a range, where one side has no value, the other side counts whole.
 * @source gum (5.1.2 and the note to 5.1.3)
 */
export function doubtsOf(
  inputs: Inputs,
  run: (inputs: Inputs) => Reckoned,
  results: readonly Result[],
): readonly Doubt[] {
  const parts: DoubtPart[][] = results.map(() => []);
  inputs.all.forEach(({ value, u }, index) => {
    if (u === null || u === 0) return;
    const above = tried(run, inputs.changed(index, value + u));
    const below = tried(run, inputs.changed(index, value - u));
    results.forEach((result, k) => {
      const [high, low] = [resultIn(above, result), resultIn(below, result)];
      const part =
        high !== null && low !== null
          ? (high - low) / 2
          : high !== null
            ? high - result.value
            : low !== null
              ? result.value - low
              : 0;
      if (part !== 0) parts[k]?.push({ index, part });
    });
  });
  return parts.map((own, k) =>
    results[k]?.exact === true || own.length === 0
      ? { u: null, parts: [] }
      : { u: Math.sqrt(own.reduce((sum, { part }) => sum + part * part, 0)), parts: own },
  );
}

/** Null where the step leaves the range of a formula. */
function tried(run: (inputs: Inputs) => Reckoned, inputs: Inputs): Reckoned | null {
  try {
    return run(inputs);
  } catch (error) {
    if (error instanceof OutsideRange) return null;
    throw error;
  }
}

function resultIn(reckoned: Reckoned | null, { name }: Result): number | null {
  return reckoned?.results.find((result) => result.name === name)?.value ?? null;
}
