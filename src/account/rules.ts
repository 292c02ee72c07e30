// What may flow into what: the same rules refuse an intention at the desk and speak about a fact in the account.
import type { OutpostIndex } from '../outpost/index.ts';
import type { AccountFindingCode } from './finding-codes.ts';
import { ranDry, type StoreState } from './store-state.ts';

export interface RuleBreak {
  readonly code: Extract<
    AccountFindingCode,
    | 'biocides-meet'
    | 'grade-may-not-flow'
    | 'reserve-unreleased'
    | 'held-water-moved'
    | 'conditional-water-moved'
  >;
  readonly data: Readonly<Record<string, string | null>>;
}

/** What a rule needs to know of an end of a flow. */
export type Side = Pick<
  StoreState,
  'grade' | 'emptied' | 'setAside' | 'biocides' | 'release' | 'hold' | 'conditional' | 'facts'
>;

/** Grade of what is in the receiving store afterwards: the worse of the two, or null where either water is of no known grade. Waste stays waste. */
export function gradeAfter(index: OutpostIndex, from: Side, to: Side): string | null {
  const waste = [from, to].find(({ grade }) => grade !== null && index.grades.get(grade)?.terminal === true);
  if (waste !== undefined) return waste.grade;
  if (from.grade === null) return null;
  if (to.grade === null) return ranDry(to) ? from.grade : null;
  const rank = (id: string) => index.grades.get(id)?.rank ?? 0;
  return rank(to.grade) > rank(from.grade) ? to.grade : from.grade;
}

/** Biocides that come with water of a grade out of a store: its own, and those that the store has met. */
export function biocidesIn(index: OutpostIndex, side: Side): readonly string[] {
  const own = side.grade === null ? 'none' : (index.grades.get(side.grade)?.biocide ?? 'none');
  return own === 'none' ? side.biocides : withAll(side.biocides, [own]);
}

/** A list with more names in it; the same list where all of them are in it already, as they nearly always are. */
export function withAll(names: readonly string[], more: readonly string[]): readonly string[] {
  return more.every((name) => names.includes(name)) ? names : [...new Set([...names, ...more])];
}

/** All rules that a flow from one store into another breaks. */
export function ruleBreaks(index: OutpostIndex, from: Side, to: Side): readonly RuleBreak[] {
  return [
    ...biocideBreaks(index, from, to),
    ...gradeBreaks(index, from, to),
    ...reserveBreaks(index, from, to),
    ...holdBreaks(index, from, to),
    ...conditionalBreaks(index, from, to),
  ];
}

function biocideBreaks(index: OutpostIndex, from: Side, to: Side): RuleBreak[] {
  const there = biocidesIn(index, to);
  for (const comes of biocidesIn(index, from)) {
    const enemy = there.find(
      (other) => mustNotMeet(index, comes, other, ranDry(to)) || mustNotMeet(index, other, comes, ranDry(to)),
    );
    if (enemy !== undefined) {
      const data = {
        from: from.facts.id,
        to: to.facts.id,
        comes,
        meets: enemy,
        residue: ranDry(to) ? 'residue' : 'content',
      };
      return [{ code: 'biocides-meet', data }];
    }
  }
  return [];
}

/** Said of one of the two it holds both ways; in the rest of an emptied store only where the file says so. */
function mustNotMeet(index: OutpostIndex, biocide: string, other: string, inRest: boolean): boolean {
  const said = index.biocides.get(biocide);
  return said?.neverMeets.includes(other) === true && (!inRest || said.alsoInRemainder);
}

/** The first two biocides among some that never meet, or null. */
export function enemiesAmong(
  index: OutpostIndex,
  biocides: readonly string[],
): readonly [string, string] | null {
  for (const comes of biocides) {
    const meets = biocides.find((other) => mustNotMeet(index, comes, other, false));
    if (meets !== undefined) return [comes, meets];
  }
  return null;
}

function gradeBreaks(index: OutpostIndex, from: Side, to: Side): RuleBreak[] {
  if (from.grade === null || to.grade === null) return [];
  const after = gradeAfter(index, from, to) ?? from.grade;
  const mayFlow = index.grades.get(from.grade)?.mayFlowInto ?? [];
  // Down to another grade of water, never to waste: what has held waste holds nothing else again.
  const goesToWaste = index.grades.get(after)?.terminal === true;
  const mayGoDown =
    ranDry(to) &&
    !goesToWaste &&
    !isWaste(index, to) &&
    index.outpost.policy.containersMayGoDown &&
    !isFixed(index, to);
  const receiving = mayGoDown ? after : to.grade;
  if (mayFlow.includes(receiving)) return [];
  return [
    {
      code: 'grade-may-not-flow',
      data: { from: from.facts.id, to: to.facts.id, fromGrade: from.grade, toGrade: to.grade },
    },
  ];
}

/** A store that the outpost file ties to one grade never goes down. */
function isFixed(index: OutpostIndex, side: Side): boolean {
  return index.stores.get(side.facts.id)?.holds !== undefined;
}

function reserveBreaks(index: OutpostIndex, from: Side, to: Side): RuleBreak[] {
  if (!to.facts.reserve || from.facts.reserve) return [];
  if (index.outpost.policy.deliveredWater?.releasedForReserveOnlyByOwnSample !== true) return [];
  if (from.release === 'own sample' || from.release === 'made here' || from.release === 'opening') return [];
  return [
    { code: 'reserve-unreleased', data: { from: from.facts.id, to: to.facts.id, release: from.release } },
  ];
}

function holdBreaks(index: OutpostIndex, from: Side, to: Side): RuleBreak[] {
  if (from.hold === null || isWaste(index, to)) return [];
  return [
    {
      code: 'held-water-moved',
      data: { from: from.facts.id, to: to.facts.id, hold: from.hold.hold, reason: from.hold.reason },
    },
  ];
}

/** Water for an emergency makes everything that it comes into water for an emergency. */
function conditionalBreaks(index: OutpostIndex, from: Side, to: Side): RuleBreak[] {
  if (from.conditional === null || isWaste(index, to)) return [];
  const { hold, reason } = from.conditional;
  if (to.conditional?.hold === hold) return [];
  return [{ code: 'conditional-water-moved', data: { from: from.facts.id, to: to.facts.id, hold, reason } }];
}

/** Nothing comes back from there, so nothing has to wait there. */
export function isWaste(index: OutpostIndex, side: Pick<Side, 'grade' | 'facts'>): boolean {
  const terminal = side.grade !== null && index.grades.get(side.grade)?.terminal === true;
  return terminal || side.facts.kind === 'wasteContainer';
}
