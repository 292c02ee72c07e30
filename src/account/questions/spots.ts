// Readings of the cabin in a day line: temperature, humidity and pressure, held against what they were here before.
import type { Entry } from '../../book/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import type { Fold } from '../fold.ts';
import { learn, spreadOf } from './habits.ts';
import { askFigure } from './question.ts';

/** A reading may be so far from usual in its own unit. Ours, no source: a fault of the condenser (8 %) and a warm day stay inside. */
const SLACK: ReadonlyMap<string, number> = new Map([
  ['temperature', 6],
  ['humidity', 25],
  ['pressure', 2],
]);
/** So many of the outpost's own standard deviations are usual. Ours, no source. */
const SPREADS = 8;

export function askSpots(fold: Fold, entry: Entry<'day-line'>): void {
  for (const { instrument: id, value } of entry.body.readings) {
    const instrument = fold.index.instruments.get(id);
    const slack = SLACK.get(instrument?.measures ?? '');
    if (value === null || instrument === undefined || slack === undefined) continue;
    askSpot(fold, entry, { instrument, value, slack });
  }
}

function askSpot(
  fold: Fold,
  entry: Entry<'day-line'>,
  { instrument, value, slack }: { instrument: Instrument; value: number; slack: number },
): void {
  const { spots, lastSpot } = fold.habits;
  const usual = usualOf(fold, entry, instrument);
  const last = lastSpot.get(instrument.id);
  lastSpot.set(instrument.id, value);
  const isAlike = last !== undefined && Math.abs(value - last) <= slack / 2;
  if (usual === null || isAlike || Math.abs(value - usual.mean) <= Math.max(slack, SPREADS * usual.sd)) {
    // A planned window is not learned from: it ends.
    if (usual?.planned !== true) learn(spots, instrument.id, value);
    return;
  }
  const low = usual.mean - slack;
  const high = usual.mean + slack;
  const isNear = (other: number) => other >= low && other <= high;
  const sign = isNear(-value) ? { value: -value, slip: 'sign' as const } : null;
  const moved = [0.1, 10, 0.01, 100].map((factor) => value * factor).find(isNear);
  const fit = sign ?? (moved === undefined ? null : { value: moved, slip: 'point' as const });
  askFigure(fold, entry, {
    ...{ code: 'reading-implausible', of: instrument.name, field: instrument.id, against: 'cabin' },
    ...{ value, unit: instrument.unit, low, high, fit },
  });
}

/** What is usual: a planned window of pressure, else what was learned, else what the outpost file says of the cabin. */
function usualOf(
  fold: Fold,
  entry: Entry<'day-line'>,
  { id, measures, pressureIs }: Instrument,
): { mean: number; sd: number; planned?: boolean } | null {
  const { cabinWindow } = fold.habits;
  if (measures === 'pressure' && pressureIs === 'overCabin') return null;
  if (measures === 'pressure' && cabinWindow !== null && entry.happenedAtMs <= cabinWindow.untilMs)
    return { mean: cabinWindow.duringKPa, sd: 0, planned: true };
  const learned = spreadOf(fold.habits.spots.get(id));
  if (learned !== null && learned.count >= 3) return learned;
  const { cabinTemperatureC, cabinPressureAbsoluteKPa } = fold.index.outpost.outpost;
  const told =
    measures === 'temperature'
      ? cabinTemperatureC
      : measures === 'pressure'
        ? cabinPressureAbsoluteKPa
        : undefined;
  return told === undefined ? null : { mean: told, sd: 0 };
}
