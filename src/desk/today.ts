// Today: how much, where, fit for what, until when, what needs somebody.
import {
  type AccountFinding,
  freeStock,
  notFreeBecause,
  type Position,
  reserveStock,
  type StorePosition,
} from '../account/index.ts';
import { type Cover, type CoverQuantiles, coverOf } from '../forecast/index.ts';
import { dayOf, type Finding, formatIsoUtc, formatStamp, msPerDay } from '../ground/units/index.ts';
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
import { massFigure, volumeFigure } from './figures.ts';
import { withInbox } from './inbox/waiting-now.ts';
import { bestReadings } from './worth.ts';

/** A finding about an entry is shown for this long; one about a state as long as the state lasts. */
const SHOWN_MS = 7 * msPerDay;
/** These wait for a decision, however old they are. */
const WAITING: ReadonlySet<string> = new Set(['duplicate-proposed', 'copy-proposed']);

export async function today(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<TodaySheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const sheet = todaySheet(desk, sight, seen.value);
  const { shown, waiting } = await withInbox(desk, { sight, position: seen.value, shown: sheet.findings });
  const all = waiting === null ? shown : [...shown, wordFinding(waiting, { dayRule: seen.value.dayRule })];
  return yes({ ...sheet, findings: [...all].sort((a, b) => gravity[a.severity] - gravity[b.severity]) });
}

export function todaySheet(desk: Desk, sight: Sight, position: Position): TodaySheet {
  const worded = openFindings(position).map((finding) => wordOf(position, finding));
  const all = position.stores.map((store) => store.facts.id);
  const because = {
    entries: [],
    method: 'stock-sum',
    inputs: [{ name: 'stores', value: all.length, unit: '' }],
  };
  return {
    head: headOf(desk, sight, position),
    silence: worded.find((finding) => finding.code === 'no-reading') ?? null,
    cover: coverFigures(position),
    reserve: reserveLine(position),
    stores: position.stores.map((store) => storeLine(position, store)),
    sums: sumLines(position),
    total: volumeFigure(position, position.sumOf(all), because),
    readings: bestReadings(position),
    closureMg: position.closureMg,
    findings: worded.filter((finding) => finding.code !== 'no-reading'),
    visits: position.visits.filter(
      (visit) => visit.aboard || visit.berthDay >= dayOf(position.atMs, position.dayRule),
    ),
  };
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

const gravity = { error: 0, 'act-now': 1, 'act-today': 2, know: 3 } as const;

/** What is still open, the gravest first, the youngest first among equals. */
export function openFindings(position: Position): readonly AccountFinding[] {
  return position.findings
    .filter((finding) => WAITING.has(finding.code) || position.atMs - finding.atMs <= SHOWN_MS)
    .sort((a, b) => gravity[a.severity] - gravity[b.severity] || b.atMs - a.atMs);
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
  const why = notFreeBecause(position, store);
  if (why === 'not released') return 'NOT RELEASED';
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
