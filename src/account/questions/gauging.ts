// A gauging by gas injection, worked out again from its raw readings: the keeper's own sum and the readings must agree.
import type { Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { fittingReading } from './fitting.ts';
import { askFigure } from './question.ts';

/** 0 °C in kelvin. */
const ZERO_C_K = 273.15;
/** The sum may be off by this: readings are written down rounded. Ours, no source. */
const SLACK_L = 3;

/**
 * Volume of gas V = V_bottle (p_b1/T_b1 − p_b2/T_b2) / (p_t2/T_t2 − p_t1/T_t1), each gas at its own temperature; litres of water
 * are the tank's volume less that. @source balance of an ideal gas over bottle and tank; see docs/methods/account.md
 * @returns whether nothing spoke against it
 */
export function askRawGauging(fold: Fold, entry: Entry<'pvt'>): boolean {
  const { body } = entry;
  const molar = (pressureKPa: number, temperatureC: number) => pressureKPa / (temperatureC + ZERO_C_K);
  const gave =
    molar(body.bottleBeforeKPaAbs, body.bottleBeforeC) - molar(body.bottleAfterKPaAbs, body.bottleAfterC);
  const got = molar(body.tankAfterKPaAbs, body.tankAfterC) - molar(body.tankBeforeKPaAbs, body.tankBeforeC);
  const value = body.amount.massMg / fold.mgPerL;
  const byReadingsL = body.tankVolumeL - (body.bottleVolumeL * gave) / got;
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
