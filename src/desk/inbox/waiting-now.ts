// What Today says of the inbox: how many lines wait, unless each of them is said already.
import type { Position } from '../../account/index.ts';
import { dayOf, type Finding, msPerDay } from '../../ground/units/index.ts';
import type { WordedFinding } from '../../papers/index.ts';
import type { Desk, Sight } from '../desk.ts';
import { inboxFinding } from './inbox-finding.ts';
import { waitingLines } from './waiting.ts';

/** A line that nobody has looked at for so long is asked about louder. */
const PATIENCE_MS = 2 * msPerDay;

/**
 * Findings of Today with the inbox beside them: a note whose unit was settled is said no more, and lines that wait are one line.
 * @param shown what Today would say without the inbox
 */
export async function withInbox(
  desk: Pick<Desk, 'port'>,
  seen: { readonly sight: Sight; readonly position: Position; readonly shown: readonly WordedFinding[] },
): Promise<{ readonly shown: readonly WordedFinding[]; readonly waiting: Finding | null }> {
  const { sight, position } = seen;
  const until = sight.kind === 'as known at' ? sight.ms : Number.POSITIVE_INFINITY;
  const { lines, settled } = await waitingLines(desk);
  const isSettled = (id: string) => {
    const by = settled.get(id);
    return by !== undefined && by.enteredAtMs <= until;
  };
  const shown = seen.shown.filter(
    ({ code, where }) => code !== 'unit-doubt' || !isSettled(where.entry ?? ''),
  );
  const told = new Set(shown.filter(({ code }) => code === 'unit-doubt').map(({ where }) => where.entry));
  const notes = position.findings.filter(
    ({ code, where }) => code === 'unit-doubt' && !told.has(where.entry) && !isSettled(where.entry ?? ''),
  );
  const open = lines.filter(({ id, enteredAtMs }) => enteredAtMs <= until && !isSettled(id));
  const since = [...open.map(({ enteredAtMs }) => enteredAtMs), ...notes.map(({ atMs }) => atMs)];
  if (since.length === 0) return { shown, waiting: null };
  const oldestMs = since.reduce((oldest, ms) => Math.min(oldest, ms));
  const severity = position.atMs - oldestMs > PATIENCE_MS ? 'act-today' : 'know';
  const data = { lines: since.length, oldestDay: dayOf(oldestMs, position.dayRule) };
  return { shown, waiting: inboxFinding('lines-waiting', data, {}, severity) };
}
