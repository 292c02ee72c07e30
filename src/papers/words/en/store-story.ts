// English for the past of a store: the family of its water, and its readings.
import type { FamilyNode } from '../../sheets/store-story.ts';

export const storyLabels = {
  family: 'WHERE ITS WATER CAME FROM',
  readings: 'READ, AGAINST WHAT WAS BELIEVED BEFORE',
  mass: 'MASS kg',
  share: 'SHARE',
  came: 'CAME',
  volume: 'VOLUME L',
  by: 'BY',
  entry: 'ENTRY',
  day: 'DAY',
  how: 'HOW',
  read: 'READ L',
  believed: 'BELIEVED L',
  difference: 'OFF BY L',
  /** What the bars of readings span. */
  span: (most: string): string => `\u2212${most} to +${most}`,
  familyNote:
    'By perfect mixing since it last stood at its usable remainder. Each ± is its part of the ± of the content; how surely the water mixed is not in it.',
  barNote: (signs: { readonly believed: string; readonly read: string; readonly middle: string }): string =>
    `Bars: ${signs.middle} what was believed, ${signs.believed} its ±; ${signs.read} the reading and its ±.`,
  noReadings: 'Nobody has read its content since it was first told: it is reckoned from what moved.',
  drawIt: (store: string): string =>
    `To draw it over the days: waterwright store show ${store} --svg -o FILE.svg.`,
} as const;

/** `FA`, `opening stock`, `delivery of Pannier 8`, `made here: cabin air`, `other, older`. */
export function saidPart({ kind, name }: Pick<FamilyNode, 'kind' | 'name'>): string {
  switch (kind) {
    case 'store':
      return name;
    case 'hose':
      return `hose of run ${name}`;
    case 'opening':
      return 'opening stock';
    case 'delivery':
      return `delivery of ${name}`;
    case 'came aboard':
      return 'in it when it came aboard';
    case 'older':
      return 'other, older';
    case 'pool':
      return pools.get(name) ?? name;
  }
}

const pools: ReadonlyMap<string, string> = new Map([
  ['cabin air', 'made here: cabin air'],
  ['electrolyser', 'made here: electrolyser'],
  ['people', 'from people'],
  ['ahead', 'reckoned ahead of its counter'],
  ['outside', 'from outside'],
  ['unplaced', 'from nobody knows where'],
  ['unaccounted', 'unaccounted'],
  ['lost', 'found again'],
]);

/** `Day 7`, `Days 3 to 41`. */
export function saidDayRange({ first, last }: { readonly first: number; readonly last: number }): string {
  return first === last ? `Day\u00A0${first}` : `Days\u00A0${first} to\u00A0${last}`;
}

/** `corrie 40`, `corrie 40 and 12 more`: the youngest of them. */
export function saidRefs(refs: readonly string[], count: number): string {
  const youngest = (refs[0] ?? '').replaceAll(' ', '\u00A0');
  return count > 1 ? `${youngest} and\u00A0${count - 1}\u00A0more` : youngest;
}

export function moreOf(older: number, store: string, history: number): string {
  const what = older === 1 ? '1\u00A0older entry names it' : `${older}\u00A0older entries name it`;
  return `${what}: waterwright store show ${store} --history ${history}.`;
}

export function olderReadings(older: number): string {
  return older === 1 ? '1\u00A0older reading is not shown.' : `${older}\u00A0older readings are not shown.`;
}
