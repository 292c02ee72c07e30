// Entering a result: read it, ask what it touches if it fails, and keep it together with the hold that answers it.
import { type Fold, positionOf, suspicionAt, suspicionOfSample } from '../../account/index.ts';
import type { AnyDraft, Body, Draft, Entry } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import type { HoldTree, ResultSheet } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { questionsBefore } from '../log/ask-first.ts';
import { type Context, findStore, readMoment } from '../log/context.ts';
import { type Ahead, type Drafts, keepTogether, lookAhead, sheetAhead } from '../log/keep-together.ts';
import type { RequestWith } from '../log/request.ts';
import { wordOf } from '../today.ts';
import { beginAct, draftOf } from './begin.ts';
import { figureLines } from './figure-lines.ts';
import { type Followed, follow } from './hold-tree.ts';
import { type QualityPast, qualityPast, standingResults } from './past.ts';
import { type HoldWord, proposedHold } from './propose.ts';
import type { ResultFigure } from './read-figure.ts';
import { readFigures, type TypedFigures } from './result-figures.ts';
import { type ResultOf, resultOf } from './result-of.ts';
import { resultRules } from './result-rules.ts';
import { pointOf } from './sampled-place.ts';
import { treeSheet } from './tree-sheet.ts';
import { askUnusual } from './usual-figure.ts';

export interface ResultRequest extends TypedFigures {
  /** A sample, a bottle of it, or a store or a point that was read without one. */
  readonly of: string;
  /** Named beside a sample: held against it. */
  readonly store?: string;
  readonly method?: string;
  readonly madeAt?: 'aboard' | 'laboratory';
  readonly custody?: 'kept' | 'broken';
  readonly preliminary?: boolean;
  readonly degassed?: boolean;
  /** When the sample was drawn, where it has no entry; absent: when it was read. */
  readonly taken?: string;
  /** What is to be held, if it fails. */
  readonly hold?: 'all' | readonly string[];
  readonly reason?: string;
  readonly holdName?: string;
}

export async function addResult(
  desk: Desk,
  moment: Moment,
  request: ResultRequest,
  more: RequestWith = {},
): Promise<Answer<ResultSheet>> {
  const begun = await beginAct(desk, moment);
  if (!begun.ok) return begun;
  const context = begun.value;
  const past = await qualityPast(desk.port, {});
  const told = toldResult(context, past, { request, more });
  if (!told.ok) return told;
  const { of, values } = told.value;
  const draft = await draftOf(context, { kind: 'result', body: told.value.body }, more);
  if (!draft.ok) return draft;
  const isSure = more.sure === true || more.happened !== undefined;
  const questions = isSure ? [] : await questionsAbout(context, past, { of, values, draft: draft.value });
  if (questions.length > 0 && more.dryRun !== true) return no('ask first', ...questions);
  const looked = await lookAtResult(context, past, { of, values, draft: draft.value, request, more });
  if (!looked.ok) return looked;
  return await concluded(context, past, { looked: looked.value, questions, more });
}

interface Told {
  readonly of: ResultOf;
  readonly values: readonly ResultFigure[];
  readonly body: Body<'result'>;
}

function toldResult(
  context: Context,
  past: QualityPast,
  { request, more }: { readonly request: ResultRequest; readonly more: RequestWith },
): Answer<Told> {
  const happened = readMoment(context, more.at);
  if (!happened.ok) return happened;
  const atMs = happened.value.utcMs;
  const of = resultOf(context, past, { of: request.of, atMs });
  if (!of.ok) return of;
  const figures = readFigures(context.fold, request);
  if (!figures.ok) return figures;
  const store = request.store === undefined ? yes(undefined) : findStore(context, request.store);
  if (!store.ok) return store;
  const taken = request.taken === undefined ? yes(undefined) : readMoment(context, request.taken);
  if (!taken.ok) return taken;
  const takenAtMs = taken.value?.utcMs;
  const against = resultRules(past, {
    of: of.value,
    atMs,
    takenAtMs,
    store: store.value,
    values: figures.value,
  });
  if (against.length > 0) return no('bad input', ...against);
  return yes({
    of: of.value,
    values: figures.value,
    body: bodyOf(of.value, { request, takenAtMs, values: figures.value }),
  });
}

function bodyOf(
  { sample, entry, place }: ResultOf,
  of: {
    readonly request: ResultRequest;
    readonly takenAtMs: number | undefined;
    readonly values: readonly ResultFigure[];
  },
): Body<'result'> {
  const { request, takenAtMs, values } = of;
  const { method, madeAt, custody, preliminary, degassed } = request;
  const named = place ?? (entry?.body.store === undefined ? {} : { store: entry.body.store });
  return {
    sample,
    ...named,
    ...(place === null && entry?.body.point !== undefined && { point: entry.body.point }),
    values: [...values],
    ...(method !== undefined && { method }),
    ...(madeAt !== undefined && { madeAt }),
    ...(takenAtMs !== undefined && { takenAtMs }),
    ...(custody !== undefined && { custody }),
    ...(preliminary === true && { preliminary }),
    ...(degassed !== undefined && { degassed }),
  };
}

async function questionsAbout(
  context: Context,
  past: QualityPast,
  {
    of,
    values,
    draft,
  }: { readonly of: ResultOf; readonly values: readonly ResultFigure[]; readonly draft: AnyDraft },
): Promise<readonly Finding[]> {
  const [waits] = of.waiting;
  const place = of.place === null ? '' : 'store' in of.place ? of.place.store : of.place.point;
  return [
    ...(waits === undefined
      ? []
      : [
          deskFinding(
            'sample-waits',
            { place, samples: of.waiting },
            { where: { field: 'sample' }, severity: 'know' },
          ),
        ]),
    ...values.flatMap((value) => askUnusual(value, standingResults(past))),
    ...(await questionsBefore(context, { what: 'kind', kind: 'result', body: draft.body }, draft)),
  ];
}

/** A result as it would be, and what it asks. */
interface LookedAt {
  readonly of: ResultOf;
  readonly drafts: Drafts;
  readonly ahead: Ahead;
  readonly fails: readonly string[];
  readonly tree: HoldTree | null;
  readonly asks: boolean;
}

interface Asked {
  readonly of: ResultOf;
  readonly values: readonly ResultFigure[];
  readonly draft: AnyDraft;
  readonly request: ResultRequest;
  readonly more: RequestWith;
}

async function lookAtResult(context: Context, past: QualityPast, asked: Asked): Promise<Answer<LookedAt>> {
  const { of, draft, request } = asked;
  const alone = await lookAhead(context, [draft]);
  const fails = failsOf(alone.fold, draft);
  const plain = { of, drafts: [draft] as const, ahead: alone, fails, tree: null, asks: false };
  if (fails.length === 0) return yes(plain);
  const followed = await followFrom(context, past, { of, draft: draft as Draft<'result'> });
  if (!followed.ok) return followed;
  if (followed.value === null || isNothing(followed.value)) return yes(plain);
  const word = {
    hold: request.hold ?? 'all',
    reason: request.reason,
    name: request.holdName,
  } satisfies HoldWord;
  const because = {
    sample: of.sample,
    failing: asked.values.filter(({ parameter }) => fails.includes(parameter)),
  };
  const body = proposedHold(context, past, { followed: followed.value, word, because });
  if (!body.ok) return body;
  const hold = await draftOf(context, { kind: 'hold', body: body.value }, heldWith(asked.more));
  if (!hold.ok) return hold;
  const ahead = await lookAhead(context, [draft, hold.value]);
  const before = positionOf(context.fold, context.presentMs);
  const after = positionOf(ahead.fold, Math.max(context.presentMs, draft.happenedAtMs));
  const tree = await treeSheet(context, { followed: followed.value, sample: of.sample, before, after });
  return yes({ of, drafts: [draft, hold.value], ahead, fails, tree, asks: request.hold === undefined });
}

/** The hold is of the same moment; what was noted, and minutes spent, are the result's. */
function heldWith({ at, late, happened }: RequestWith): RequestWith {
  return {
    ...(at !== undefined && { at }),
    ...(late !== undefined && { late }),
    ...(happened !== undefined && { happened }),
  };
}

function failsOf({ badResults }: Fold, { id }: AnyDraft): readonly string[] {
  return badResults.find(({ entry }) => entry === id)?.parameters ?? [];
}

const isNothing = ({ proposal }: Followed) => proposal.hold.length + proposal.conditional.length === 0;

async function followFrom(
  { desk, fold, presentMs }: Context,
  past: QualityPast,
  { of, draft }: { readonly of: ResultOf; readonly draft: Draft<'result'> },
): Promise<Answer<Followed | null>> {
  const seen = { desk, sight: { kind: 'now' } as const, fold, position: positionOf(fold, presentMs), past };
  return await follow(seen, (history) => {
    if (of.entry !== null) return suspicionOfSample(history, of.sample);
    const point = of.place === null ? null : pointOf(fold, of.place);
    const takenAtMs = draft.body.takenAtMs ?? draft.happenedAtMs;
    return point === null ? null : suspicionAt(history, point, takenAtMs);
  });
}

async function concluded(
  context: Context,
  past: QualityPast,
  of: { readonly looked: LookedAt; readonly questions: readonly Finding[]; readonly more: RequestWith },
): Promise<Answer<ResultSheet>> {
  const { looked, questions, more } = of;
  const { drafts, ahead, tree, asks, fails } = looked;
  const worded = questions.map((one) => wordOf(context.fold, one));
  if (more.dryRun !== true) {
    if (asks) return no('refused', undecided(context, looked));
    const kept = await keepTogether(context, drafts);
    if (!kept.ok) return kept;
    return yes({
      ...factsOf(past, looked, true),
      kept: true,
      tree,
      asks,
      fails,
      entry: kept.value,
      findings: worded,
    });
  }
  const [result] = ahead.entries;
  const shown: Ahead = asks ? { ...ahead, entries: [result] } : ahead;
  const entry = await sheetAhead(context, shown);
  return yes({ ...factsOf(past, looked, false), kept: false, tree, asks, fails, entry, findings: worded });
}

function factsOf(past: QualityPast, { of, ahead }: LookedAt, kept: boolean) {
  const [result] = ahead.entries;
  const asked = { fold: ahead.fold, past, nowMs: result.happenedAtMs, kept };
  return {
    sample: of.sample,
    speaksOf: ahead.fold.samples.get(of.sample)?.speaksOf ?? [],
    figures: figureLines(asked, result as Entry<'result'>),
  };
}

function undecided({ fold }: Context, { of, fails, tree }: LookedAt): Finding {
  const data = {
    sample: of.sample,
    parameters: fails,
    stores: tree?.hold ?? [],
    conditional: tree?.conditional ?? [],
    massMg: Math.round((tree?.heldVolume.value ?? 0) * fold.mgPerL),
    u95Mg: Math.round((tree?.heldVolume.u95 ?? 0) * fold.mgPerL),
    mgPerL: fold.mgPerL,
  };
  return deskFinding('hold-undecided', data, { where: { field: 'hold' } });
}
