// Entering: read what was typed, ask the rules, keep it, and tell what it changed.
import { type Fold, positionOf } from '../../account/index.ts';
import type { AnyDraft } from '../../book/index.ts';
import { dayOf, type Finding } from '../../ground/units/index.ts';
import type { KeptSheet } from '../../papers/index.ts';
import { type Answer, no, type Problem, yes } from '../answer.ts';
import { doseRules } from '../biocide/dose-rules.ts';
import { standingStores } from '../biocide/standing-stores.ts';
import type { Desk, Moment } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { wordOf } from '../today.ts';
import { questionsBefore } from './ask-first.ts';
import type { Context } from './context.ts';
import { objections } from './intention.ts';
import { keepTogether, wouldKeep } from './keep-together.ts';
import { makeDraft } from './make.ts';
import type { LogRequest, RequestWith } from './request.ts';

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
  if (more.dryRun === true) {
    const sheet = await wouldKeep(context, [draft]);
    const before = positionOf(fold, context.presentMs);
    return yes({ ...sheet, findings: [...questions.map((one) => wordOf(before, one)), ...sheet.findings] });
  }
  if (questions.length > 0) return no('ask first', ...questions);
  return await keepTogether(context, [draft]);
}

/** Before there are stocks nothing can flow; the opening itself, and what was entered wrongly, can be entered. */
function mayBegin(request: LogRequest): boolean {
  if (request.what === 'kind') return request.kind === 'code-set';
  if (request.what === 'told') return request.kind === 'opening' || request.kind === 'note';
  return request.what === 'undo' || request.what === 'correct';
}

/** A slip in what was typed is bad input; a rule that says no is a refusal. */
export function problemOf(findings: readonly { readonly code: string }[]): Problem {
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
