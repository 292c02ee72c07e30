// Whether a wall sweats: its temperature beside the dew point of the air.
import { OPEN_END } from '../outside-range.ts';
import { stayAtLeastZero, stayWithin } from '../stay-within.ts';

/** A wall may be this much colder than the dew point before it counts as wet, and as much warmer before it counts as dry. */
const MARGIN_K = 0.5;

/** `near`: within the margin of the dew point, where the readings of a cabin cannot tell the two apart. */
export type WallVerdict = 'sweats' | 'near' | 'dry';

export interface WallDew {
  readonly verdict: WallVerdict;
  /** By so much the wall is warmer than the dew point; below 0 it is colder. */
  readonly aboveDewPointK: number;
  readonly marginK: number;
}

/**
 * The rule for walls: condensation is to be expected where T_wall < T_dew − 0.5 K; up to 0.5 K above the dew point a wall is
 * too near to be called dry.
 * @param wall `wallC`, `dewPointC` °C · `marginK` K, from 0 on; absent: 0.5
 * @throws OutsideRange for NaN and for a margin below 0
 * @source wall-rule
 * @example wallDew({ wallC: 9, dewPointC: 11.1 }).aboveDewPointK // -2.1
 */
export function wallDew(wall: {
  readonly wallC: number;
  readonly dewPointC: number;
  readonly marginK?: number;
}): WallDew {
  const { wallC, dewPointC, marginK = MARGIN_K } = wall;
  const source = 'wall-rule';
  stayWithin({
    quantity: 'temperature of the wall',
    value: wallC,
    unit: '°C',
    low: -273.15,
    high: OPEN_END,
    source,
  });
  stayWithin({ quantity: 'dew point', value: dewPointC, unit: '°C', low: -273.15, high: OPEN_END, source });
  stayAtLeastZero({ quantity: 'margin of the wall', value: marginK, unit: 'K', source });
  const aboveDewPointK = wallC - dewPointC;
  const verdict = aboveDewPointK < -marginK ? 'sweats' : aboveDewPointK <= marginK ? 'near' : 'dry';
  return { verdict, aboveDewPointK, marginK };
}
