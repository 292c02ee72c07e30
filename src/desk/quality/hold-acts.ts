// Acts on holds: each is looked at ahead, so that a rule says no before anything is kept.
import type { Fold } from '../../account/index.ts';
import type { AnyDraft } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import type { KeptSheet } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { type Drafts, keepTogether, lookAhead, sheetAhead } from '../log/keep-together.ts';
import type { RequestWith } from '../log/request.ts';
import { beginAct, draftOf } from './begin.ts';
import { actBodies } from './hold-bodies.ts';
import type { HoldAct } from './hold-request.ts';
import { qualityPast } from './past.ts';
import { refusals } from './refusals.ts';

export async function holdAct(
  desk: Desk,
  moment: Moment,
  request: HoldAct,
  more: RequestWith = {},
): Promise<Answer<KeptSheet>> {
  const begun = await beginAct(desk, moment);
  if (!begun.ok) return begun;
  const context = begun.value;
  const past = await qualityPast(desk.port, {});
  const isFact = more.happened !== undefined;
  const made = await actBodies(context, past, { request, isFact });
  if (!made.ok) return made;
  const office = isFact ? [] : officeRules(context.fold, moment.by, request);
  if (office.length > 0) return no('refused', ...office);
  const drafts: AnyDraft[] = [];
  for (const each of made.value) {
    const draft = await draftOf(context, each, drafts.length === 0 ? more : withoutCrew(more));
    if (!draft.ok) return draft;
    drafts.push(draft.value);
  }
  const all = drafts as unknown as Drafts;
  const ahead = await lookAhead(context, all);
  const against = isFact ? [] : refusals(ahead, request.act);
  if (against.length > 0) return no('refused', ...against);
  if (more.dryRun === true) return yes(await sheetAhead(context, ahead));
  return await keepTogether(context, all);
}

/** Minutes that were spent once are counted once. */
function withoutCrew({ minutes: _minutes, people: _people, ...rest }: RequestWith): RequestWith {
  return rest;
}

/** Only whom the outpost file names as the one who releases may do so, and take a result out of judgement. */
function officeRules({ index }: Fold, by: string, { act }: HoldAct): readonly Finding[] {
  if (act !== 'release' && act !== 'aside') return [];
  const may = index.outpost.people.filter(({ releases }) => releases).map(({ office }) => office);
  if (may.length === 0 || may.includes(by)) return [];
  return [deskFinding('intention-refused', { rule: 'releases', act, by, offices: may })];
}
