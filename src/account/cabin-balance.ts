// Readings that close the balances of the cabin air and of the people: the humidity, and that people stay as wet as they are.
import type { AnyEntry, CounterReading } from '../book/index.ts';
import { exp } from '../ground/maths/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import type { Instrument, Route } from '../outpost/index.ts';
import { airReading } from './air-reading.ts';
import { type Fold, MG_PER_KG } from './fold.ts';
import type { SharedError } from './gauge-doubt.ts';
import { noteEntry } from './note.ts';
import { CABIN_AIR, givesTo, PEOPLE, takesFrom } from './people-and-air.ts';
import { readState } from './read-state.ts';

/**
 * Once at each day line, when everything that flows into and out of them has been counted.
 * @param read instruments whose counters were read at this line
 */
export function closeCabinBalances(
  fold: Fold,
  entry: AnyEntry,
  line: { readings: readonly CounterReading[]; read: ReadonlySet<string>; peopleAboard: number },
): void {
  if (!fold.estimating) return;
  const isWhole = (touches: (instrument: Instrument) => boolean) =>
    fold.index.outpost.instruments.every(
      (instrument) => !touches(instrument) || line.read.has(instrument.id),
    );
  const air = fold.pools.get(CABIN_AIR);
  if (air !== undefined && isWhole((instrument) => touchesPool(instrument, CABIN_AIR)))
    readAir(fold, entry, { air, readings: line.readings });
  const people = fold.pools.get(PEOPLE);
  if (people !== undefined && isWhole((instrument) => touchesPool(instrument, PEOPLE)))
    readPeople(fold, entry, { people, peopleAboard: line.peopleAboard });
}

function touchesPool(instrument: Instrument & { readonly route?: Route }, pool: string): boolean {
  return takesFrom(instrument, pool) || givesTo(instrument, pool);
}

/** What the air carries, by its humidity and temperature. */
function readAir(
  fold: Fold,
  entry: AnyEntry,
  { air, readings }: { air: number; readings: readonly CounterReading[] },
): void {
  const read = airReading(fold.index, readings);
  if (read === null) return;
  const outcome = readState(fold, entry, {
    place: air,
    shared: [
      ...offsetOf(fold, read.humidity, read.perPercentKg),
      ...offsetOf(fold, read.temperature, read.perDegreeKg),
    ],
    valueKg: read.massKg,
    uKg: read.uKg,
    recordOf: read.humidity.id,
  });
  if (!outcome.isFarOff) return;
  const data = {
    offMg: Math.round(outcome.innovation * MG_PER_KG),
    u95Mg: Math.round(2 * Math.sqrt(outcome.variance) * MG_PER_KG),
    mgPerL: fold.mgPerL,
    percent: read.percent,
  };
  noteEntry(fold, entry, { code: 'air-does-not-close', severity: 'act-today', field: CABIN_AIR, data });
}

function offsetOf(fold: Fold, { id, calibration }: Instrument, weight: number): SharedError[] {
  const u = calibration?.absolute ?? 0;
  return u === 0 ? [] : [{ place: fold.error('gauge', id, u).place, weight }];
}

/** How the balance of what people drink and give off is called in the records. */
export const BODY_WATER = 'body water';

/** What one person carries above or below the normal, one standard deviation; and how long it takes to come back. Ours, no source. */
const BODY_WATER_U_KG = 0.36;
const BODY_WATER_DAYS = 3;
/** The balance itself: what is drunk and given off at the moment of the line. Ours, no source. */
const BODY_BALANCE_U_KG = 0.05;

/** People are as wet as they always are, give or take: what is above or below comes back within days. */
function readPeople(
  fold: Fold,
  entry: AnyEntry,
  { people, peopleAboard }: { people: number; peopleAboard: number },
): void {
  const normalU = BODY_WATER_U_KG * Math.sqrt(Math.max(1, peopleAboard));
  const body = fold.error('body water', PEOPLE, normalU);
  const days = (entry.happenedAtMs - (fold.lastLineMs ?? entry.happenedAtMs)) / msPerDay;
  const left = days > 0 ? exp(-days / BODY_WATER_DAYS) : 1;
  fold.estimator.fade(body.place, left, normalU * normalU * (1 - left * left));
  readState(fold, entry, {
    place: people,
    shared: [{ place: body.place, weight: -1 }],
    valueKg: 0,
    uKg: BODY_BALANCE_U_KG,
    recordOf: BODY_WATER,
  });
}
