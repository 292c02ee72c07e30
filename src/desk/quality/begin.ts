// What every act about quality begins with: the book open, a known office, and a draft that no rule speaks against.
import type { AnyDraft, Body, Kind } from '../../book/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Context } from '../log/context.ts';
import { objections } from '../log/intention.ts';
import { knownOffice, problemOf } from '../log/log.ts';
import { makeDraft } from '../log/make.ts';
import type { RequestWith } from '../log/request.ts';

/** A kind with its body. */
export type MadeBody = { readonly [K in Kind]: { readonly kind: K; readonly body: Body<K> } }[Kind];

export async function beginAct(desk: Desk, moment: Moment): Promise<Answer<Context>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const office = knownOffice(fold, moment);
  if (office !== null) return office;
  if (fold.openingMs === null) return no('wrong use', deskFinding('book-not-begun', { what: 'opening' }));
  return yes({ desk, fold, moment, presentMs: desk.enteringMs(fold, moment) });
}

/** A draft of a body that the desk made, held against every rule of an intention. */
export async function draftOf(
  context: Context,
  made: MadeBody,
  more: RequestWith,
): Promise<Answer<AnyDraft>> {
  const draft = await makeDraft(context, { what: 'kind', ...made }, more);
  if (!draft.ok) return draft;
  const against = objections(context.fold, draft.value);
  return against.length > 0 ? no(problemOf(against), ...against) : draft;
}
