// The biocide of one store as a sheet: what is in the water, how fast it goes, until when it counts, and what would be dosed.
import {
  type BiocideState,
  biocideLimits,
  type Position,
  type Storage,
  type StorePosition,
  standingAge,
} from '../../account/index.ts';
import { type BiocideEnds, belowNow, biocideEnds } from '../../forecast/index.ts';
import { expm1 } from '../../ground/maths/index.ts';
import { dayOf, formatShortStamp, msPerDay } from '../../ground/units/index.ts';
import type { BiocideAge, BiocideDays, BiocideSheet, SheetFigure, StandingLine } from '../../papers/index.ts';
import { presentLevel } from './present-level.ts';
import { redoseOf } from './redose.ts';

const COVERAGE = 2;
const CM2_PER_M2 = 10_000;
const MM_PER_M = 1000;
/** Below the least as likely as this, it counts as below. */
const AS_GOOD_AS_BELOW = 0.5;

export function biocideSheet(
  position: Position,
  store: StorePosition,
  from: {
    readonly state: BiocideState | null;
    readonly storage: Storage;
    readonly refOf: (id: string) => string;
  },
): BiocideSheet | null {
  const { state, storage, refOf } = from;
  // The rest of an emptied store is nobody's water.
  if (state === null || store.emptied) return null;
  const limits = biocideLimits(position.index, state.biocide, store.grade);
  const ends = endsOf(state, limits.leastMgPerL);
  const age = ageOf(position, state, limits.ageDays);
  const days = ends === null ? null : daysOf(position, ends);
  return {
    biocide: state.biocide,
    results: state.results.map(({ entry, atMs, valueMgPerL, below }) => ({
      ...{ ref: refOf(entry), id: entry, valueMgPerL, below },
      stamp: formatShortStamp(atMs, position.dayRule),
    })),
    ...levelOf(position, state),
    ...rateOf(state),
    leastMgPerL: limits.leastMgPerL,
    mostMgPerL: limits.mostMgPerL,
    ends: days,
    age,
    ...untilOf(state, { least: limits.leastMgPerL, days, age }),
    ...redoseOf(position, store, state),
    line: lineOf(position, store, { storage, mostDays: limits.ageDays }),
  };
}

function becauseOf({ results, areaPerVolumePerM }: BiocideState): SheetFigure['because'] {
  return {
    entries: results.map(({ entry }) => entry),
    method: 'biocide',
    inputs: [{ name: 'wall for the volume', value: areaPerVolumePerM, unit: '1/m' }],
  };
}

function levelOf(position: Position, state: BiocideState): Pick<BiocideSheet, 'level' | 'levelIs'> {
  const present = state.level === null ? null : presentLevel(position.index, state);
  if (present === null || present.is === 'below') return { level: null, levelIs: 'not known' };
  const because = becauseOf(state);
  return {
    level: { value: present.mgPerL, u95: COVERAGE * present.u, unit: 'mg/L', because },
    levelIs: present.is,
  };
}

type RateFields = 'rate' | 'wallLoss' | 'wall' | 'ratedBy' | 'ratedResults' | 'ratedStores' | 'noRate';

/** The wall's own doubt is no doubt of the rate in this very store: there the two always come together. */
function rateOf(state: BiocideState): Pick<BiocideSheet, RateFields> {
  const { rate, area, areaPerVolumePerM, noRate } = state;
  const because = becauseOf(state);
  const wall = {
    value: area.areaM2 * CM2_PER_M2,
    u95: COVERAGE * area.uM2 * CM2_PER_M2,
    unit: 'cm2',
    because: { ...because, entries: [] },
  };
  if (rate === null)
    return {
      rate: null,
      wallLoss: null,
      wall,
      ratedBy: 'not known',
      ratedResults: 0,
      ratedStores: 0,
      noRate,
    };
  const perDay = rate.metresPerDay * areaPerVolumePerM;
  const wallU = (rate.metresPerDay * area.uM2) / area.areaM2;
  return {
    rate: {
      value: -100 * expm1(-perDay),
      u95: COVERAGE * 100 * rate.u * areaPerVolumePerM * (1 + expm1(-perDay)),
      unit: '%/d',
      because,
    },
    wallLoss: {
      value: rate.metresPerDay * MM_PER_M,
      u95: COVERAGE * Math.sqrt(rate.u * rate.u + wallU * wallU) * MM_PER_M,
      unit: 'mm/d',
      because,
    },
    ...{ wall, ratedBy: rate.from, ratedResults: rate.results, ratedStores: rate.stores, noRate },
  };
}

function endsOf({ level, areaPerVolumePerM }: BiocideState, leastMgPerL: number | null): BiocideEnds | null {
  if (level === null || leastMgPerL === null || areaPerVolumePerM <= 0) return null;
  return biocideEnds(level, { leastMgPerL, areaPerVolumePerM });
}

function daysOf({ atMs, dayRule }: Position, { q05, q50, q95 }: BiocideEnds): BiocideDays {
  const day = (days: number | null) => (days === null ? null : dayOf(atMs + days * msPerDay, dayRule));
  return { q05: day(q05), q50: day(q50), q95: day(q95) };
}

function ageOf(position: Position, { since }: BiocideState, mostDays: number | null): BiocideAge | null {
  if (since === null) return null;
  const { days, untilMs, isOver } = standingAge({ sinceMs: since.atMs, atMs: position.atMs, mostDays });
  return {
    days,
    since: formatShortStamp(since.atMs, position.dayRule),
    by: since.by,
    mostDays,
    untilDay: untilMs === null ? null : dayOf(untilMs, position.dayRule),
    isOver,
  };
}

/** Whichever comes first. The early end of the forecast: later ones are for those who may be wrong. */
function untilOf(
  { level, results }: BiocideState,
  of: { readonly least: number | null; readonly days: BiocideDays | null; readonly age: BiocideAge | null },
): Pick<BiocideSheet, 'untilDay' | 'untilBy'> {
  const { least, days, age } = of;
  const last = results.at(-1);
  const isUnder = last?.below === true && least !== null && last.valueMgPerL <= least;
  if (isUnder || (level !== null && least !== null && belowNow(level, least) > AS_GOOD_AS_BELOW))
    return { untilDay: null, untilBy: 'below least' };
  const forecast = days?.q05 ?? null;
  const policy = age?.untilDay ?? null;
  if (forecast !== null && (policy === null || forecast <= policy))
    return { untilDay: forecast, untilBy: 'forecast' };
  return policy === null ? { untilDay: null, untilBy: 'not known' } : { untilDay: policy, untilBy: 'policy' };
}

function lineOf(
  position: Position,
  { port }: StorePosition,
  { storage, mostDays }: { readonly storage: Storage; readonly mostDays: number | null },
): StandingLine | null {
  if (port === null) return null;
  const flow = storage.lines.find(({ line, kind }) => kind === 'port' && line === port);
  const sinceMs = flow?.lastFlowMs ?? storage.openingMs;
  if (flow === undefined || sinceMs === null) return null;
  const { days, untilMs, isOver } = standingAge({ sinceMs, atMs: position.atMs, mostDays });
  const { lastFlowMs } = flow;
  return {
    line: port,
    lastFlow: lastFlowMs === null ? null : formatShortStamp(lastFlowMs, position.dayRule),
    days,
    untilDay: untilMs === null ? null : dayOf(untilMs, position.dayRule),
    isOver,
  };
}
