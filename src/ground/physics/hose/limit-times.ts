// When to look or to stop: the early end of a band for what can be too much, the late end for what runs empty.
import { stayAtLeastZero } from '../stay-within.ts';
import type { HoseCoefficient } from './hose-coefficient.ts';

export interface TimeBand {
  readonly earlySeconds: number;
  readonly seconds: number;
  readonly lateSeconds: number;
}

/** What would happen if the flow were stopped at the wrong time. */
export type PushDanger = 'over-fill' | 'over-pressure' | 'left behind';

/**
 * The band of the time that a push takes, 95 %: what is predicted, times what was learned of the hose, with the doubt of the
 * volume taken in.
 *
 * The band of the hose and that of the volume are independent and are joined in the logarithm, by squares.
 * @param push `predictedSeconds` with a factor of 1, above 0; `volumeUShare` one standard deviation of the volume over the
 * volume (room that is left, or content), 0 or more
 * @param hose what was learned
 * @returns s
 * @throws OutsideRange for a time that is not above 0 and a doubt below 0
 * @source gum (5.1.6, relative doubts of a product)
 * @example pushBand({ predictedSeconds: 954, volumeUShare: 0 }, hoseCoefficient([])).seconds // 954
 */
export function pushBand(
  push: { readonly predictedSeconds: number; readonly volumeUShare: number },
  hose: HoseCoefficient,
): TimeBand {
  const { predictedSeconds, volumeUShare } = push;
  stayAtLeastZero({ quantity: 'predicted time', value: predictedSeconds, unit: 's', source: 'gum' });
  stayAtLeastZero({
    quantity: 'doubt of the volume over the volume',
    value: volumeUShare,
    unit: '',
    source: 'gum',
  });
  const seconds = predictedSeconds * hose.factor;
  // 2 u of the volume, as ± is printed everywhere.
  const volume = 1 + 2 * volumeUShare;
  return {
    earlySeconds: seconds / joined(hose.factor / hose.nextRun.lowFactor, volume),
    seconds,
    lateSeconds: seconds * joined(hose.nextRun.highFactor / hose.factor, volume),
  };
}

/** The factor of two independent factors, each 95 %: √ of the squares of what they add. */
function joined(one: number, other: number): number {
  return 1 + Math.sqrt((one - 1) * (one - 1) + (other - 1) * (other - 1));
}

/**
 * The time that is printed as the limit of a push: the early end of its band where more would over-fill or over-pressurise,
 * the late end where stopping sooner would leave water behind in a store that is emptied.
 * @returns s
 * @source common practice: the safe end of a band
 * @example limitSeconds(band, 'over-fill') // band.earlySeconds
 */
export function limitSeconds(band: TimeBand, danger: PushDanger): number {
  return danger === 'left behind' ? band.lateSeconds : band.earlySeconds;
}
