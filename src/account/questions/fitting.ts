// What a person may have meant by a number: the same digits with the point elsewhere, or the same amount in another unit.
import { convert } from '../../ground/units/index.ts';

export type Slip = 'point' | 'sign' | 'mL' | 'lb' | 'gal' | 'counts in litres' | 'counts in millilitres';

export interface Fit {
  readonly value: number;
  readonly slip: Slip;
}

interface Reading {
  readonly slip: Slip;
  readonly factor: number;
}

/** Points first: a finger that slips is more usual than a wrong unit. */
const points: readonly Reading[] = [0.1, 10, 0.01, 100].map((factor) => ({ slip: 'point', factor }));

const otherUnits = new Map<number, readonly Reading[]>();

/** Litres that stand behind a number which was meant in another unit. */
function litresBehind(kgPerL: number): readonly Reading[] {
  const known = otherUnits.get(kgPerL) ?? [
    { slip: 'mL', factor: 0.001 },
    { slip: 'lb', factor: convert(1, 'lb', 'kg') / kgPerL },
    { slip: 'gal', factor: convert(1, 'gal', 'L') },
  ];
  otherUnits.set(kgPerL, known);
  return known;
}

/** A counter's number may have been written as the water that it stands for. */
function countsBehind(litresPerCount: number): readonly Reading[] {
  return [
    { slip: 'counts in litres', factor: 1 / litresPerCount },
    { slip: 'counts in millilitres', factor: 0.001 / litresPerCount },
  ];
}

/**
 * The first reading of a number that fits, or null. It is a proposal and no more: nothing is ever changed to it.
 * @param of how the number counts: litres by density, or counts of so many litres
 */
export function fittingReading(
  value: number,
  of: { readonly kgPerL: number; readonly litresPerCount?: number | undefined },
  fits: (value: number) => boolean,
): Fit | null {
  const { litresPerCount } = of;
  const others = litresPerCount === undefined ? litresBehind(of.kgPerL) : countsBehind(litresPerCount);
  const found = [...points, ...others].find(({ factor }) => fits(value * factor));
  return found === undefined ? null : { value: value * found.factor, slip: found.slip };
}
