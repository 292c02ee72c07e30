// Where a reading request looks, from the words that a person typed: every door reads them alike.
import { parseWhen } from '../ground/units/index.ts';
import { type Answer, no, yes } from './answer.ts';
import type { Desk, Moment, Sight } from './desk.ts';
import { deskFinding } from './desk-finding.ts';

/** A time as it was typed, and the name of the field that it was typed into. */
export interface TypedTime {
  readonly text: string;
  readonly field: string;
}

/** Now, as known at a typed time, or as of one; a door holds apart that only one of the two is given. */
export async function readSight(
  desk: Desk,
  moment: Moment,
  typed: { readonly at?: TypedTime | undefined; readonly asOf?: TypedTime | undefined },
): Promise<Answer<Sight>> {
  const { at, asOf } = typed;
  const time = at ?? asOf;
  if (time === undefined) return yes({ kind: 'now' });
  const read = await readPastTime(desk, moment, time);
  return read.ok ? yes({ kind: at === undefined ? 'as of' : 'as known at', ms: read.value }) : read;
}

/** A time that the book can tell about: not before its beginning. */
export async function readPastTime(
  desk: Desk,
  moment: Moment,
  { text, field }: TypedTime,
): Promise<Answer<number>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const read = parseWhen(text, {
    nowUtcMs: desk.presentMs(fold, moment),
    offsetMin: moment.offsetMin,
    rule: fold.dayRule,
    where: { field },
  });
  if (!read.ok) return no('bad input', read.finding);
  const { utcMs } = read.instant;
  if (fold.openingMs === null || utcMs >= fold.openingMs) return yes(utcMs);
  return no('bad input', deskFinding('before-book', { happenedAtMs: utcMs, openingMs: fold.openingMs }));
}
