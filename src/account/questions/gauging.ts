// A gauging by gas injection, worked out again from its raw readings: the keeper's own sum and the readings must agree.
import type { Entry } from '../../book/index.ts';
import { gasVolumeByInjectionM3, OutsideRange } from '../../ground/physics/index.ts';
import type { Fold } from '../fold.ts';
import { fittingReading } from './fitting.ts';
import { askFigure } from './question.ts';

/** 0 °C in kelvin. */
const ZERO_C_K = 273.15;
/** The sum may be off by this: readings are written down rounded. Ours, no source. */
const SLACK_L = 3;

/**
 * Litres of water by the readings: the tank's volume less the gas that the injection found, each gas at its own temperature.
 * @returns whether nothing spoke against it
 */
export function askRawGauging(fold: Fold, entry: Entry<'pvt'>): boolean {
  const { body } = entry;
  const value = body.amount.massMg / fold.mgPerL;
  const byReadingsL = litresByReadings(body);
  const low = byReadingsL - SLACK_L;
  const high = byReadingsL + SLACK_L;
  if (value >= low && value <= high) return true;
  const fit = fittingReading(
    value,
    { kgPerL: fold.mgPerL / 1_000_000 },
    (other) => other >= low && other <= high,
  );
  const isPossible = Number.isFinite(byReadingsL) && byReadingsL >= 0 && byReadingsL <= body.tankVolumeL;
  askFigure(fold, entry, {
    ...{ code: 'reading-implausible', of: 'content', value, unit: 'L', fit, against: 'raw readings' },
    ...{ low: isPossible ? low : 0, high: isPossible ? high : 0, name: body.store, store: body.store },
  });
  return false;
}

/** NaN where the readings are none of an injection: the pressure fell, or a figure is beyond what any gas here has. */
function litresByReadings(body: Entry<'pvt'>['body']): number {
  try {
    const gasM3 = gasVolumeByInjectionM3({
      bottleM3: body.bottleVolumeL / 1000,
      bottleBeforePa: body.bottleBeforeKPaAbs * 1000,
      bottleAfterPa: body.bottleAfterKPaAbs * 1000,
      bottleBeforeK: body.bottleBeforeC + ZERO_C_K,
      bottleAfterK: body.bottleAfterC + ZERO_C_K,
      tankBeforePa: body.tankBeforeKPaAbs * 1000,
      tankAfterPa: body.tankAfterKPaAbs * 1000,
      tankBeforeK: body.tankBeforeC + ZERO_C_K,
      tankAfterK: body.tankAfterC + ZERO_C_K,
    });
    return body.tankVolumeL - gasM3 * 1000;
  } catch (error) {
    if (error instanceof OutsideRange) return Number.NaN;
    throw error;
  }
}
