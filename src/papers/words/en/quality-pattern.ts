// English for the pattern over stores: how many of how many, against before, and what those share. No probability of a cause.
import type { ChanceStep, Count, Trait } from '../../../account/index.ts';
import type { Trend, TrendPattern } from '../../sheets/quality-trend.ts';
import { saidTold } from './quality-trend.ts';
import { counted, listed } from './said.ts';

const nbsp = '\u00A0';

/** Groups that are told; the others stand in `--json`. */
const MOST_GROUPS = 3;

const found: Readonly<Record<TrendPattern['stores'][number]['found'], string>> = {
  above: 'above',
  below: 'below',
  seen: 'seen',
  unclear: 'unclear',
  within: 'within',
  'not seen': 'not seen',
};

export function patternInWords({ pattern, patternDays, unit, place }: Trend): readonly string[] {
  if (pattern === null)
    return place.kind === 'everywhere' || place.kind === 'grade'
      ? [
          `Within the last ${counted(patternDays, 'day')} fewer than two stores were measured: no pattern to look for.`,
        ]
      : [];
  const { now, before, isByLimit, stores } = pattern;
  const what = isByLimit ? 'Beyond the limit' : 'Something seen';
  const head = `${what}: ${now.beyond} of the ${counted(now.of, 'store')} measured within ${counted(patternDays, 'day')}`;
  const bad = stores
    .filter(({ isBeyond }) => isBeyond)
    .map(
      ({ store, found: word, told, day }) =>
        `${store} ${found[word]} (${saidTold(told)}${nbsp}${unit}, Day${nbsp}${day})`,
    );
  const unclear = stores.filter((one) => one.found === 'unclear').map(({ store }) => store);
  return [
    `${head}${bad.length === 0 ? '' : `: ${listed(bad)}`}.`,
    ...(unclear.length === 0 ? [] : [`On neither side for sure: ${listed(unclear)}.`]),
    ...(before === null
      ? ['No store was measured before that: nothing to compare with.']
      : [
          `Before that: ${before.count.beyond} of ${counted(before.count.of, 'store')}. ${saidChance(before.chance)}`,
        ]),
  ];
}

/** What the bad ones share, the most unlikely by chance first; nothing where none is bad. */
export function sharedInWords({ pattern }: Trend): readonly string[] {
  if (pattern === null || pattern.now.beyond === 0) return [];
  const { groups, sharedByAll } = pattern;
  const lines = worthTelling(groups).map(
    ({ traits, inside, outside, chance }) =>
      `${ofMany(inside)} that ${saidTraits(traits)}, ${ofMany(outside)} others. ${saidChance(chance)}`,
  );
  const all =
    sharedByAll.length === 0 ? [] : [`All of them ${saidTraits(sharedByAll)}: that tells none apart.`];
  if (lines.length === 0)
    return [...all, 'Nothing that is known of their filling parts the bad from the good.'];
  return [...lines, ...all, 'Chance is told, not the cause: the more ways one looks, the more one finds.'];
}

/** What chance would hardly give; where there is none of that, the best one alone. */
function worthTelling(groups: TrendPattern['groups']): TrendPattern['groups'] {
  const telling = groups.filter(({ chance }) => chance > 1);
  return telling.length === 0 ? groups.slice(0, 1) : telling.slice(0, MOST_GROUPS);
}

const ofMany = ({ beyond, of }: Count): string => `${beyond} of ${of}`;

/** How often chance alone brings as many or more, if all were alike. */
export function saidChance(step: ChanceStep): string {
  return step === 1
    ? 'Chance alone brings as much in more than 1 of 10 such looks: not told apart from chance.'
    : `Chance alone brings as much in fewer than 1 of ${step} such looks.`;
}

const traitWords: Readonly<Record<Exclude<Trait['kind'], 'from' | 'by'>, (names: string) => string>> = {
  'filled on': (names) => `were filled on ${names}`,
  'brought by': (names) => `were brought by ${names}`,
  'stands in': (names) => `stand in ${names}`,
};

/** `came from FA by H-1 and stand in store rack`. */
export function saidTraits(traits: readonly Trait[]): string {
  const named = (kind: Trait['kind']) =>
    listed(traits.filter((trait) => trait.kind === kind).map(({ name }) => name));
  const [from, by] = [named('from'), named('by')];
  const way = `${from === '' ? '' : ` from ${from}`}${by === '' ? '' : ` by ${by}`}`;
  const others = (['filled on', 'brought by', 'stands in'] as const).flatMap((kind) =>
    named(kind) === '' ? [] : [traitWords[kind](named(kind))],
  );
  return listed([...(way === '' ? [] : [`came${way}`]), ...others]);
}
