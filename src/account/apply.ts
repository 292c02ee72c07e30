// Applying one entry to a fold. It never refuses: what does not fit is a finding.
import type { AnyEntry, Kind } from '../book/index.ts';
import { dayOf } from '../ground/units/index.ts';
import type { Fold } from './fold.ts';
import { noteEntry } from './note.ts';
import { post } from './post/index.ts';
import { endWaivers } from './quality/waivers.ts';
import { askAbout, askedAbout } from './questions/ask.ts';
import { isProposedCopy } from './questions/copies.ts';

/** Kinds that say how much water there is or was moved. */
const tellsOfStocks: ReadonlySet<Kind> = new Set([
  'day-line',
  'meter',
  'movement',
  'push',
  'run-pause',
  'run-finish',
  'source-change',
  'weigh',
  'gauge',
  'pvt',
  'declared-empty',
  'declared-full',
  'stock-count',
  'instrument-replaced',
]);

/** More of them than this are not named one by one. */
const MOST_BEFORE_OPENING = 200;

export function applyEntry(fold: Fold, entry: AnyEntry): void {
  fold.entries += 1;
  fold.lastEntryMs = entry.happenedAtMs;
  if (tellsOfStocks.has(entry.kind)) noteBeforeOpening(fold, entry);
  if (entry.late !== undefined) noteLate(fold, entry);
  if (isProposedCopy(fold, entry)) return;
  // A ledger alone has nothing to hold an entry against.
  if (fold.estimating) askAbout(fold, entry);
  if (entry.happenedAtMs >= fold.waiverEndsMs) endWaiversOf(fold, entry.happenedAtMs);
  post(fold, entry);
  askedAbout(fold);
}

function noteBeforeOpening(fold: Fold, entry: AnyEntry): void {
  const { openingMs, beforeOpening } = fold;
  if (openingMs === null && beforeOpening.length < MOST_BEFORE_OPENING)
    fold.beforeOpening = [...beforeOpening, entry];
  if (openingMs === null || entry.happenedAtMs >= openingMs) return;
  noteEntry(fold, entry, { code: 'before-opening', severity: 'act-today', data: { openingMs } });
}

function endWaiversOf(fold: Fold, nowMs: number): void {
  for (const state of fold.stores.values()) endWaivers(state, nowMs);
  const ends = [...fold.stores.values()].flatMap(({ waived }) => waived.map(({ untilMs }) => untilMs));
  fold.waiverEndsMs = Math.min(Number.POSITIVE_INFINITY, ...ends);
}

/** An entry that came after its day was closed: the paper stands, the past is believed anew. */
function noteLate(fold: Fold, entry: AnyEntry): void {
  if (entry.kind === 'day-close' || entry.late === undefined) return;
  const day = dayOf(entry.happenedAtMs, fold.dayRule);
  noteEntry(fold, entry, { code: 'late-in-closed-day', severity: 'know', data: { day, late: entry.late } });
}
