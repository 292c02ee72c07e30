// Entering: read what was typed, ask the rules, keep it, and tell what it changed.
import {
  type AccountFinding,
  type Fold,
  notFreeBecause,
  type Position,
  positionOf,
} from '../../account/index.ts';
import type { AnyDraft, AnyEntry, BookPort } from '../../book/index.ts';
import { coverOf } from '../../forecast/index.ts';
import { dayOf, type Finding, formatFigure } from '../../ground/units/index.ts';
import { becameInWords, type KeptSheet } from '../../papers/index.ts';
import { type Answer, no, type Problem, yes } from '../answer.ts';
import { doseRules } from '../biocide/dose-rules.ts';
import { standingStores } from '../biocide/standing-stores.ts';
import { bookLine, refsIn } from '../book-line.ts';
import { coveredGrades } from '../covered-grades.ts';
import type { Desk, Moment } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { drawnMgOf, NOTHING_L } from '../open-findings.ts';
import { wordOf } from '../today.ts';
import { questionsBefore } from './ask-first.ts';
import type { Context } from './context.ts';
import { objections } from './intention.ts';
import { makeDraft } from './make.ts';
import { entryToBe, foldWith } from './overlay.ts';
import type { LogRequest, RequestWith } from './request.ts';

/** Days of cover that change by less than this are not told. */
const TOLD_DAYS = 0.1;

/** Enters what somebody asks for, or with `dryRun` shows what it would change. */
export async function log(
  desk: Desk,
  moment: Moment,
  request: LogRequest,
  more: RequestWith = {},
): Promise<Answer<KeptSheet>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const office = knownOffice(fold, moment);
  if (office !== null) return office;
  if (fold.openingMs === null && !mayBegin(request))
    return no('wrong use', deskFinding('book-not-begun', { what: 'opening' }));
  const context: Context = { desk, fold, moment, presentMs: desk.enteringMs(fold, moment) };
  const made = await makeDraft(context, request, more);
  if (!made.ok) return made;
  const draft = made.value;
  const rules = objections(fold, draft);
  const against = [...rules, ...(await lineTwice(desk, draft))];
  if (rules.length === 0) against.push(...(await doseTooMuch(context, draft)));
  if (against.length > 0) return no(problemOf(against), ...against);
  // A yes, and that it has happened, answer every question.
  const isSure = more.sure === true || more.happened !== undefined;
  const questions = isSure ? [] : await questionsBefore(context, request, draft);
  const before = positionOf(fold, context.presentMs);
  if (more.dryRun === true) {
    const sheet = await wouldBe(context, draft, before);
    return yes({ ...sheet, findings: [...questions.map((one) => wordOf(before, one)), ...sheet.findings] });
  }
  if (questions.length > 0) return no('ask first', ...questions);
  const kept = await desk.keep([draft], moment);
  if (!kept.ok) return kept;
  const [entry] = kept.value.kept;
  if (entry === undefined) throw new Error('a new entry was not kept');
  const after = positionOf(opened.value.fold, Math.max(context.presentMs, entry.happenedAtMs));
  return yes(await sheetOf(desk.port, { entry, kept: true, before, after }));
}

/** Before there are stocks nothing can flow; the opening itself, and what was entered wrongly, can be entered. */
function mayBegin(request: LogRequest): boolean {
  if (request.what === 'kind') return request.kind === 'code-set';
  if (request.what === 'told') return request.kind === 'opening' || request.kind === 'note';
  return request.what === 'undo' || request.what === 'correct';
}

/** A slip in what was typed is bad input; a rule that says no is a refusal. */
function problemOf(findings: readonly { readonly code: string }[]): Problem {
  const refusals = new Set(['intention-refused', 'second-needed', 'second-is-first', 'day-closed']);
  return findings.some((finding) => refusals.has(finding.code)) ? 'refused' : 'bad input';
}

/** Null where the offices are those of the outpost file; else what is wrong with them. */
export function knownOffice(fold: Fold, moment: Moment): Answer<never> | null {
  const offices = [...fold.index.offices.keys()];
  const unknown = [moment.by, ...(moment.second === undefined ? [] : [moment.second.office])].find(
    (office) => !offices.includes(office),
  );
  return unknown === undefined
    ? null
    : no('bad input', deskFinding('office-unknown', { office: unknown.slice(0, 60), offices }));
}

/** A second line for one day is asked about: the first may be corrected or undone. */
async function lineTwice(desk: Desk, draft: AnyDraft) {
  if (draft.kind !== 'day-line' || draft.happened !== undefined) return [];
  const opened = await desk.account();
  if (!opened.ok) return [];
  const { lastLineMs, openingMs, dayRule } = opened.value.fold;
  if (lastLineMs === null || lastLineMs === openingMs) return [];
  const day = dayOf(lastLineMs, dayRule);
  return dayOf(draft.happenedAtMs, dayRule) === day ? [deskFinding('day-line-kept', { day, ref: null })] : [];
}

/** What a dose makes of what is in the water already, by the results in the book. */
async function doseTooMuch({ desk, fold, presentMs }: Context, draft: AnyDraft): Promise<readonly Finding[]> {
  if (draft.kind !== 'dose' || draft.happened !== undefined) return [];
  const storage = await desk.storage();
  if (!storage.ok) return [];
  const position = positionOf(fold, Math.max(presentMs, fold.lastEntryMs ?? presentMs));
  return doseRules(fold, draft, standingStores(position, storage.value));
}

async function wouldBe(context: Context, draft: AnyDraft, before: Position): Promise<KeptSheet> {
  const { desk, fold } = context;
  const entry = await entryToBe(desk, draft);
  const after = positionOf(await foldWith(context, entry), Math.max(context.presentMs, entry.happenedAtMs));
  return sheetOf(desk.port, { entry, kept: false, before, after: { ...after, dayRule: fold.dayRule } });
}

async function sheetOf(
  port: BookPort,
  what: { entry: AnyEntry; kept: boolean; before: Position; after: Position },
): Promise<KeptSheet> {
  const { entry, kept, before, after } = what;
  const old = new Map(before.stores.map((store) => [store.facts.id, store]));
  const litres = (mg: number) => mg / after.mgPerL;
  const stores = after.stores.flatMap((store): KeptSheet['stores'][number][] => {
    const was = old.get(store.facts.id);
    // A reading of one store moves its neighbours by a hair: only what a person would see is told.
    if (was !== undefined && printed(was, after.mgPerL) === printed(store, after.mgPerL)) return [];
    return [
      {
        before: was === undefined ? null : { valueL: litres(was.massMg), u95L: litres(2 * was.uMg) },
        after: { id: store.facts.id, valueL: litres(store.massMg), u95L: litres(2 * store.uMg) },
      },
    ];
  });
  const refs = await refsIn(port, [entry]);
  return {
    kept,
    line: bookLine(entry, {
      dayRule: after.dayRule,
      mgPerL: after.mgPerL,
      instruments: after.index.instruments,
      ...refs,
    }),
    stores,
    // An opening tells of every store what it is; it stands in its own line.
    became: entry.kind === 'opening' ? [] : becameIn({ kept, before, after }),
    cover: coverChanges(before, after),
    findings: askedAbout({ before, after }, entry.id),
  };
}

/** What water became another: the label that everybody reads from now on, and what holds it back. */
function becameIn({
  kept,
  before,
  after,
}: {
  kept: boolean;
  before: Position;
  after: Position;
}): readonly string[] {
  const old = new Map(before.stores.map((store) => [store.facts.id, store]));
  return after.stores.flatMap((store) => {
    const was = old.get(store.facts.id);
    return becameInWords({
      store: store.facts.id,
      kept,
      was: was === undefined ? null : { grade: was.grade, why: notFreeBecause(before, was) },
      is: {
        grade: store.grade,
        why: notFreeBecause(after, store),
        hold: store.hold?.hold ?? store.conditional?.hold ?? null,
      },
    });
  });
}

/** What is asked about an entry is asked when it is made, and what a store stands at since; what is merely good to know stands in *Today*. */
function askedAbout(
  { before, after }: { readonly before: Position; readonly after: Position },
  entry: string,
): KeptSheet['findings'] {
  const stood = new Set(before.findings.filter(isStanding).map(standingName));
  return after.findings
    .filter(
      (finding) =>
        (finding.where.entry === entry && finding.severity !== 'know' && !isNoDraw(after, finding)) ||
        (isStanding(finding) && !stood.has(standingName(finding))),
    )
    .map((finding) => wordOf(after, finding));
}

/** A draw that prints as nothing. */
function isNoDraw({ mgPerL }: Position, finding: AccountFinding): boolean {
  return finding.code === 'reserve-drawn' && drawnMgOf(finding) < NOTHING_L * mgPerL;
}

const isStanding = ({ code }: AccountFinding) => code === 'negative-stock' || code === 'stands-over-capacity';
const standingName = ({ code, where }: AccountFinding) => `${code} ${where.store ?? ''}`;

function printed(stock: { massMg: number; uMg: number }, mgPerL: number): string {
  return formatFigure(
    { value: stock.massMg / mgPerL, u95: (2 * stock.uMg) / mgPerL, unit: 'L' },
    { style: 'plain' },
  );
}

function coverChanges(before: Position, after: Position): KeptSheet['cover'] {
  return coveredGrades(after).flatMap((grade) => {
    const beforeQ05 = coverOf(before, grade).q05;
    const afterQ05 = coverOf(after, grade).q05;
    const same =
      beforeQ05 === afterQ05 ||
      (beforeQ05 !== null && afterQ05 !== null && Math.abs(afterQ05 - beforeQ05) < TOLD_DAYS);
    return same ? [] : [{ grade, beforeQ05, afterQ05 }];
  });
}
