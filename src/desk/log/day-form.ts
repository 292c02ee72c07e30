// The form of the day line: each meter with its last value and the range that is expected.
import { type AnyEntry, amend, amendmentsOf, entryOf } from '../../book/index.ts';
import { dayLineUtcMs, dayOf, msPerDay } from '../../ground/units/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import { type Answer, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { dayInstruments } from './day-body.ts';

export interface DayFormItem {
  readonly instrument: string;
  readonly name: string;
  readonly unit: string;
  /** The last value in a day line, or where a running total stood at the opening. */
  readonly last: number | null;
  /** Nine in ten days here fall inside; null without five lines to go by. */
  readonly low: number | null;
  readonly high: number | null;
  readonly resolution: number | null;
}

export interface DayForm {
  /** The day whose line comes next. */
  readonly day: number;
  readonly lineAtMs: number;
  readonly peopleAboard: number;
  readonly items: readonly DayFormItem[];
}

/** Lines that the range is learned from. */
const LOOK_BACK_DAYS = 21;
const FEWEST_LINES = 5;
/** Standard deviations either side of the mean: 90 % of a normal distribution. */
const RANGE_SD = 1.645;

export async function dayForm(desk: Desk, moment: Moment): Promise<Answer<DayForm>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const presentMs = desk.presentMs(fold, moment);
  const lines = await recentLines(desk, fold.lastEntryMs ?? presentMs);
  const lastDay =
    fold.lastLineMs === null ? dayOf(presentMs, fold.dayRule) - 1 : dayOf(fold.lastLineMs, fold.dayRule);
  const day = Math.max(
    lastDay + 1,
    desk.info.purpose === 'practice' ? lastDay + 1 : dayOf(presentMs, fold.dayRule),
  );
  const items = dayInstruments(fold.index.outpost.instruments).map((instrument) =>
    itemOf(instrument, lines, fold.counters.get(instrument.id)?.last ?? null),
  );
  return yes({ day, lineAtMs: dayLineUtcMs(day, fold.dayRule), peopleAboard: fold.peopleAboard, items });
}

/** Lines as they count: what was undone is no last value, what was corrected is the corrected one. */
async function recentLines(desk: Desk, untilMs: number): Promise<AnyEntry[]> {
  const lines: AnyEntry[] = [];
  const amendments = await amendmentsOf(desk.port, {});
  const after = { happenedAtMs: untilMs - LOOK_BACK_DAYS * msPerDay, site: '', number: 0 };
  for await (const rows of desk.port.scan({ order: 'total', kinds: ['day-line'], after }))
    lines.push(...rows.flatMap((row) => amend(entryOf(row), amendments) ?? []));
  return lines;
}

function itemOf(instrument: Instrument, lines: readonly AnyEntry[], counterLast: number | null): DayFormItem {
  const values = lines.flatMap((line) => {
    if (line.kind !== 'day-line') return [];
    const reading = line.body.readings.find((one) => one.instrument === instrument.id);
    return reading?.value == null ? [] : [reading.value];
  });
  const running = instrument.reading === 'runningTotal';
  const last = values.at(-1) ?? (running ? counterLast : null);
  const range = rangeOf(running ? steps(values, instrument.rollsOverAt ?? null) : values);
  const base = running ? (last ?? 0) : 0;
  const wrap = (value: number) =>
    instrument.rollsOverAt !== undefined && value >= instrument.rollsOverAt
      ? value - instrument.rollsOverAt
      : value;
  return {
    instrument: instrument.id,
    name: instrument.name,
    unit: instrument.unit,
    last,
    low: range === null ? null : wrap(base + range.low),
    high: range === null ? null : wrap(base + range.high),
    resolution: instrument.resolution ?? null,
  };
}

function steps(values: readonly number[], rollsOverAt: number | null): number[] {
  return values.slice(1).map((value, k) => {
    const step = value - (values[k] ?? value);
    return step < 0 && rollsOverAt !== null ? step + rollsOverAt : step;
  });
}

function rangeOf(values: readonly number[]): { low: number; high: number } | null {
  if (values.length < FEWEST_LINES) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance =
    values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0) / (values.length - 1);
  const half = RANGE_SD * Math.sqrt(variance);
  return { low: Math.max(0, mean - half), high: mean + half };
}
