// Today: how much, where, fit for what, until when, what needs somebody.
import {
  freeStock,
  notFreeBecause,
  type Position,
  reserveStock,
  type StorePosition,
} from '../account/index.ts';
import { type Cover, type CoverQuantiles, coverOf } from '../forecast/index.ts';
import {
  dayOf,
  type Finding,
  formatIsoUtc,
  formatStamp,
  msPerDay,
  roundCoverDays,
} from '../ground/units/index.ts';
import type {
  CoverFigure,
  SheetHead,
  StoreLine,
  StoreMark,
  SumLine,
  TodaySheet,
  WordedFinding,
} from '../papers/index.ts';
import { wordFinding } from '../papers/index.ts';
import { type Answer, yes } from './answer.ts';
import { atRatesFigures } from './at-rates.ts';
import { coveredGrades } from './covered-grades.ts';
import { type Desk, type Moment, positionAt, type Sight } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import { massFigure, volumeFigure } from './figures.ts';
import { withInbox } from './inbox/waiting-now.ts';
import { gravity, openFindings } from './open-findings.ts';
import { bestReadings } from './worth.ts';

export async function today(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<TodaySheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const sheet = todaySheet(desk, sight, seen.value);
  const { shown, waiting } = await withInbox(desk, { sight, position: seen.value, shown: sheet.findings });
  const all = waiting === null ? shown : [...shown, wordFinding(waiting, { dayRule: seen.value.dayRule })];
  return yes({ ...sheet, findings: [...all].sort((a, b) => gravity[a.severity] - gravity[b.severity]) });
}

export function todaySheet(desk: Desk, sight: Sight, position: Position): TodaySheet {
  const cover = coverFigures(position);
  const worded = [...coverOut(cover), ...openFindings(position)].map((finding) => wordOf(position, finding));
  const all = position.stores.map((store) => store.facts.id);
  const because = {
    entries: [],
    method: 'stock-sum',
    inputs: [{ name: 'stores', value: all.length, unit: '' }],
  };
  return {
    head: headOf(desk, sight, position),
    silence: worded.find((finding) => finding.code === 'no-reading') ?? null,
    cover,
    reserve: reserveLine(position),
    stores: position.stores.map((store) => storeLine(position, store)),
    sums: sumLines(position),
    total: volumeFigure(position, position.sumOf(all), because),
    readings: bestReadings(position),
    closureMg: position.closureMg,
    findings: worded.filter((finding) => finding.code !== 'no-reading'),
    visits: visitsAhead(position),
  };
}

/** The next one first. Who stayed past the day of departure is here, and leaves on no day that is known. */
function visitsAhead({ visits, atMs, dayRule }: Position): TodaySheet['visits'] {
  const day = dayOf(atMs, dayRule);
  const nextOf = ({ aboard, berthDay, departDay }: TodaySheet['visits'][number]) =>
    aboard ? (departDay ?? day) : berthDay;
  return visits
    .map((visit) => ({ ...visit, departDay: (visit.departDay ?? day) < day ? null : visit.departDay }))
    .filter(({ aboard, berthDay }) => aboard || berthDay >= day)
    .sort((a, b) => nextOf(a) - nextOf(b));
}

/** A headline that reads no days is the first thing that needs somebody. */
function coverOut(cover: Readonly<Record<string, CoverFigure>>): readonly Finding[] {
  return Object.entries(cover).flatMap(([grade, { q05, q50, basis, free }]) => {
    if (basis === 'not enough data' || q05 === null || roundCoverDays(q05) !== '0.0') return [];
    const data = { grade, q50: q50 ?? 0, freeL: free.value, u95L: free.u95 };
    return [deskFinding('cover-out', data, { severity: 'act-now' })];
  });
}

export function headOf(desk: Desk, sight: Sight, position: Position): SheetHead {
  return {
    outpost: position.index.outpost.outpost.name,
    practice: desk.info.purpose === 'practice',
    stamp: formatStamp(position.atMs, position.dayRule),
    day: dayOf(position.atMs, position.dayRule),
    at: formatIsoUtc(position.atMs),
    view: sight.kind,
    closedToDay: position.closedDays.length === 0 ? null : Math.max(...position.closedDays),
    peopleAboard: position.peopleAboard,
    entries: position.entries,
  };
}

export function wordOf(position: Pick<Position, 'dayRule'>, finding: Finding): WordedFinding {
  return wordFinding(finding, { dayRule: position.dayRule });
}

function coverFigures(position: Position): Record<string, CoverFigure> {
  return Object.fromEntries(
    coveredGrades(position).map((grade) => [grade, coverFigure(position, coverOf(position, grade))]),
  );
}

export function coverFigure(position: Position, cover: Cover): CoverFigure {
  const { free, use } = cover;
  const stock = {
    entries: free.because,
    method: 'free-stock',
    inputs: [{ name: 'stores', value: free.stores.join(', '), unit: '' }],
  };
  const rate =
    use === null || cover.useMgPerDay === null || cover.useUMgPerDay === null
      ? null
      : volumeFigure(
          position,
          { massMg: cover.useMgPerDay, uMg: cover.useUMgPerDay },
          {
            entries: use.entries,
            method: use.basis === 'learned' ? 'daily-use' : 'norm-use',
            inputs: [
              { name: 'days', value: use.days, unit: 'd' },
              { name: 'people', value: position.peopleAboard, unit: '' },
              { name: 'memory', value: use.memory, unit: '' },
            ],
          },
        );
  return {
    q05: cover.q05,
    q50: cover.q50,
    q95: cover.q95,
    unit: 'd',
    basis: use === null ? 'not enough data' : use.basis,
    free: volumeFigure(position, free, stock),
    use: rate === null ? null : { ...rate, unit: 'L/d' },
    outDayQ05: outDay(position, cover.q05),
    outDayQ50: outDay(position, cover.q50),
    toFloor: cover.toFloor === null ? null : quantilesOf(cover.toFloor),
    atRates: atRatesFigures(position, cover.grade),
    because: {
      entries: [...new Set([...free.because, ...(use?.entries ?? [])])],
      method: 'cover',
      inputs: [
        { name: 'free', value: free.massMg / position.mgPerL, unit: 'L' },
        {
          name: 'use',
          value: cover.useMgPerDay === null ? null : cover.useMgPerDay / position.mgPerL,
          unit: 'L/d',
        },
      ],
    },
  };
}

function quantilesOf({ q05, q50, q95 }: CoverQuantiles): CoverQuantiles {
  return { q05, q50, q95 };
}

function outDay(position: Position, days: number | null): number | null {
  return days === null ? null : dayOf(position.atMs + days * msPerDay, position.dayRule);
}

function reserveLine(position: Position): TodaySheet['reserve'] {
  const reserve = reserveStock(position);
  if (reserve.stores.length === 0) return null;
  const because = {
    entries: reserve.because,
    method: 'stock-sum',
    inputs: [{ name: 'stores', value: reserve.stores.join(', '), unit: '' }],
  };
  return {
    volume: volumeFigure(position, reserve, because),
    floorL: reserve.floorMg / position.mgPerL,
    capacityL: capacityOf(position, reserve.stores) / position.mgPerL,
    conditionalL: reserve.conditionalMg / position.mgPerL,
  };
}

function capacityOf({ stores }: Position, ids: readonly string[]): number {
  const members = stores.filter(({ facts }) => ids.includes(facts.id));
  return members.reduce((sum, { facts }) => sum + facts.capacityMg, 0);
}

export function storeLine(position: Position, store: StorePosition): StoreLine {
  const { facts } = store;
  const because = {
    entries: store.because,
    method: 'estimator',
    inputs: [{ name: 'how known', value: store.howKnown, unit: '' }],
  };
  return {
    id: facts.id,
    name: facts.name,
    kind: facts.kind,
    place: facts.place,
    grade: store.grade,
    emptied: store.emptied,
    held: store.hold !== null,
    conditional: store.conditional !== null,
    reserve: facts.reserve,
    mark: markOf(position, store),
    port: store.port,
    mass: massFigure(store, because),
    volume: volumeFigure(position, store, because),
    band: { low: store.lowMg / position.mgPerL, high: store.highMg / position.mgPerL, unit: 'L' },
    capacityL: facts.capacityMg / position.mgPerL,
    howKnown: store.howKnown,
    standing: store.standing,
    age: store.ageMs === null ? null : store.ageMs / 3_600_000,
  };
}

function markOf(position: Position, store: StorePosition): StoreMark {
  if (store.hold !== null) return 'HOLD';
  if (store.conditional !== null) return 'CONDITIONAL';
  if (store.waived.length > 0) return 'WAIVED';
  const why = notFreeBecause(position, store);
  if (why === 'not released' || why === 'release over' || why === 'no limit set') return 'NOT RELEASED';
  return store.emptied ? 'EMPTY' : '';
}

/** Parts that add up to everything aboard: free by grade, the reserve, held, conditional, other grades, remainders. */
function sumLines(position: Position): SumLine[] {
  const groups = new Map<string, string[]>();
  const free = new Map(
    coveredGrades(position).map((grade) => [grade, new Set(freeStock(position, grade).stores)]),
  );
  for (const store of position.stores) {
    const name = sumName(store, free);
    groups.set(name, [...(groups.get(name) ?? []), store.facts.id]);
  }
  return [...groups].map(([name, stores]) => {
    const because = {
      entries: [],
      method: 'stock-sum',
      inputs: [{ name: 'stores', value: stores.join(', '), unit: '' }],
    };
    return { name, volume: volumeFigure(position, position.sumOf(stores), because) };
  });
}

function sumName(store: StorePosition, free: ReadonlyMap<string, ReadonlySet<string>>): string {
  if (store.hold !== null) return 'held';
  if (store.facts.reserve) return 'reserve';
  for (const [grade, stores] of free) if (stores.has(store.facts.id)) return grade;
  if (store.emptied) return 'in emptied stores';
  return store.grade ?? 'grade unknown';
}
