// Choosing sets of limits: what they would hold is shown first, and they bear on release only when somebody says so with a reason.
import type { LimitsInForce } from '../../account/index.ts';
import type { Body } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { chosenRows, type LimitRow, type LimitSet } from '../../outpost/index.ts';
import type { LimitsChosenSheet } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment, NamedText } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Context } from '../log/context.ts';
import { log } from '../log/log.ts';
import { makeDraft } from '../log/make.ts';
import type { RequestWith } from '../log/request.ts';
import { askedOf, asQuestion } from './ask.ts';
import { changeBy, effectOf } from './effect.ts';
import { findSet, type KnownSet, knownSets, setOfChosen } from './known-sets.ts';
import { exposureOf, setLines } from './limit-lines.ts';

export interface LimitsChoice {
  /** Names of sets; with own files and no name, the sets of those files. */
  readonly sets: readonly string[];
  /** Ids of the rows that are required of them; all that they require unless given. */
  readonly rows?: readonly string[];
  /** For how many days people will drink the water. */
  readonly exposureDays?: number;
  /** Instead of what is in force, and not beside it. */
  readonly only?: boolean;
  readonly reason?: string;
  readonly files?: readonly NamedText[];
}

type Chosen = Body<'limits-chosen'>;

/** Chooses, or with `dryRun` shows what a choice would do. */
export async function chooseLimits(
  desk: Desk,
  moment: Moment,
  choice: LimitsChoice,
  more: RequestWith = {},
): Promise<Answer<LimitsChosenSheet>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const context: Context = { desk, fold, moment, presentMs: desk.enteringMs(fold, moment) };
  const known = await knownSets(desk, fold, choice.files);
  if (!known.ok) return known;
  const asked = askedSets(known.value, choice);
  if (!asked.ok) return asked;
  const body = bodyOf(fold.limits, asked.value, choice);
  if (!body.ok) return body;
  return keepChoice(context, { body: body.value, asked: asked.value, choice }, more);
}

interface Choosing {
  readonly body: Chosen;
  readonly asked: readonly KnownSet[];
  readonly choice: LimitsChoice;
}

async function keepChoice(
  context: Context,
  { body, asked, choice }: Choosing,
  more: RequestWith,
): Promise<Answer<LimitsChosenSheet>> {
  const { desk, moment } = context;
  const request = { what: 'kind', kind: 'limits-chosen', body } as const;
  const draft = await makeDraft(context, request, more);
  if (!draft.ok) return draft;
  const effect = effectOf(await changeBy(context, draft.value));
  const tried = await log(desk, moment, request, { ...more, dryRun: true });
  if (!tried.ok) return tried;
  const reason = choice.reason?.trim() ?? '';
  if (more.dryRun !== true) {
    if (reason === '') return no('wrong use', reasonNeeded());
    if (more.sure !== true)
      return no(
        'ask first',
        asQuestion(
          askedOf(
            asked.map(({ set }) => set.name),
            effect,
          ),
        ),
      );
  }
  const kept = more.dryRun === true ? tried : await log(desk, moment, request, more);
  if (!kept.ok) return kept;
  const { line, kept: isKept, findings } = kept.value;
  const whatOf = new Map(asked.map(({ set }) => [set.id, set.what]));
  return yes({
    kept: isKept,
    ref: isKept ? line.ref : null,
    id: isKept ? line.id : null,
    ...{ happened: line.happened, by: line.by, reason: reason === '' ? null : reason },
    sets: (body.sets as LimitsInForce['sets']).map((set) =>
      setLines({ ...setOfChosen(set), what: whatOf.get(set.set) ?? '' }),
    ),
    asked: asked.map(({ set }) => set.id),
    beside: choice.only !== true,
    exposureDays: exposureOf(body.exposureDays),
    effect,
    findings,
  });
}

function reasonNeeded(): Finding {
  const data = { field: 'reason', received: null, expected: 'why these limits are chosen' };
  return deskFinding('field-needed', data, { where: { field: 'reason' } });
}

function askedSets(
  known: readonly KnownSet[],
  { sets, files = [] }: LimitsChoice,
): Answer<readonly KnownSet[]> {
  const named = sets.map((name) => findSet(known, name));
  const wrong = named.find(({ ok }) => !ok);
  if (wrong !== undefined && !wrong.ok) return wrong;
  const found = named.flatMap((one) => (one.ok ? [one.value] : []));
  const asked =
    found.length === 0 && files.length > 0 ? known.filter(({ from }) => from === 'own file') : found;
  if (asked.length > 0) return yes([...new Set(asked)]);
  const data = { field: 'set', received: null, expected: known.map(({ set }) => set.id).join(', ') };
  return no('wrong use', deskFinding('field-needed', data, { where: { field: 'set' } }));
}

function bodyOf(
  limits: LimitsInForce,
  asked: readonly KnownSet[],
  { rows, exposureDays, only, reason }: LimitsChoice,
): Answer<Chosen> {
  const beside =
    only === true ? [] : limits.sets.filter(({ set }) => asked.every((one) => one.set.id !== set));
  const days = exposureDays ?? limits.exposureDays;
  const findings = [...unknownRows(asked, rows), ...otherExposure(beside, limits, days)];
  if (findings.length > 0) return no('bad input', ...findings);
  const chosen = asked.map(({ set }) => ({ set, rows: rowsOf(set, days, rows) }));
  const faults = chosen.flatMap((one) => (one.rows.ok ? [] : one.rows.findings));
  if (faults.length > 0) return no('bad input', ...faults);
  const sets = chosen.flatMap(({ set, rows: found }) =>
    found.ok && (rows === undefined || found.value.length > 0)
      ? [{ set: set.id, name: set.name, rows: found.value }]
      : [],
  );
  const said = reason?.trim() ?? '';
  const body = { sets: [...beside, ...sets], exposureDays: days, reason: said === '' ? NOT_SAID : said };
  return yes(body as unknown as Chosen);
}

/** Stands in a preview only. */
const NOT_SAID = 'not said yet';

/** Rows that no set which was asked for has. */
function unknownRows(asked: readonly KnownSet[], rows: readonly string[] = []): readonly Finding[] {
  const all = asked.flatMap(({ set }) => set.rows);
  const strangers = rows.filter((id) => all.every((row) => row.id !== id));
  return strangers.flatMap((id) => {
    const [first] = asked;
    if (first === undefined) return [];
    const found = chosenRows(
      { ...first.set, rows: all },
      { use: first.set.uses[0] ?? '', exposureDays: 0, rows: [id] },
    );
    return found.ok ? [] : found.findings;
  });
}

/** A set that stays was chosen for another time of drinking: which of its rows count for this one its file knows, not the book. */
function otherExposure(
  beside: LimitsInForce['sets'],
  { exposureDays }: LimitsInForce,
  days: number,
): readonly Finding[] {
  if (days === exposureDays) return [];
  const bound = beside.filter(({ rows }) =>
    rows.some(({ exposure }) => exposure !== 'any' && exposure !== 'lifetime'),
  );
  if (bound.length === 0) return [];
  const data = {
    sets: bound.map(({ set }) => set),
    wasDays: exposureOf(exposureDays),
    isDays: exposureOf(days),
  };
  return [deskFinding('limit-exposure-differs', data, { where: { field: 'exposure' } })];
}

type Rows = Answer<readonly LimitRow[]>;

/** What a set requires for any of its uses, in its own order; a row keeps the uses that it is for. */
function rowsOf(set: LimitSet, exposureDays: number, wanted: readonly string[] | undefined): Rows {
  const own = wanted?.filter((id) => set.rows.some((row) => row.id === id));
  const uses = own === undefined ? set.uses : set.uses.slice(0, 1);
  const asked = uses.map((use) =>
    chosenRows(set, { use, exposureDays, ...(own !== undefined && { rows: own }) }),
  );
  const findings = asked.flatMap((one) => (one.ok ? [] : one.findings));
  if (findings.length > 0)
    return no('bad input', ...new Map(findings.map((one) => [one.where.field, one])).values());
  const ids = new Set(asked.flatMap((one) => (one.ok ? one.rows.map(({ id }) => id) : [])));
  return yes(set.rows.filter(({ id }) => ids.has(id)));
}
