// The book as a count needs it: from the beginning of the sheet to the last reading.
import type { Position } from '../account/index.ts';
import { type Answer, no, yes } from './answer.ts';
import { type Desk, type Moment, positionAt } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import type { Context } from './log/context.ts';
import { knownOffice } from './log/log.ts';

export interface CountBook {
  readonly context: Context;
  readonly position: Position;
}

/** The account as a count sees it; nobody counts before there are stocks. */
export async function countBook(desk: Desk, moment: Moment): Promise<Answer<CountBook>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const stranger = knownOffice(fold, moment);
  if (stranger !== null) return stranger;
  if (fold.openingMs === null) return no('wrong use', deskFinding('book-not-begun', { what: 'opening' }));
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return seen;
  const context = { desk, fold, moment, presentMs: desk.enteringMs(fold, moment) };
  return yes({ context, position: seen.value });
}
