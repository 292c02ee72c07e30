// English for the fitness of a store's water: who released what, when and until when; never that it is fit to drink.
import type { StoreQuality } from '../../sheets/store-quality.ts';
import { counted, listed } from './said.ts';
import { saidHoldReason } from './store-answer.ts';

const CERTIFICATE = 'loader\u2019s certificate';

type Facts = Omit<StoreQuality, 'words'>;

/** The sentences; the first says what it is. */
export function storeQualityWords(
  facts: Facts,
  { grade, emptied }: { readonly grade: string | null; readonly emptied: boolean },
): readonly string[] {
  const said = [
    ...facts.holds.map(({ hold, since, reason, parked }) => {
      const kept = parked === null ? '' : `; parked with ${parked.owner} until ${parked.until}`;
      return `Do not use it: HOLD ${hold} since ${since} (${saidHoldReason(reason)})${kept}.`;
    }),
    ...(facts.conditional === null
      ? []
      : [
          `CONDITIONAL, for an emergency only: ${facts.conditional.hold} since ${facts.conditional.since} (${saidHoldReason(facts.conditional.reason)}).`,
        ]),
    ...facts.waived.map(({ hold, by, second, reason, until }) => {
      const who = second === null ? `${by} alone` : `${by} and ${second}`;
      return `WAIVED by ${who} until ${until}: the hold ${hold} stands again then. Because: ${reason}.`;
    }),
    ...releasedWords(facts),
    ...(facts.treated === null ? [] : [treatedWords(facts.treated)]),
    ...(facts.downgraded === null
      ? []
      : [
          `Downgraded from ${facts.downgraded.fromGrade} to ${grade ?? 'no known grade'} ${facts.downgraded.at} by ${facts.downgraded.by} (${facts.downgraded.ref}).`,
        ]),
  ];
  if (said.length > 0 || emptied) return said;
  return [onWord.get(facts.onWordOf) ?? 'Not released: no result.'];
}

function releasedWords({ released, word, onWordOf }: Facts): readonly string[] {
  if (released === null) return [];
  const { by, at, samples, until, over } = released;
  if (onWordOf !== 'own sample' && onWordOf !== CERTIFICATE) return [];
  if (onWordOf === CERTIFICATE)
    return [
      `On the ${onWordOf} since ${at}, until the outpost\u2019s own sample is back; not released for the reserve.`,
    ];
  const on =
    samples.length === 0 ? '' : ` (${samples.length === 1 ? 'sample' : 'samples'} ${shortList(samples)})`;
  const end = until === null ? '' : `, until ${until}`;
  const last = over ? ' That is over.' : word === 'RELEASED' ? ' Nothing in the book speaks against it.' : '';
  return [`Released by ${by} ${at}${on}${end}.${last}`];
}

const MOST = 6;
function shortList(names: readonly string[]): string {
  return names.length <= MOST
    ? listed(names)
    : `${names.slice(0, MOST).join(', ')} and ${counted(names.length - MOST, 'more', 'more')}`;
}

function treatedWords({ at, biocide, countsFrom }: NonNullable<Facts['treated']>): string {
  const what = biocide === null ? 'Treated by a recipe of the outpost' : `Dosed with ${biocide}`;
  return `${what} ${at}${countsFrom === at ? '' : `; a sample counts from ${countsFrom}`}.`;
}

const onWord: ReadonlyMap<string, string> = new Map([
  ['own sample', 'Released on a sample of the outpost.'],
  ['made here', 'Made by the outpost itself; no release of its own is in the book.'],
  ['opening', 'Taken over with the opening of the book; no release of its own is in the book.'],
  [
    'loader\u2019s certificate',
    'On the loader\u2019s certificate until the outpost\u2019s own sample is back; not released for the reserve.',
  ],
  ['none', 'Not released: no result.'],
]);

/** In a column: `own sample, until Day 98 16:20 UTC`. */
export function shortWord({ onWordOf, released }: Pick<StoreQuality, 'onWordOf' | 'released'>): string {
  const until =
    released?.until == null ? '' : `, ${released.over ? 'over since' : 'until'} ${released.until}`;
  return `${onWordOf === 'none' ? '' : onWordOf}${until}`;
}
