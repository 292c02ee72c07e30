// The entries that acts on holds become: names found, days read, and nothing decided yet.
import { type Fold, holdsOf, positionOf } from '../../account/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { type Context, findName, findStore } from '../log/context.ts';
import type { MadeBody } from './begin.ts';
import { readDay } from './day.ts';
import { FAILS, figureLines } from './figure-lines.ts';
import type { HoldAct } from './hold-request.ts';
import { follow } from './hold-tree.ts';
import type { QualityPast } from './past.ts';
import { holdName, proposedHold } from './propose.ts';
import { findSample, knownSamples } from './sample-add.ts';
import { suspicionIn } from './suspicion-in.ts';
import { treatBodies } from './treat.ts';

type Bodies = Answer<readonly MadeBody[]>;

function one(answer: Answer<MadeBody>): Bodies {
  return answer.ok ? yes([answer.value]) : answer;
}

/** @param of.isFact it has happened: what a recipe is for is then for the account to say */
export function actBodies(
  context: Context,
  past: QualityPast,
  of: { readonly request: HoldAct; readonly isFact: boolean },
): Bodies | Promise<Bodies> {
  const { request, isFact } = of;
  switch (request.act) {
    case 'add':
      return request.sample === undefined
        ? one(addBody(context, past, request))
        : addBySample(context, past, request);
    case 'release':
      return one(releaseBody(context, past, request));
    case 'waive':
      return one(waiveBody(context, past, request));
    case 'downgrade':
      return one(downgradeBody(context, past, request));
    case 'treat':
      return treatBodies(context, request, isFact);
    case 'park':
      return one(parkBody(context, past, request));
    case 'aside':
      return one(asideBody(context, past, request));
  }
}

type Of<Act extends HoldAct['act']> = Extract<HoldAct, { readonly act: Act }>;

function need(field: string, expected: string) {
  return no(
    'wrong use',
    deskFinding('field-needed', { field, received: null, expected }, { where: { field } }),
  );
}

function findStores(context: Context, typed: readonly string[]): Answer<readonly string[]> {
  const stores: string[] = [];
  for (const name of typed) {
    const found = findStore(context, name);
    if (!found.ok) return found;
    if (!stores.includes(found.value)) stores.push(found.value);
  }
  return yes(stores);
}

function addBody(
  context: Context,
  past: QualityPast,
  { stores = [], conditional = [], reason, name }: Of<'add'>,
): Answer<MadeBody> {
  if (stores.length === 0) return need('stores', 'a store, or --sample SAMPLE');
  if (reason === undefined || reason.trim() === '') return need('reason', 'why they are held');
  const held = findStores(context, stores);
  if (!held.ok) return held;
  const touched = findStores(context, conditional);
  if (!touched.ok) return touched;
  const hold = holdName(past, name);
  if (!hold.ok) return hold;
  const body = { hold: hold.value, stores: [...held.value], conditional: [...touched.value], reason };
  return yes({ kind: 'hold', body });
}

async function addBySample(context: Context, past: QualityPast, request: Of<'add'>): Promise<Bodies> {
  const { desk, fold, presentMs } = context;
  const sample = findSample(knownSamples(fold, past), request.sample ?? '');
  if (!sample.ok) return sample;
  const seen = { desk, sight: { kind: 'now' } as const, fold, position: positionOf(fold, presentMs), past };
  const followed = await follow(seen, (history) => suspicionIn(seen, history, sample.value));
  if (!followed.ok) return followed;
  const proposed = followed.value?.proposal;
  if (
    followed.value == null ||
    proposed === undefined ||
    proposed.hold.length + proposed.conditional.length === 0
  )
    return no(
      'bad input',
      deskFinding('nothing-touched', { sample: sample.value }, { where: { field: 'sample' } }),
    );
  const failing = past.results
    .filter(({ body }) => body.sample === sample.value)
    .flatMap((entry) => {
      const lines = figureLines({ fold, past, nowMs: presentMs }, entry);
      return entry.body.values.filter((_, k) => FAILS.has(lines[k]?.verdict ?? 'no limit'));
    });
  const word = { hold: request.only ?? 'all', reason: request.reason, name: request.name } as const;
  const because = { sample: sample.value, failing };
  const body = proposedHold(context, past, { followed: followed.value, word, because });
  return body.ok ? yes([{ kind: 'hold', body: body.value }]) : body;
}

/** Names of the holds that stores aboard are on; a release ends conditional and waived ones, too. */
function openHolds({ fold }: Context, which: 'held' | 'all'): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const state of fold.stores.values()) {
    if (!state.aboard) continue;
    const { conditional, waived, facts } = state;
    const others = [...(conditional === null ? [] : [conditional]), ...waived.map(({ hold }) => hold)];
    const holds = [...holdsOf(state), ...(which === 'held' ? [] : others)];
    for (const { hold } of holds) found.set(hold, [...(found.get(hold) ?? []), facts.id]);
  }
  return found;
}

function onHold(
  context: Context,
  past: QualityPast,
  typed: {
    readonly hold: string;
    readonly stores: readonly string[] | undefined;
    /** Conditional stores and waived ones count as well. */
    readonly which: 'held' | 'all';
  },
): Answer<{ readonly hold: string; readonly stores: readonly string[] }> {
  const open = openHolds(context, typed.which);
  const names = [...new Set([...open.keys(), ...past.holds.map(({ body }) => body.hold)])];
  const hold = findName('hold', typed.hold, names);
  if (!hold.ok) return hold;
  const all = open.get(hold.value) ?? [];
  if (typed.stores === undefined || typed.stores.length === 0)
    return all.length > 0
      ? yes({ hold: hold.value, stores: all })
      : no('bad input', deskFinding('hold-ended', { hold: hold.value }, { where: { field: 'hold' } }));
  const stores = findStores(context, typed.stores);
  if (!stores.ok) return stores;
  const stranger = stores.value.find((store) => !all.includes(store));
  if (stranger === undefined) return yes({ hold: hold.value, stores: stores.value });
  const data = { hold: hold.value, store: stranger, stores: all };
  return no('bad input', deskFinding('not-on-hold', data, { where: { field: 'stores' } }));
}

function releaseBody(
  context: Context,
  past: QualityPast,
  { of, samples = [], until }: Of<'release'>,
): Answer<MadeBody> {
  const which = holdOrStores(context, past, of);
  if (!which.ok) return which;
  const day = until === undefined ? yes(undefined) : readDay(context, until);
  if (!day.ok) return day;
  const named: string[] = [];
  for (const sample of samples) {
    const found = findSample(knownSamples(context.fold, past), sample);
    if (!found.ok) return found;
    named.push(found.value);
  }
  const body = {
    ...(which.value.hold !== undefined && { hold: which.value.hold }),
    stores: [...which.value.stores],
    values: [],
    ...(named.length > 0 && { samples: named }),
    ...(day.value !== undefined && { untilDay: day.value }),
  };
  return yes({ kind: 'release', body });
}

/** The first name is a hold, or all of them are stores that wait for a first release. */
function holdOrStores(
  context: Context,
  past: QualityPast,
  [first = '', ...stores]: readonly string[],
): Answer<{ readonly hold?: string; readonly stores: readonly string[] }> {
  const isStore = first !== '' && findStore(context, first).ok;
  return isStore || first === ''
    ? looseStores(context, first === '' ? [] : [first, ...stores])
    : onHold(context, past, { hold: first, stores, which: 'all' });
}

function looseStores(
  context: Context,
  typed: readonly string[],
): Answer<{ readonly hold?: string; readonly stores: readonly string[] }> {
  if (typed.length === 0) return need('stores', 'a hold, or a store');
  const stores = findStores(context, typed);
  return stores.ok ? yes({ stores: stores.value }) : stores;
}

function waiveBody(context: Context, past: QualityPast, request: Of<'waive'>): Answer<MadeBody> {
  const { reason, until } = request;
  const which = onHold(context, past, { hold: request.hold, stores: request.stores, which: 'held' });
  if (!which.ok) return which;
  if (reason.trim() === '') return need('reason', 'why it is waived');
  const day = readDay(context, until);
  if (!day.ok) return day;
  const { hold, stores } = which.value;
  return yes({ kind: 'waiver', body: { hold, stores: [...stores], reason, untilDay: day.value } });
}

function downgradeBody(context: Context, past: QualityPast, request: Of<'downgrade'>): Answer<MadeBody> {
  const { fold } = context;
  const which =
    request.hold === undefined
      ? looseStores(context, [request.store])
      : onHold(context, past, { hold: request.hold, stores: [request.store], which: 'all' });
  if (!which.ok) return which;
  const [store = ''] = which.value.stores;
  const fromGrade = fold.stores.get(store)?.grade ?? null;
  if (fromGrade === null) return need('grade', `the grade that ${store} holds: it is not known`);
  const grade =
    request.grade === undefined
      ? yes(nextLower(fold, fromGrade))
      : findName('grade', request.grade, [...fold.index.grades.keys()]);
  if (!grade.ok) return grade;
  if (grade.value === undefined) return need('grade', 'the lower grade that it is from now on');
  const hold = which.value.hold === undefined ? {} : { hold: which.value.hold };
  return yes({ kind: 'downgrade', body: { ...hold, store, fromGrade, toGrade: grade.value, values: [] } });
}

/** The best of the worse grades into which the water may go, and waste only where there is no other. */
function nextLower({ index }: Fold, from: string): string | undefined {
  const own = index.grades.get(from);
  return index.outpost.grades
    .filter(
      ({ id, rank, emergencyOnly }) =>
        rank > (own?.rank ?? 0) && !emergencyOnly && own?.mayFlowInto.includes(id) === true,
    )
    .sort((a, b) => a.rank - b.rank)[0]?.id;
}

function parkBody(
  context: Context,
  past: QualityPast,
  { hold, owner, until, reason }: Of<'park'>,
): Answer<MadeBody> {
  const which = onHold(context, past, { hold, stores: undefined, which: 'held' });
  if (!which.ok) return which;
  const office = findName('office', owner, [...context.fold.index.offices.keys()]);
  if (!office.ok) return office;
  const day = readDay(context, until);
  if (!day.ok) return day;
  const body = {
    hold: which.value.hold,
    owner: office.value,
    untilDay: day.value,
    ...(reason !== undefined && { reason }),
  };
  return yes({ kind: 'parked', body });
}

function asideBody(
  context: Context,
  past: QualityPast,
  { sample, parameter, reason }: Of<'aside'>,
): Answer<MadeBody> {
  const found = findSample(knownSamples(context.fold, past), sample);
  if (!found.ok) return found;
  if (reason.trim() === '') return need('reason', 'why the result is set aside');
  const results = past.results.filter(({ body }) => body.sample === found.value);
  const measured = [...new Set(results.flatMap(({ body }) => body.values.map((value) => value.parameter)))];
  if (measured.length === 0)
    return no(
      'not in book',
      deskFinding(
        'not-in-book',
        { what: 'result', name: found.value, nearest: [] },
        { where: { field: 'sample' } },
      ),
    );
  const which = parameter === undefined ? yes(undefined) : findName('parameter', parameter, measured);
  if (!which.ok) return which;
  const body = { sample: found.value, ...(which.value !== undefined && { parameter: which.value }), reason };
  return yes({ kind: 'result-set-aside', body });
}
