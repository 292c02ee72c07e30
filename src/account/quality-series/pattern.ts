// Three of five positive: how many stores are beyond a limit within a time, against before, and what those share.
import { atLeastDrawn } from '../../ground/maths/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import type { LimitRow } from '../../outpost/index.ts';
import { againstLimits } from './against-limits.ts';
import type { MeasuredPoint } from './measured-point.ts';

/** How far back the pattern looks. Ours, no source: a month is what a keeper remembers. */
export const WINDOW_DAYS = 30;

/** Of a store with several results the worst counts; `seen` and `not seen` where no row is in force. */
export type StoreFound = 'above' | 'below' | 'seen' | 'unclear' | 'within' | 'not seen';
const WORST: readonly StoreFound[] = ['above', 'below', 'seen', 'unclear', 'within', 'not seen'];
const BEYOND: ReadonlySet<StoreFound> = new Set<StoreFound>(['above', 'below', 'seen']);

export interface StoreInPattern {
  readonly store: string;
  readonly found: StoreFound;
  readonly isBeyond: boolean;
  /** The result that it rests on: the youngest of the worst. */
  readonly point: MeasuredPoint;
}

export interface Count {
  readonly beyond: number;
  readonly of: number;
}

/** What the water of stores may share. */
export interface Trait {
  readonly kind: 'from' | 'by' | 'filled on' | 'brought by' | 'stands in';
  readonly name: string;
}

export interface SharedGroup {
  /** Several where the very same stores share several things: nobody can tell them apart. */
  readonly traits: readonly Trait[];
  readonly stores: readonly string[];
  readonly inside: Count;
  readonly outside: Count;
  readonly chance: ChanceStep;
}

/** How often chance alone gives as much: fewer than one in so many comparisons; 1: often. It is no probability of a cause. */
export type ChanceStep = 1 | 10 | 20 | 100 | 1000;

export interface Pattern {
  readonly stores: readonly StoreInPattern[];
  readonly now: Count;
  /** Of stores with results before the window; null where there were none. */
  readonly before: { readonly count: Count; readonly chance: ChanceStep } | null;
  /** What every store in it shares: nothing to compare with. */
  readonly sharedByAll: readonly Trait[];
  /** The one that chance would give least comes first. */
  readonly groups: readonly SharedGroup[];
}

export interface PatternAsked {
  readonly rows: readonly LimitRow[];
  readonly nowMs: number;
  readonly traitsOf: (point: MeasuredPoint) => readonly Trait[];
}

/** @param points of one parameter; those of sampling points and second figures are passed over */
export function patternOf(points: readonly MeasuredPoint[], asked: PatternAsked): Pattern | null {
  const sinceMs = asked.nowMs - WINDOW_DAYS * msPerDay;
  const ofStores = points.filter(({ store, duplicate }) => store !== null && !duplicate);
  const stores = worstOfEach(
    ofStores.filter(({ atMs }) => atMs > sinceMs && atMs <= asked.nowMs),
    asked.rows,
  );
  if (stores.length < 2) return null;
  const earlier = worstOfEach(
    ofStores.filter(({ atMs }) => atMs <= sinceMs),
    asked.rows,
  );
  const now = countOf(stores);
  const { sharedByAll, groups } = groupsOf(stores, asked.traitsOf);
  return {
    stores,
    now,
    before: compared(now, countOf(earlier)),
    sharedByAll,
    groups,
  };
}

function compared(now: Count, count: Count): Pattern['before'] {
  return count.of === 0 ? null : { count, chance: chanceStepOf(now, count) };
}

function worstOfEach(points: readonly MeasuredPoint[], rows: readonly LimitRow[]): readonly StoreInPattern[] {
  const worst = new Map<string, StoreInPattern>();
  for (const point of points) {
    const store = point.store ?? '';
    const found = foundOf(point, rows);
    const known = worst.get(store);
    if (known === undefined || WORST.indexOf(found) <= WORST.indexOf(known.found))
      worst.set(store, { store, found, isBeyond: BEYOND.has(found), point });
  }
  return [...worst.values()].sort((one, other) => (one.store < other.store ? -1 : 1));
}

function foundOf(point: MeasuredPoint, rows: readonly LimitRow[]): StoreFound {
  const against = againstLimits(point, rows);
  if (against !== 'no limit') return against;
  return point.censored !== 'below' && point.told.value > 0 ? 'seen' : 'not seen';
}

/** What is unclear counts in neither number. */
function countOf(stores: readonly StoreInPattern[]): Count {
  const clear = stores.filter(({ found }) => found !== 'unclear');
  return { beyond: clear.filter(({ isBeyond }) => isBeyond).length, of: clear.length };
}

/** Fisher's exact test, one-sided: as many or more among these, if all were alike. */
export function chanceStepOf(these: Count, others: Count): ChanceStep {
  const total = these.of + others.of;
  const marked = these.beyond + others.beyond;
  const tail = atLeastDrawn({ total, marked, drawn: these.of }, these.beyond);
  return ([1000, 100, 20, 10] as const).find((step) => tail < 1 / step) ?? 1;
}

function groupsOf(
  stores: readonly StoreInPattern[],
  traitsOf: PatternAsked['traitsOf'],
): Pick<Pattern, 'sharedByAll' | 'groups'> {
  const byMembers = new Map<string, Shared>();
  const singles = membersByTrait(stores, traitsOf);
  for (const shared of [...singles, ...pairsOf(singles)]) {
    const name = shared.members.map(({ store }) => store).join('\n');
    const known = byMembers.get(name);
    if (known === undefined) byMembers.set(name, shared);
    // Two things together say nothing new of stores that one of them alone picks out.
    else if (shared.traits.length === 1) byMembers.set(name, together(known, shared));
  }
  const all = [...byMembers.values()];
  const isAll = ({ members }: (typeof all)[number]) => members.length === stores.length;
  const groups = all.flatMap(({ traits, members }) => {
    const rest = stores.filter((one) => !members.includes(one));
    const [inside, outside] = [countOf(members), countOf(rest)];
    if (inside.beyond === 0 || inside.of < 2 || outside.of === 0) return [];
    const names = members.map(({ store }) => store);
    return [{ traits, stores: names, inside, outside, chance: chanceStepOf(inside, outside) }];
  });
  return { sharedByAll: all.filter(isAll).flatMap(({ traits }) => traits), groups: ranked(groups) };
}

/** Most unlikely by chance first; of equals the one with the larger share, then with more stores. */
function ranked(groups: readonly SharedGroup[]): readonly SharedGroup[] {
  const share = ({ beyond, of }: Count) => (of === 0 ? 0 : beyond / of);
  const excess = ({ inside, outside }: SharedGroup) => share(inside) - share(outside);
  return groups
    .filter((group) => excess(group) > 0)
    .sort(
      (one, other) =>
        other.chance - one.chance || excess(other) - excess(one) || other.inside.of - one.inside.of,
    );
}

interface Shared {
  readonly traits: readonly Trait[];
  readonly members: readonly StoreInPattern[];
}

const together = (one: Shared, other: Shared): Shared => ({
  ...one,
  traits: [...one.traits, ...other.traits],
});

/** Each thing that stores share. */
function membersByTrait(
  stores: readonly StoreInPattern[],
  traitsOf: PatternAsked['traitsOf'],
): readonly Shared[] {
  const found = new Map<string, { trait: Trait; members: StoreInPattern[] }>();
  for (const store of stores)
    for (const trait of traitsOf(store.point)) {
      const name = JSON.stringify([trait.kind, trait.name]);
      const known = found.get(name);
      if (known === undefined) found.set(name, { trait, members: [store] });
      else known.members.push(store);
    }
  return [...found.values()].map(({ trait, members }) => ({ traits: [trait], members }));
}

/** A source by one of its hoses, where others came from it another way and by that hose from elsewhere. */
function pairsOf(singles: readonly Shared[]): readonly Shared[] {
  const ofKind = (kind: Trait['kind']) => singles.filter(({ traits }) => traits[0]?.kind === kind);
  return ofKind('from').flatMap((source) =>
    ofKind('by').flatMap((hose) => {
      const members = source.members.filter((one) => hose.members.includes(one));
      return members.length === 0 ? [] : [{ traits: [...source.traits, ...hose.traits], members }];
    }),
  );
}
