// English for holds: why one is set, the ways out of it, what became of each place that its water touched.
import type { HoldLine, TouchFate } from '../../sheets/holds.ts';
import { saidLack } from './account/quality.ts';
import { counted, listed, saidValue } from './said.ts';
import { word } from './say.ts';
import { saidHoldReason } from './store-answer.ts';

interface Failing {
  readonly parameter: string;
  readonly value: number;
  readonly unit: string;
  readonly below?: boolean;
  readonly above?: boolean;
}

/** Kept with the hold: `SMP-03 with silver 0.03 mg/L, plate count 140 CFU/mL`. */
export function holdReason(sample: string, failing: readonly Failing[]): string {
  const said = failing.map(({ parameter, value, unit, below, above }) => {
    const sign = below === true ? '<' : above === true ? '>' : '';
    return `${parameter} ${sign}${saidValue(value, unit).replaceAll('\u00A0', ' ')}`;
  });
  return said.length === 0 ? sample : `${sample} with ${said.join(', ')}`;
}

export interface Way {
  readonly act: string;
  readonly text: string;
  readonly command: string;
}

const named = (stores: readonly string[]): string => stores.map(word).join(' ');

/** Every way out of a hold, the best evidence first. */
export function holdWays(hold: HoldLine, twoPersons: ReadonlySet<string>): readonly Way[] {
  if (!hold.open) return [];
  const name = word(hold.hold);
  const stores = hold.stores.filter(({ as }) => as !== 'waived');
  const ready = stores.filter(({ lacks }) => lacks.length === 0).map(({ store }) => store);
  const lacking = stores.filter(({ lacks }) => lacks.length > 0);
  const held = stores.filter(({ as }) => as === 'hold').map(({ store }) => store);
  const second = (act: string) => (twoPersons.has(act) ? ' --second OFFICE' : '');
  const [first = 'STORE'] = lacking.map(({ store }) => store);
  return [
    ...(ready.length === 0
      ? []
      : [
          {
            act: 'release',
            text: `Nothing is lacking for ${listed(ready)}: the medic can release ${ready.length === 1 ? 'it' : 'them'}.`,
            command: `waterwright hold release ${name} ${named(ready)} --by medic`,
          },
        ]),
    ...(lacking.length === 0
      ? []
      : [
          {
            act: 'sample',
            text: `A sample that passes would prove ${listed(lacking.map(({ store }) => store))}.`,
            command: `waterwright sample add ${named(lacking.map(({ store }) => store))}`,
          },
        ]),
    ...(held.length === 0
      ? []
      : [
          {
            act: 'downgrade',
            text: 'As water of a lower grade it may be used at once; it does not come back but by a treatment.',
            command: `waterwright hold downgrade ${name} ${word(held.includes(first) ? first : (held[0] ?? 'STORE'))}`,
          },
          {
            act: 'waive',
            text: 'For a time, as it is, by a named waiver: the water gets no better by it.',
            command: `waterwright hold waive ${name} STORE --until DAY --reason REASON${second('waiver')}`,
          },
        ]),
    {
      act: 'park',
      text: 'It stays held, and somebody looks after it until a day.',
      command: `waterwright hold park ${name} --owner OFFICE --until DAY`,
    },
  ];
}

export const fates: Readonly<Record<TouchFate, string>> = {
  hold: 'HOLD',
  conditional: 'CONDITIONAL',
  'not held': 'not held',
  waste: 'waste, not held',
  gone: 'not aboard any more',
  'none left': 'nothing left in it',
  'in the hose': 'in the hose',
  used: 'went there',
};

const openings: ReadonlyMap<string, string> = new Map([
  ['clean result', 'the last result that passed'],
  ['release', 'its last release'],
  ['filling began', 'it was filled'],
  ['first told', 'it came aboard'],
  ['book began', 'the book begins'],
]);

export const holdLabels = {
  willHold: 'THIS WILL HOLD',
  wouldHold: 'WHAT ITS WATER TOUCHED',
  waits: 'WAITS FOR IT',
  waysOut: 'WAYS OUT',
  origins: 'WHERE THE WATER CAME FROM',
  drank: 'WHO DRANK OF IT: for the medic alone',
  none: 'No store is on hold.',
  next: 'One of them whole, with the ways out: waterwright hold show HOLD.',
  nobodyDrank: 'Nobody drank of it.',
  notTold: 'nobody named',
  guessed: (sample: string): string => `The hold names no sample; it most likely rests on ${sample}.`,
  noTrace: 'No sample is named, so that nothing can be followed from it.',
  ended: 'Nothing is on this hold any more.',
  drunk: (litres: string, since: number, until: number): string =>
    `People drank ${litres} of it ${since === until ? `on Day\u00A0${since}` : `from Day\u00A0${since} to Day\u00A0${until}`}. Who did is for the medic: hold show HOLD --drank.`,
  sum: (stores: number, volume: string): string => `${counted(stores, 'store')}, ${volume}`,
  touchedWaits: (volume: string): string => `CONDITIONAL: ${volume}`,
  parked: (owner: string, until: string, over: boolean): string =>
    `Parked with ${owner} until ${until}${over ? ', which is over' : ''}.`,
  leftFree: (stores: readonly string[]): string => `Left free: ${listed(stores)}.`,
  window: (store: string, opened: string, since: string, until: string): string =>
    `All water of ${store} counts as suspect from when ${openings.get(opened) ?? opened}, ${since}, to ${until}.`,
  cut: (store: string, how: 'clean result' | 'release', at: string, ref: string, cleared: string): string =>
    `${store}: ${how === 'release' ? 'released' : 'a result that passed'} ${at} (${ref}) cleared ${cleared}.`,
  /** What was only tried has not happened yet. */
  free: (isAhead: boolean, grade: string, before: string, after: string): string =>
    `Free ${grade} water: ${fromTo(isAhead, before, after)}.`,
  cover: (isAhead: boolean, grade: string, before: string, after: string): string =>
    `Cover of ${grade} water: ${fromTo(isAhead, before, after)}, in 19 of 20 outcomes.`,
  waitsFor: (grade: string, volume: string, days: string | null): string =>
    `${grade}: ${volume}${days === null ? '' : `, ${days} of use`}`,
  hold: (name: string, since: string, reason: string): string =>
    `HOLD ${name} since ${since}: ${saidHoldReason(reason)}`,
  asks: 'To hold all of it: --hold all. Fewer: --hold only STORE … with --reason and --second. Without a word nothing is written.',
  columns: {
    store: 'STORE',
    mark: 'MARK',
    water: 'ALL ITS WATER',
    suspect: 'OF IT SUSPECT L',
    share: 'SHARE',
    came: 'CAME',
    way: 'BY WHICH WAY',
    lacks: 'LACKS',
    hold: 'HOLD',
    since: 'SINCE',
    stores: 'STORES',
    reason: 'WHY',
    when: 'WHEN',
    who: 'WHO',
    from: 'FROM',
    drank: 'DRANK L',
    ref: 'ENTRY',
    volume: 'VOLUME L',
  },
} as const;

function fromTo(isAhead: boolean, before: string, after: string): string {
  return isAhead ? `${before} now, ${after} then` : `${after} (before ${before})`;
}

/** `plate count and silver were not measured`: what is lacking alike is said once. */
export function saidLacks(lacks: readonly string[]): string {
  if (lacks.length === 0) return 'nothing';
  const byCode = new Map<string, string[]>();
  for (const lack of lacks) {
    const at = lack.indexOf(': ');
    const [parameter, code] = at < 0 ? ['', lack] : [lack.slice(0, at), lack.slice(at + 2)];
    // Two rows of one parameter lack the same.
    const known = byCode.get(code) ?? [];
    if (!known.includes(parameter)) byCode.set(code, [...known, parameter]);
  }
  return [...byCode].map(([code, parameters]) => saidLackOf(parameters, code)).join('; ');
}

/** One lack of several parameters, in the number that it has. */
function saidLackOf(parameters: readonly string[], code: string): string {
  const [first = ''] = parameters;
  if (first === '') return saidLack(code);
  const said = saidLack(`${first}: ${code}`).slice(first.length + 1);
  return `${listed(parameters)} ${parameters.length === 1 ? said : inPlural(said)}`;
}

function inPlural(said: string): string {
  return said
    .replace(/^was /, 'were ')
    .replace(/^is /, 'are ')
    .replace(/^has /, 'have ')
    .replace(/^contradicts itself/, 'contradict themselves')
    .replace(/ its /, ' their ')
    .replace(/limit$/, 'limits');
}
