// Lines of a table held against each other and against the book: one line a day, counters that only rise.
import type { Fold } from '../../account/index.ts';

import { amendmentsOf } from '../../book/index.ts';
import { dayOf } from '../../ground/units/index.ts';
import type { Desk } from '../desk.ts';
import { dayOfRow } from './read-table.ts';
import type { RowReading } from './row-reading.ts';

/** Days whose line the book has, with how people name it. */
export async function keptDays(desk: Desk, { dayRule }: Fold): Promise<ReadonlyMap<number, string>> {
  const { undone } = await amendmentsOf(desk.port, {});
  const days = new Map<number, string>();
  for await (const rows of desk.port.scan({ order: 'total', kinds: ['day-line'] })) {
    for (const row of rows)
      if (!undone.has(row.id)) days.set(dayOf(row.happenedAtMs, dayRule), `${row.site} ${row.number}`);
  }
  return days;
}

/** A second line for a day is asked about; of two in one table neither is taken. */
export function checkDays(readings: readonly RowReading[], kept: ReadonlyMap<number, string>): void {
  const first = new Map<number, RowReading>();
  for (const reading of readings) {
    const day = dayOfRow(reading);
    if (day === null) continue;
    const ref = kept.get(day);
    const other = first.get(day);
    if (ref !== undefined) reading.say('row-day-kept', -1, { day, ref, line: null });
    else if (other !== undefined) {
      reading.say('row-day-kept', -1, { day, ref: null, line: other.row.line });
      if (other.faults.length === 0)
        other.say('row-day-kept', -1, { day, ref: null, line: reading.row.line });
    } else first.set(day, reading);
  }
}

/** A counter that falls was misread, or is another one; the line waits, and the next one is held against the one before it. */
export function checkCounters(readings: readonly RowReading[], fold: Fold): void {
  const last = new Map<string, number>();
  const ordered = readings
    .filter(({ requests, faults }) => requests[0]?.request.what === 'day' && faults.length === 0)
    .sort((a, b) => (a.requests[0]?.happened.utcMs ?? 0) - (b.requests[0]?.happened.utcMs ?? 0));
  for (const reading of ordered) checkCounter(reading, last, fold);
}

function checkCounter(reading: RowReading, last: Map<string, number>, fold: Fold): void {
  const [first] = reading.requests;
  if (first?.request.what !== 'day') return;
  for (const [id, text] of Object.entries(first.request.readings)) {
    const instrument = fold.index.instruments.get(id);
    if (text === '-' || instrument?.reading !== 'runningTotal') continue;
    const isNewer = fold.lastLineMs === null || first.happened.utcMs > fold.lastLineMs;
    const before = last.get(id) ?? (isNewer ? (fold.counters.get(id)?.last ?? null) : null);
    const value = reading.sheet.columns.findIndex(
      ({ meaning }) => meaning?.means.what === 'instrument' && meaning.means.id === id,
    );
    const read = numberIn(text);
    if (before !== null && read !== null && isFall(read - before, instrument.rollsOverAt)) {
      reading.say('cell-below-last', value, {
        received: text,
        instrument: instrument.name,
        value: read,
        last: before,
      });
    } else if (read !== null) last.set(id, read);
  }
}

/** A counter that rolls over falls once in a while; one that would have gone round by more than half has not. */
function isFall(step: number, rollsOverAt: number | undefined): boolean {
  return step < 0 && (rollsOverAt === undefined || step + rollsOverAt > rollsOverAt / 2);
}

/** It was spelled by us from a number. */
function numberIn(text: string): number | null {
  const value: unknown = JSON.parse(text);
  return typeof value === 'number' ? value : null;
}
