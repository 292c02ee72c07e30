// Where a reading command looks: now, as known at an instant, or as of one.
import type { Desk, Moment, Sight } from '../../desk/index.ts';
import { parseWhen } from '../../ground/units/index.ts';
import type { Call } from './call.ts';
import { EXIT } from './exit-code.ts';
import { CliProblem, orStop } from './problem.ts';

export async function sightOf(call: Call, desk: Desk, moment: Moment): Promise<Sight> {
  call.holdApart('at', 'as-of');
  const at = call.text('at');
  if (at !== undefined)
    return { kind: 'as known at', ms: await readTime(desk, moment, { text: at, flag: 'at' }) };
  const asOf = call.text('as-of');
  if (asOf !== undefined)
    return { kind: 'as of', ms: await readTime(desk, moment, { text: asOf, flag: 'as-of' }) };
  return { kind: 'now' };
}

function beforeBook(ms: number, openingMs: number): CliProblem {
  const data = { happenedAtMs: ms, openingMs };
  const finding = { code: 'before-book', severity: 'error', where: {}, data, entries: [] } as const;
  return new CliProblem(EXIT.badInput, [finding]);
}

/** A time that was typed behind a flag, not before the book began. */
export async function readTime(
  desk: Desk,
  moment: Moment,
  typed: { readonly text: string; readonly flag: string },
): Promise<number> {
  const { fold } = orStop(await desk.account());
  const read = parseWhen(typed.text, {
    nowUtcMs: desk.presentMs(fold, moment),
    offsetMin: moment.offsetMin,
    rule: fold.dayRule,
    where: { field: `--${typed.flag}` },
  });
  if (!read.ok) throw new CliProblem(EXIT.badInput, [read.finding]);
  const { utcMs } = read.instant;
  if (fold.openingMs !== null && utcMs < fold.openingMs) throw beforeBook(utcMs, fold.openingMs);
  return utcMs;
}
