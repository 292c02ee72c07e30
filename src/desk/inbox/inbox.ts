// The inbox: what waits, one line whole, and dropping a line with its reason.
import type { Fold } from '../../account/index.ts';
import type { DroppedSheet, InboxLine, InboxSheet } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { findEntry } from '../log/context.ts';
import { inboxFinding } from './inbox-finding.ts';
import { inboxLines } from './line-of-inbox.ts';
import { settledDraft } from './waiting.ts';

/** What waits, the oldest first; with `all` also what was settled. */
export async function inboxList(
  desk: Desk,
  asked: { readonly all?: boolean } = {},
): Promise<Answer<InboxSheet>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const lines = await inboxLines(desk, opened.value.fold);
  const settled = lines.filter((line) => line.settled !== null);
  return yes({
    lines: asked.all === true ? lines : lines.filter((line) => line.settled === null),
    settled: settled.length,
  });
}

export async function inboxShow(desk: Desk, ref: string): Promise<Answer<InboxLine>> {
  const opened = await desk.account();
  return opened.ok ? lineOf(desk, opened.value.fold, ref) : opened;
}

/** A line by its number, by site and number, or by its id. */
export async function lineOf(desk: Desk, fold: Fold, ref: string): Promise<Answer<InboxLine>> {
  const found = await findEntry(desk, ref);
  if (!found.ok) return found;
  const line = (await inboxLines(desk, fold)).find(({ id }) => id === found.value.id);
  if (line !== undefined) return yes(line);
  return no('not in book', inboxFinding('line-not-waiting', { received: ref.slice(0, 60) }));
}

/** Only a line that still waits can be settled. */
export async function openLine(desk: Desk, fold: Fold, ref: string): Promise<Answer<InboxLine>> {
  const line = await lineOf(desk, fold, ref);
  if (!line.ok || line.value.settled === null) return line;
  const { how, ref: by } = line.value.settled;
  return no('bad input', inboxFinding('line-settled', { ref: line.value.ref, how, by }));
}

export async function inboxDrop(
  desk: Desk,
  moment: Moment,
  asked: { readonly ref: string; readonly reason: string; readonly dryRun?: boolean },
): Promise<Answer<DroppedSheet>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const line = await openLine(desk, fold, asked.ref);
  if (!line.ok) return line;
  const reason = asked.reason.trim();
  if (reason === '' || reason.length > 1000) {
    const data = {
      field: 'reason',
      received: reason === '' ? null : reason.slice(0, 60),
      expected: 'why it is dropped',
    };
    return no('bad input', deskFinding('field-needed', data, { where: { field: 'reason' } }));
  }
  if (asked.dryRun === true) return yes({ kept: false, line: line.value, reason });
  const presentMs = desk.enteringMs(fold, moment);
  const body = { line: line.value.id, how: 'dropped' as const, entries: [], reason };
  const kept = await desk.keep(
    [settledDraft(body, { id: desk.newId(presentMs), presentMs, moment })],
    moment,
  );
  return kept.ok ? yes({ kept: true, line: line.value, reason }) : kept;
}
