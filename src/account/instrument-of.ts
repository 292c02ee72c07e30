// Which instrument an entry's amount was read on, and what doubt that brings.
import type { Amount } from '../book/index.ts';
import type { Instrument } from '../outpost/index.ts';
import type { Fold } from './fold.ts';
import { randomUMg } from './interval.ts';

/** The instrument by its name, or by the word for the method and the hose that it sits on. */
export function instrumentOf(
  fold: Fold,
  by: {
    readonly instrument?: string | undefined;
    readonly method?: string | undefined;
    readonly hose?: string | undefined;
  },
): Instrument | undefined {
  if (by.instrument !== undefined) return fold.index.instruments.get(by.instrument);
  if (by.method === undefined) return undefined;
  const { hose, method } = by;
  let anywhere: Instrument | undefined;
  for (const instrument of fold.index.outpost.instruments) {
    if (instrument.logMethod !== method) continue;
    if (hose !== undefined && instrument.onHoses.includes(hose)) return instrument;
    if (instrument.onHoses.length === 0) anywhere ??= instrument;
  }
  return anywhere;
}

/** Where nothing is told of an amount's doubt: five parts in a hundred, one standard deviation. Ours, no source. */
const UNTOLD_RELATIVE_U = 0.05;

/** Doubt of a moved amount: what the entry declares stands; else the instrument's random part and its calibration. */
export function doubtOf(
  fold: Fold,
  amount: Amount,
  instrument: Instrument | undefined,
): { uMg: number; calibration: number } {
  if (amount.uMg !== undefined) return { uMg: amount.uMg, calibration: -1 };
  if (instrument === undefined)
    return { uMg: Math.round(amount.massMg * UNTOLD_RELATIVE_U), calibration: -1 };
  return { uMg: randomUMg(fold, instrument, amount.massMg), calibration: fold.calibrationOf(instrument) };
}
