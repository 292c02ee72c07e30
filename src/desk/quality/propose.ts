// From a trace to a hold: which stores somebody wants to hold of those that are proposed, and the entry that says so.
import type { Body } from '../../book/index.ts';
import { holdReason } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { type Context, isSameName } from '../log/context.ts';
import type { Followed } from './hold-tree.ts';
import { nextNames } from './names.ts';
import type { QualityPast } from './past.ts';
import type { ResultFigure } from './read-figure.ts';

export interface HoldWord {
  /** All that is proposed, or only some of it. */
  readonly hold: 'all' | readonly string[];
  /** Why fewer are held than are proposed. */
  readonly reason?: string | undefined;
  /** Its name; absent: the next one of the series. */
  readonly name?: string | undefined;
}

export interface Because {
  readonly sample: string;
  /** Figures that fail. */
  readonly failing: readonly ResultFigure[];
}

export function proposedHold(
  context: Context,
  past: QualityPast,
  of: { readonly followed: Followed; readonly word: HoldWord; readonly because: Because },
): Answer<Body<'hold'>> {
  const { followed, word, because } = of;
  const { hold: all, conditional: touched } = followed.proposal;
  const chosen =
    word.hold === 'all' ? yes([...all, ...touched]) : chosenAmong([...all, ...touched], word.hold);
  if (!chosen.ok) return chosen;
  const leftFree = [...all, ...touched].filter((store) => !chosen.value.includes(store));
  const fewer = leftFree.length === 0 ? null : fewerNeeds(context, word.reason);
  if (fewer !== null) return fewer;
  const name = holdName(past, word.name);
  if (!name.ok) return name;
  const stores = all.filter((store) => chosen.value.includes(store));
  const conditional = touched.filter((store) => chosen.value.includes(store));
  return yes({
    hold: name.value,
    // A hold is on a store at least: where the reserve alone was touched, that is it.
    ...(stores.length > 0 ? { stores, conditional } : { stores: conditional, conditional: [] }),
    reason: holdReason(because.sample, because.failing),
    ...(leftFree.length > 0 && word.reason !== undefined && { also: word.reason }),
    sample: because.sample,
    ...(leftFree.length > 0 && { leftFree }),
  });
}

function chosenAmong(proposed: readonly string[], typed: readonly string[]): Answer<readonly string[]> {
  const chosen: string[] = [];
  for (const name of typed) {
    const store = proposed.find((one) => isSameName(one, name));
    if (store === undefined)
      return no(
        'bad input',
        deskFinding(
          'hold-not-proposed',
          { store: name.slice(0, 60), proposed },
          { where: { field: 'hold' } },
        ),
      );
    chosen.push(store);
  }
  return yes(chosen);
}

/** To leave free what a trace proposes takes a reason and a second person. */
function fewerNeeds({ moment }: Context, reason: string | undefined) {
  if (reason === undefined || reason.trim() === '') {
    const data = {
      field: 'reason',
      received: null,
      expected: 'why fewer stores are held than the trace proposes',
    };
    return no('wrong use', deskFinding('field-needed', data, { where: { field: 'reason' } }));
  }
  return moment.second === undefined
    ? no('refused', deskFinding('second-needed', { act: 'fewer held' }))
    : null;
}

/** A name is never used again: a release of the one would be read as one of the other. */
export function holdName({ holds }: QualityPast, typed: string | undefined): Answer<string> {
  const known = holds.map(({ body }) => body.hold);
  if (typed === undefined) return yes(nextNames({ series: known, first: 'Q-01', taken: [] }, 1)[0] ?? 'Q-01');
  const taken = known.find((name) => isSameName(name, typed));
  return taken === undefined
    ? yes(typed)
    : no('bad input', deskFinding('name-taken', { what: 'hold', name: taken }, { where: { field: 'name' } }));
}
