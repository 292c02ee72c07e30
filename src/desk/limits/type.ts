// Typing the figure of a row that is off, from somebody's own copy of the rule; what it would hold is shown first.
import type { Entry } from '../../book/index.ts';
import { nearest, parseNumber } from '../../ground/units/index.ts';
import {
  basisUnlessSaid,
  LIMIT_UNITS,
  type LimitRow,
  type LimitSet,
  switchedOn,
} from '../../outpost/index.ts';
import type { LimitTypedSheet } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment, NamedText } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Context } from '../log/context.ts';
import { log } from '../log/log.ts';
import { makeDraft } from '../log/make.ts';
import type { RequestWith } from '../log/request.ts';
import { askedOf, asQuestion } from './ask.ts';
import { changeBy, effectOf } from './effect.ts';
import { findSet, knownSets } from './known-sets.ts';
import { limitLine } from './limit-lines.ts';

export interface TypedRow {
  readonly set: string;
  readonly row: string;
  /** With the unit, as it stands in the copy: `0.4mg/L`. */
  readonly atLeast?: string;
  readonly atMost?: string;
  /** What the figure is told as, such as `as N`; the only one that the parameter has unless given. */
  readonly basis?: string;
  /** Title, edition, page. */
  readonly copy: string;
  readonly files?: readonly NamedText[];
}

type Body = Entry<'limit-typed'>['body'];

/** Puts a row into force where its set is chosen, or with `dryRun` shows what that would do. */
export async function typeLimit(
  desk: Desk,
  moment: Moment,
  typed: TypedRow,
  more: RequestWith = {},
): Promise<Answer<LimitTypedSheet>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const known = await knownSets(desk, fold, typed.files);
  if (!known.ok) return known;
  const found = findSet(known.value, typed.set);
  if (!found.ok) return found;
  const { set } = found.value;
  const row = rowNamed(set, typed.row);
  if (!row.ok) return row;
  const body = bodyOf(set, row.value, typed);
  if (!body.ok) return body;
  const presentMs = desk.enteringMs(fold, moment);
  const on = switchedOn(row.value, { ...body.value, by: moment.by, atMs: presentMs });
  if (!on.ok) return no('bad input', ...on.findings);
  const context: Context = { desk, fold, moment, presentMs };
  return keepTyped(context, { set, row: on.row, body: body.value }, more);
}

async function keepTyped(
  context: Context,
  { set, row, body }: { readonly set: LimitSet; readonly row: LimitRow; readonly body: Body },
  more: RequestWith,
): Promise<Answer<LimitTypedSheet>> {
  const { desk, moment, fold } = context;
  const request = { what: 'kind', kind: 'limit-typed', body } as const;
  const draft = await makeDraft(context, request, more);
  if (!draft.ok) return draft;
  const chosen = fold.limits.sets.find((one) => one.set === set.id);
  const bears = chosen?.rows.some(({ id }) => id === row.id) ?? false;
  const effect = bears ? effectOf(await changeBy(context, draft.value)) : null;
  const tried = await log(desk, moment, request, { ...more, dryRun: true });
  if (!tried.ok) return tried;
  if (effect !== null && effect.holds.length > 0 && more.sure !== true && more.dryRun !== true)
    return no('ask first', asQuestion(askedOf([row.id], effect)));
  const kept = more.dryRun === true ? tried : await log(desk, moment, request, more);
  if (!kept.ok) return kept;
  const { line, kept: isKept, findings } = kept.value;
  return yes({
    kept: isKept,
    ref: isKept ? line.ref : null,
    id: isKept ? line.id : null,
    ...{ happened: line.happened, by: line.by, copy: body.copy, set: set.id, setName: set.name },
    ...{ row: limitLine(row), effect, findings },
  });
}

function rowNamed(set: LimitSet, typed: string): Answer<LimitRow> {
  const bare = (name: string) => name.toLowerCase().replace(/[^a-z0-9]/g, '');
  const row = set.rows.find(({ id }) => id === typed) ?? set.rows.find(({ id }) => bare(id) === bare(typed));
  if (row !== undefined) return yes(row);
  const near = nearest(
    typed,
    set.rows.map(({ id }) => id),
  );
  const data = { what: 'row', name: typed.slice(0, 80), nearest: near };
  return no('not in book', deskFinding('not-in-book', data, { where: { field: 'row' } }));
}

/** Both sides are told in one unit, as a rule has them. */
function bodyOf(set: LimitSet, row: LimitRow, typed: TypedRow): Answer<Body> {
  const least = typed.atLeast === undefined ? null : readFigure(typed.atLeast, 'at-least', row);
  if (least?.ok === false) return least;
  const most = typed.atMost === undefined ? null : readFigure(typed.atMost, 'at-most', row);
  if (most?.ok === false) return most;
  const [first = null] = [least, most].filter((each) => each !== null);
  const unit = first?.value.unit ?? row.unit;
  if (least !== null && most !== null && least.value.unit !== most.value.unit)
    return no('bad input', figureNeeded('at-most', `${typed.atMost}`, `a figure in ${least.value.unit}`));
  const basis = typed.basis ?? basisUnlessSaid(row.parameter);
  if (basis === undefined)
    return no('bad input', figureNeeded('basis', null, `${row.basis}, or as your copy has it`));
  return yes({
    ...{ set: set.id, row: row.id, unit, basis, copy: typed.copy.trim() },
    ...(least !== null && { atLeast: least.value.value }),
    ...(most !== null && { atMost: most.value.value }),
  });
}

function readFigure(text: string, field: string, row: LimitRow): Answer<{ value: number; unit: string }> {
  const told = text.trim();
  // The longest one: `ug/L` ends like `g/L`.
  const [found] = LIMIT_UNITS.flatMap((unit) => writtenAs(unit).map((form) => ({ unit, form })))
    .filter(({ form }) => told.endsWith(form))
    .sort((a, b) => b.form.length - a.form.length);
  if (found === undefined)
    return no('bad input', figureNeeded(field, told, `a figure with its unit, as 0.5${row.unit}`));
  const { unit, form } = found;
  const read = parseNumber(told.slice(0, told.length - form.length), { where: { field } });
  return read.ok ? yes({ value: read.value, unit }) : no('bad input', read.finding);
}

/** `µg/L` is typed `ug/L` where a keyboard has no such sign; a count may be told without its space. */
function writtenAs(unit: string): readonly string[] {
  const plain = unit.replace('µ', 'u');
  return [...new Set([unit, unit.replace('µ', 'μ'), plain, unit.replace(' ', ''), plain.replace(' ', '')])];
}

function figureNeeded(field: string, received: string | null, expected: string) {
  const data = { field, received: received?.slice(0, 40) ?? null, expected };
  return deskFinding('field-needed', data, { where: { field } });
}
