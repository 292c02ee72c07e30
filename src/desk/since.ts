// Since I last looked: entries, corrections, holds, late entries, and what is believed otherwise of a moment that is past.
import { Account, type Position, positionOf } from '../account/index.ts';
import { type AnyEntry, amendmentsOf, entryOf, isAmendmentKind } from '../book/index.ts';
import { formatShortStamp } from '../ground/units/index.ts';
import type { SinceSheet } from '../papers/index.ts';
import { type Answer, no, yes } from './answer.ts';
import { bookLine, refsIn } from './book-line.ts';
import { type BookHeads, bookUpTo } from './book-up-to.ts';
import { type Desk, type Moment, positionAt } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import { volumeFigure } from './figures.ts';
import { knownOffice } from './log/log.ts';
import { openFindings } from './open-findings.ts';
import { headOf, wordOf } from './today.ts';

/** Lines that are shown; the counts speak of all. */
const MOST_LINES = 12;

/** A look at a book: when it was, and, where somebody kept it, how far the book went then. */
export interface Look {
  readonly atMs: number;
  /** Without them what was entered by that instant counts as seen. */
  readonly heads?: BookHeads;
}

/** The look that happens now, of an office that the outpost has. */
export async function lookNow(desk: Desk, moment: Moment): Promise<Answer<Required<Look>>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const stranger = knownOffice(opened.value.fold, moment);
  if (stranger !== null) return stranger;
  const heads = await desk.port.heads();
  return yes({
    atMs: desk.presentMs(opened.value.fold, moment),
    heads: heads.map(({ site, number }) => ({ site, number })),
  });
}

export async function since(desk: Desk, look: Look, moment: Moment): Promise<Answer<SinceSheet>> {
  const sinceMs = look.atMs;
  const now = await positionAt(desk, { kind: 'now' }, moment);
  if (!now.ok) return now;
  if (sinceMs > now.value.atMs) {
    const data = { happenedAtMs: sinceMs, nowMs: now.value.atMs };
    return no('bad input', deskFinding('in-the-future', data, { where: { field: 'since' } }));
  }
  const entries = await enteredSince(desk, look);
  // Nothing came in: then is now, and two passes over the whole book can be spared.
  if (entries.length === 0) return yes({ ...nothingSince, ...headSince(desk, now.value, sinceMs) });
  const then = await positionThen(desk, look, moment);
  if (!then.ok) return then;
  // The same moment, by what is known now: what differs there was told anew, not moved since.
  const thenByNow = await positionAt(desk, { kind: 'as of', ms: sinceMs }, moment);
  if (!thenByNow.ok) return thenByNow;
  const position = now.value;
  const amendments = await amendmentsOf(desk.port, {});
  const context = {
    dayRule: position.dayRule,
    mgPerL: position.mgPerL,
    instruments: position.index.instruments,
    amendments,
    ...(await refsIn(desk.port, entries.slice(-MOST_LINES))),
  };
  const known = new Set(openFindings(then.value).map(keyOf));
  return yes({
    ...headSince(desk, position, sinceMs),
    entries: entries.length,
    corrections: entries.filter((entry) => isAmendmentKind(entry.kind)).length,
    late: entries.filter((entry) => entry.happenedAtMs < sinceMs).length,
    heldSince: heldIn(position).filter((store) => !heldIn(then.value).includes(store)),
    freedSince: heldIn(then.value).filter((store) => !heldIn(position).includes(store)),
    moved: toldAnew(then.value, thenByNow.value),
    newFindings: openFindings(position)
      .filter((finding) => !known.has(keyOf(finding)))
      .map((finding) => wordOf(position, finding)),
    lines: entries.slice(-MOST_LINES).map((entry) => bookLine(entry, context)),
  });
}

const nothingSince = {
  entries: 0,
  corrections: 0,
  late: 0,
  heldSince: [],
  freedSince: [],
  moved: [],
  newFindings: [],
  lines: [],
} as const;

function headSince(desk: Desk, position: Position, sinceMs: number): Pick<SinceSheet, 'head' | 'since'> {
  return {
    head: headOf(desk, { kind: 'now' }, position),
    since: formatShortStamp(sinceMs, position.dayRule),
  };
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

/** What was believed at that look. */
async function positionThen(desk: Desk, { atMs, heads }: Look, moment: Moment): Promise<Answer<Position>> {
  if (heads === undefined) return positionAt(desk, { kind: 'as known at', ms: atMs }, moment);
  const opened = await Account.open(bookUpTo(desk.port, heads), { view: { asOfMs: atMs } });
  if (!opened.ok) return positionAt(desk, { kind: 'as known at', ms: atMs }, moment);
  const { fold } = opened.account;
  return yes(positionOf(fold, Math.max(atMs, fold.lastEntryMs ?? atMs)));
}

async function enteredSince(desk: Desk, { atMs, heads }: Look): Promise<AnyEntry[]> {
  const entries: AnyEntry[] = [];
  const seen = heads === undefined ? null : new Map(heads.map(({ site, number }) => [site, number]));
  for await (const rows of desk.port.scan({ order: 'total' })) {
    for (const row of rows) {
      // Lines of another site may come in long after they were entered there: only the number tells that they are new.
      const isNew = seen === null ? row.enteredAtMs > atMs : row.number > (seen.get(row.site) ?? 0);
      if (isNew && row.kind !== 'outpost') entries.push(entryOf(row));
    }
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
