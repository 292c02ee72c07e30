// Since I last looked: entries, corrections, holds, late entries, and what is believed otherwise of a moment that is past.
import type { Position } from '../account/index.ts';
import { type AnyEntry, amendmentsOf, entryOf, isAmendmentKind } from '../book/index.ts';
import { formatShortStamp } from '../ground/units/index.ts';
import type { SinceSheet } from '../papers/index.ts';
import { type Answer, yes } from './answer.ts';
import { bookLine } from './book-line.ts';
import { type Desk, type Moment, positionAt } from './desk.ts';
import { volumeFigure } from './figures.ts';
import { headOf, openFindings, wordOf } from './today.ts';

/** Lines that are shown; the counts speak of all. */
const MOST_LINES = 12;

export async function since(desk: Desk, sinceMs: number, moment: Moment): Promise<Answer<SinceSheet>> {
  const now = await positionAt(desk, { kind: 'now' }, moment);
  if (!now.ok) return now;
  const then = await positionAt(desk, { kind: 'as known at', ms: sinceMs }, moment);
  if (!then.ok) return then;
  // The same moment, by what is known now: what differs there was told anew, not moved since.
  const thenByNow = await positionAt(desk, { kind: 'as of', ms: sinceMs }, moment);
  if (!thenByNow.ok) return thenByNow;
  const position = now.value;
  const entries = await enteredSince(desk, sinceMs);
  const amendments = await amendmentsOf(desk.port, {});
  const context = {
    dayRule: position.dayRule,
    mgPerL: position.mgPerL,
    instruments: position.index.instruments,
    amendments,
  };
  const known = new Set(openFindings(then.value).map(keyOf));
  return yes({
    head: headOf(desk, { kind: 'now' }, position),
    since: formatShortStamp(sinceMs, position.dayRule),
    entries: entries.length,
    corrections: entries.filter((entry) => isAmendmentKind(entry.kind)).length,
    late: entries.filter((entry) => entry.happenedAtMs <= sinceMs && entry.kind !== 'outpost').length,
    heldSince: heldIn(position).filter((store) => !heldIn(then.value).includes(store)),
    freedSince: heldIn(then.value).filter((store) => !heldIn(position).includes(store)),
    moved: toldAnew(then.value, thenByNow.value),
    newFindings: openFindings(position)
      .filter((finding) => !known.has(keyOf(finding)))
      .map((finding) => wordOf(position, finding)),
    lines: entries.slice(-MOST_LINES).map((entry) => bookLine(entry, context)),
  });
}

/** When an office entered something last: where its reader left off. Without an entry of it, the beginning of the book. */
export async function lastEnteredMs(desk: Desk, office: string): Promise<Answer<number>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  let last = fold.openingMs ?? 0;
  for (const { site, number: youngest } of await desk.port.heads()) {
    for (let number = youngest; number > 0; number--) {
      const row = await desk.port.findNumber(site, number);
      if (row === null || entryOf(row).by !== office || row.kind === 'outpost') continue;
      last = Math.max(last, row.enteredAtMs);
      break;
    }
  }
  return yes(last);
}

async function enteredSince(desk: Desk, sinceMs: number): Promise<AnyEntry[]> {
  const entries: AnyEntry[] = [];
  for await (const rows of desk.port.scan({ order: 'total' })) {
    for (const row of rows)
      if (row.enteredAtMs > sinceMs && row.kind !== 'outpost') entries.push(entryOf(row));
  }
  return entries;
}

function keyOf(finding: Position['findings'][number]): string {
  return `${finding.code} ${finding.where.store ?? ''} ${finding.entries.join(' ')}`;
}

function heldIn(position: Position): readonly string[] {
  return position.stores.filter((store) => store.hold !== null).map((store) => store.facts.id);
}

/** Stores of which the same moment is believed otherwise now, by more than the ± of then. */
function toldAnew(then: Position, byNow: Position): SinceSheet['moved'] {
  return byNow.stores.flatMap((store) => {
    const old = then.stores.find((other) => other.facts.id === store.facts.id);
    if (old === undefined || Math.abs(store.massMg - old.massMg) <= 2 * old.uMg) return [];
    const because = (entries: readonly string[]) => ({ entries, method: 'estimator', inputs: [] });
    return [
      {
        store: store.facts.id,
        before: volumeFigure(then, old, because(old.because)),
        after: volumeFigure(byNow, store, because(store.because)),
      },
    ];
  });
}
