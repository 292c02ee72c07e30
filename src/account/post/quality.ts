// Holds and every way out of one, samples, doses, labels: what water is fit for.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { dayStartUtcMs, msPerDay } from '../../ground/units/index.ts';
import { storeOf } from '../ends.ts';
import { flow } from '../flow.ts';
import type { Fold } from '../fold.ts';
import { endConditional, endHold, holdsOf, makeConditional, mayEnd, putOnHold, takeHold } from '../hold.ts';
import { ruleHold } from '../identity.ts';
import { OUTSIDE } from '../ledger.ts';
import { noteEntry } from '../note.ts';
import { failedBy, holdWhatFails } from '../quality/bad-news.ts';
import type { BadResult } from '../quality/bad-result.ts';
import { gradesOf, rowsOfResult } from '../quality/clean-results.ts';
import { judgeAnew } from '../quality/judge-anew.ts';
import { figuresOfResult, type KnownResult } from '../quality/known-results.ts';
import { chosenLimits, rowsOfGrade, withTyped } from '../quality/limits-in-force.ts';
import { figuresOfRelease, proofOf, releasedUntilMs } from '../quality/release.ts';
import { namedIn, speaksOf } from '../quality/speaks-of.ts';
import { waive } from '../quality/waivers.ts';
import { biocidesIn, enemiesAmong } from '../rules.ts';
import { type HoldState, holdsNow, ranDry, type StoreState } from '../store-state.ts';
import type { Reason } from '../verdict/sample-result.ts';

export function postHold(fold: Fold, entry: Entry<'hold'>): void {
  const { body } = entry;
  const hold: HoldState = {
    hold: body.hold,
    sinceMs: entry.happenedAtMs,
    reason: body.reason,
    entry: entry.id,
  };
  for (const state of statesOf(fold, entry, body.stores)) putOnHold(state, hold);
  for (const state of statesOf(fold, entry, body.conditional)) makeConditional(state, hold);
  // A hold of a sample answers that sample; one that names none answers what is known to be bad by now.
  answer(fold, ({ sample }) => body.sample === undefined || body.sample === sample);
}

/** Held water that somebody looks after: it stays held, and the date is asked about when it has passed. */
export function postParked(fold: Fold, entry: Entry<'parked'>): void {
  const { hold: name, owner, untilDay } = entry.body;
  const parked = { owner, untilMs: dayStartUtcMs(untilDay + 1, fold.dayRule), entry: entry.id };
  let found = false;
  for (const state of fold.stores.values()) {
    const change = (hold: HoldState) => (hold.hold === name ? { ...hold, parked } : hold);
    found ||= holdsOf(state).some(({ hold }) => hold === name);
    state.hold = state.hold === null ? null : change(state.hold);
    state.holdsBehind = state.holdsBehind.map(change);
  }
  if (!found) noteEntry(fold, entry, { code: 'hold-unknown', severity: 'act-today', data: { hold: name } });
}

/** Released by the medic on samples that pass: the outpost's own word from now on. Without proof the hold stays. */
export function postRelease(fold: Fold, entry: Entry<'release'>): void {
  for (const state of statesOf(fold, entry, entry.body.stores)) releaseStore(fold, entry, state);
  const { stores } = entry.body;
  answer(fold, (bad) => bad.stores.some((store) => stores.includes(store)));
}

function releaseStore(fold: Fold, entry: Entry<'release'>, state: StoreState): void {
  const { hold } = entry.body;
  const proof = proofOf(fold, entry, state);
  hearRelease(fold, entry, state);
  if ('reasons' in proof) {
    const data = { stores: [state.facts.id], reasons: proof.reasons.map(saidReason) };
    noteEntry(fold, entry, { code: 'release-unproven', severity: 'act-now', store: state.facts.id, data });
    return;
  }
  const isMeant = (one: HoldState) => hold === undefined || one.hold === hold;
  noteNotBroughtBack(fold, entry, state, holdsOf(state).filter(isMeant));
  endHold(state, hold);
  state.waived = state.waived.filter((one) => !isMeant(one.hold) || !mayEnd(state, one.hold));
  endConditional(state, hold);
  state.release = 'own sample';
  const { by, happenedAtMs: atMs, id } = entry;
  const untilMs = releasedUntilMs(fold, entry, proof.untilMs);
  state.released = { by, atMs, samples: proof.samples, untilMs, entry: id };
  if (state.treated !== null) state.badNewsSinceMs = Math.max(state.badNewsSinceMs, state.treated.atMs);
}

/** What the release itself tells of the water is known of it from then on, also where it speaks against it. */
function hearRelease(fold: Fold, entry: Entry<'release'>, state: StoreState): void {
  const results = figuresOfRelease(fold, entry, state);
  if (results.length === 0) return;
  state.results = [...state.results, ...results];
  const hold = `release ${entry.site} ${entry.number}`;
  holdWhatFails(fold, entry, state, { hold, reason: 'result-fails', results });
}

/** Mixed biocides, and water that was called better than it is: a word alone brings neither back. */
function noteNotBroughtBack(
  fold: Fold,
  entry: AnyEntry,
  state: StoreState,
  holds: readonly HoldState[],
): void {
  const stays = holds.filter((hold) => !mayEnd(state, hold));
  if (stays.length === 0) return;
  const reasons = [...new Set(stays.map(({ reason }) => `${reason}: not-treated`))];
  const data = { stores: [state.facts.id], reasons };
  noteEntry(fold, entry, { code: 'release-unproven', severity: 'act-now', store: state.facts.id, data });
}

/** Results make water known, and a waiver makes it no more so. */
function noteUnknown(fold: Fold, entry: AnyEntry, { facts }: StoreState, { reason }: HoldState): void {
  if (reason !== 'grade-unknown') return;
  const data = { stores: [facts.id], reasons: ['grade-unknown: not-known'] };
  noteEntry(fold, entry, { code: 'release-unproven', severity: 'act-now', store: facts.id, data });
}

const saidReason = ({ code, parameter }: Reason): string =>
  parameter === '' ? code : `${parameter}: ${code}`;

/** A waiver lets water be used for a time without making it any better. */
export function postWaiver(fold: Fold, entry: Entry<'waiver'>): void {
  needsTwo(fold, entry, 'waiver');
  const { hold: name, stores, reason, untilDay } = entry.body;
  const untilMs = dayStartUtcMs(untilDay + 1, fold.dayRule);
  for (const state of statesOf(fold, entry, stores)) {
    // The last word on a hold counts, also where it was waived before.
    const all = [...holdsOf(state), ...state.waived.map(({ hold }) => hold)];
    const hold = all.find((one) => one.hold === name);
    if (hold === undefined) continue;
    noteNotBroughtBack(fold, entry, state, [hold]);
    noteUnknown(fold, entry, state, hold);
    if (!mayEnd(state, hold) || hold.reason === 'grade-unknown') continue;
    takeHold(state, name);
    const second = entry.second?.office ?? null;
    fold.waiverEndsMs = Math.min(fold.waiverEndsMs, untilMs);
    waive(state, { hold, by: entry.by, second, reason, untilMs, entry: entry.id });
  }
  answer(fold, (bad) => bad.stores.some((store) => stores.includes(store)));
}

/** A result that speaks of a store's water is kept with it, and holds it if it fails. */
export function postResult(fold: Fold, entry: Entry<'result'>): void {
  const { body } = entry;
  const taken = fold.samples.get(body.sample);
  // A sample at a place that nobody can tell says nothing: then the result does.
  const stores = taken === undefined || taken.speaksOf.length === 0 ? namedIn(fold, entry) : taken.speaksOf;
  const figures = figuresOfResult(entry, taken, fold.index);
  for (const id of stores) {
    const state = fold.stores.get(id);
    if (state === undefined) continue;
    const inflowMg = taken?.speaksOf.includes(id) === true ? taken.inflowMg : state.inflowMg;
    const results = figures.map((figure) => ({ ...figure, inflowMg }));
    state.results = [...state.results, ...results];
    holdWhatFails(fold, entry, state, { hold: `result ${body.sample}`, reason: 'result-fails', results });
  }
  const parameters = failedBy(rowsOfResult(fold, entry), figures, entry.happenedAtMs);
  if (parameters.length === 0) return;
  const bad = { entry: entry.id, sample: body.sample, stores, parameters, atMs: entry.happenedAtMs };
  fold.badResults = [...fold.badResults, bad];
}

/** Out of judgement by the medic's word. A hold that it had set stands until it is released. */
export function postResultSetAside(fold: Fold, entry: Entry<'result-set-aside'>): void {
  const { sample, parameter } = entry.body;
  const isMeant = (one: KnownResult) =>
    one.sample === sample && (parameter === undefined || one.parameter === parameter);
  for (const state of fold.stores.values())
    if (state.results.some(isMeant)) state.results = state.results.filter((one) => !isMeant(one));
  answer(fold, (bad) => bad.sample === sample);
}

export function postLimitsChosen(fold: Fold, entry: Entry<'limits-chosen'>): void {
  fold.limits = chosenLimits(entry);
  judgeAnew(fold, entry);
}

export function postLimitTyped(fold: Fold, entry: Entry<'limit-typed'>): void {
  fold.limits = withTyped(fold.limits, entry);
  judgeAnew(fold, entry);
}

function answer(fold: Fold, isAnswered: (bad: BadResult) => boolean): void {
  if (fold.badResults.some(isAnswered)) fold.badResults = fold.badResults.filter((bad) => !isAnswered(bad));
}

/** Down is a way out of a hold; up is none, whatever the entry says that the water was. */
export function postDowngrade(fold: Fold, entry: Entry<'downgrade'>): void {
  const { body } = entry;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  const goesUp = [body.fromGrade, state.grade].some(
    (grade) => grade !== null && rank(fold, body.toGrade) < rank(fold, grade),
  );
  if (goesUp)
    noteRise(fold, entry, state, { fromGrade: state.grade ?? body.fromGrade, toGrade: body.toGrade });
  else if (isUnknown(state)) holdUnknown(fold, entry, state, body.toGrade);
  else if (rank(fold, body.toGrade) > rank(fold, body.fromGrade)) goDown(fold, entry, state);
  callIt(state, body.toGrade);
  answer(fold, (bad) => bad.stores.includes(body.store));
}

function goDown(fold: Fold, { body }: Entry<'downgrade'>, state: StoreState): void {
  endHold(state, body.hold);
  const asked = new Set(rowsOfGrade(fold.limits, fold.index, body.toGrade).map(({ parameter }) => parameter));
  // A result that failed for the better use is answered by the worse one, where that asks nothing of it.
  for (const { hold, failed } of holdsOf(state))
    if (failed !== undefined && !failed.some((parameter) => asked.has(parameter))) endHold(state, hold);
}

/** A word says what a store is for: it makes known what is in it no more than it fills it. */
function isUnknown(state: StoreState): boolean {
  return state.grade === null && !ranDry(state);
}

/** Of a store that is known to have held worse, a better label is a rise. */
function holdUnknown(fold: Fold, entry: AnyEntry, state: StoreState, toGrade: string): void {
  const goesUp = state.gradeHistory.some((grade) => rank(fold, toGrade) < rank(fold, grade));
  putOnHold(state, ruleHold(entry, goesUp ? 'grade-went-up' : 'grade-unknown'));
}

/** Another name for what is in it; what was empty is. */
function callIt(state: StoreState, grade: string): void {
  const { emptied } = state;
  holdsNow(state, grade);
  state.emptied = emptied;
}

function noteRise(
  fold: Fold,
  entry: AnyEntry,
  state: StoreState,
  data: { fromGrade: string; toGrade: string },
): void {
  noteEntry(fold, entry, { code: 'grade-went-up', severity: 'act-now', store: state.facts.id, data });
  putOnHold(state, ruleHold(entry, 'grade-went-up'));
  // Whatever word it had was for a worse use.
  state.release = 'none';
  state.released = null;
}

/** Treated water waits: it counts for nothing until its sample has passed and the medic has released it. */
export function postTreatment(fold: Fold, entry: Entry<'treatment'>): void {
  const { body } = entry;
  needsTwo(fold, entry, 'treatment');
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  if (body.dose !== undefined)
    flow(fold, entry, {
      from: outside,
      to: fold.endOfStore(state),
      massMg: body.dose.massMg,
      uMg: 0,
      calibration: -1,
      plumbing: true,
    });
  const isAllowed = noteWrongTreatment(fold, entry, state);
  const biocide = fold.index.grades.get(body.toGrade)?.biocide ?? 'none';
  // By what it was before: of the new grade the biocide would be there already.
  if (biocide !== 'none') addBiocide(fold, entry, state, biocide);
  state.broughtBack = isAllowed && !isAlone(fold, entry, 'treatment');
  callIt(state, body.toGrade);
  state.release = 'none';
  state.released = null;
  const recipe = fold.index.treatments.get(body.recipe);
  const untilMs = entry.happenedAtMs + (recipe?.sampleAfterDays ?? 0) * msPerDay;
  state.treated = { atMs: entry.happenedAtMs, biocide: null, untilMs, entry: entry.id };
  putOnHold(state, {
    hold: `treated ${entry.site} ${entry.number}`,
    sinceMs: entry.happenedAtMs,
    reason: 'treated, not yet released',
    entry: entry.id,
  });
}

/** Upwards only by a recipe of the outpost that is allowed, and only water that the recipe is for. */
function noteWrongTreatment(fold: Fold, entry: Entry<'treatment'>, state: StoreState): boolean {
  const { gradeHistory, facts } = state;
  const { recipe: name, toGrade } = entry.body;
  const recipe = fold.index.treatments.get(name);
  const why =
    recipe === undefined
      ? 'no such recipe'
      : !recipe.allowed
        ? 'not allowed'
        : recipe.to !== toGrade
          ? 'other grade'
          : gradeHistory.some((grade) => recipe.neverHeld.includes(grade))
            ? 'has held'
            : null;
  if (why === null) return true;
  const data = { recipe: name, why, neverHeld: recipe?.neverHeld ?? [] };
  noteEntry(fold, entry, { code: 'treatment-not-allowed', severity: 'act-now', store: facts.id, data });
  putOnHold(state, ruleHold(entry, 'treatment-not-allowed'));
  return false;
}

export function postDose(fold: Fold, entry: Entry<'dose'>): void {
  const { body } = entry;
  for (const state of statesOf(fold, entry, body.stores)) {
    flow(fold, entry, {
      from: outside,
      to: fold.endOfStore(state),
      massMg: body.doseEach.massMg,
      uMg: 0,
      calibration: -1,
      plumbing: true,
    });
    addBiocide(fold, entry, state, body.biocide);
    const atMs = entry.happenedAtMs;
    const untilMs = Math.max(atMs, state.treated?.untilMs ?? atMs);
    state.treated = { atMs, biocide: body.biocide, untilMs, entry: entry.id };
    state.waterSinceMs = atMs;
  }
}

function addBiocide(fold: Fold, entry: AnyEntry, state: StoreState, biocide: string): void {
  const had = biocidesIn(fold.index, state);
  // A label names a biocide that nobody put in: only what is known to be there is no news.
  const there = state.biocides;
  const isNew = !there.includes(biocide) && enemiesAmong(fold.index, there) === null;
  const enemies = isNew ? enemiesAmong(fold.index, [...had, biocide]) : null;
  state.biocides = [...new Set([...there, biocide])];
  if (enemies === null) return;
  const meets = enemies.find((one) => one !== biocide) ?? biocide;
  const data = {
    from: 'a dose',
    to: state.facts.id,
    comes: biocide,
    meets,
    residue: state.emptied ? 'residue' : 'content',
    happened: entry.happened ?? null,
  };
  noteEntry(fold, entry, { code: 'biocides-meet', severity: 'act-now', store: state.facts.id, data });
  putOnHold(state, ruleHold(entry, 'biocides-meet'));
}

/** A label goes one way only: down. It changes what a store is for, not what is in it. */
export function postRelabel(fold: Fold, entry: Entry<'relabel'>): void {
  const { body } = entry;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  if (!body.twoPersons)
    noteEntry(fold, entry, {
      code: 'alone-for-two',
      severity: 'act-now',
      store: body.store,
      data: { act: 'relabel' },
    });
  if (state.grade !== null && rank(fold, body.toGrade) < rank(fold, state.grade)) {
    noteRise(fold, entry, state, { fromGrade: state.grade, toGrade: body.toGrade });
  }
  if (isUnknown(state)) holdUnknown(fold, entry, state, body.toGrade);
  callIt(state, body.toGrade);
}

/** What a sample took out of a store; a sample drawn elsewhere took nothing from the contents. */
export function postSample(fold: Fold, entry: Entry<'sample'>): void {
  const { body } = entry;
  const stores = speaksOf(fold, entry);
  const inflowMg = fold.stores.get(stores[0] ?? '')?.inflowMg ?? 0;
  const grades = gradesOf(fold, stores);
  const moment = { takenAtMs: entry.happenedAtMs, entry: entry.id };
  const taken = { sample: body.sample, speaksOf: stores, grades, ...moment };
  fold.samples = new Map(fold.samples).set(body.sample, { ...taken, inflowMg });
  if (body.store === undefined) return;
  if (body.volumeMg === undefined || body.drawnFrom !== undefined) return;
  const state = storeOf(fold, entry, body.store);
  if (state === null) return;
  flow(fold, entry, {
    from: fold.endOfStore(state),
    to: outside,
    massMg: body.volumeMg,
    uMg: 0,
    calibration: -1,
  });
}

const outside = { account: OUTSIDE, store: null } as const;

function statesOf(fold: Fold, entry: AnyEntry, stores: readonly string[]): StoreState[] {
  return stores.flatMap((id) => {
    const state = storeOf(fold, entry, id);
    return state === null ? [] : [state];
  });
}

function needsTwo(fold: Fold, entry: AnyEntry, act: 'waiver' | 'treatment'): void {
  if (isAlone(fold, entry, act))
    noteEntry(fold, entry, { code: 'alone-for-two', severity: 'act-now', data: { act } });
}

function isAlone({ index }: Fold, { second }: AnyEntry, act: 'waiver' | 'treatment'): boolean {
  return second === undefined && index.outpost.secondPersonActs.includes(act);
}

function rank(fold: Fold, grade: string): number {
  return fold.index.grades.get(grade)?.rank ?? 0;
}
