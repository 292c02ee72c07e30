// Table of water that stood too long, containers near their end, and tastes that came again.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import { formatShortStamp } from '../../../src/ground/units/index.ts';
import { entryInWords } from '../../../src/papers/index.ts';
import { holmSilver, type ToldStorage } from '../../journeys/holm-silver.ts';
import { litres, type Told } from '../../journeys/told.ts';
import { failure, type Sample, type Samples, sample } from './sample.ts';
import { failureOf, toldSample } from './told-entries.ts';

/** A finding about what stands, which is looked for when somebody asks. */
function stoodSample(code: AccountFindingCode, when: string, tell: (told: ToldStorage) => unknown): Sample {
  return sample(when, () => {
    const told = holmSilver();
    const opened = told.entries.length;
    tell(told);
    const { mgPerL, dayRule, index } = told.fold;
    const context = { mgPerL, dayRule, instruments: index.instruments };
    const given = told.entries
      .slice(opened)
      .map(
        (entry) =>
          `${formatShortStamp(entry.happenedAtMs, dayRule)}  ${entry.by}: ${entryInWords(entry, context)}`,
      );
    const asked = `${formatShortStamp(told.position().atMs, dayRule)}  asked: store show`;
    return failure([...given, asked], told.storageFindings(code).at(0), context);
  });
}

function filledOften(told: ToldStorage, times: number): void {
  for (let day = 1; day <= times; day += 1) {
    told.goTo(day).tell('movement', { from: 'R1', to: 'C-03', amount: litres(3) });
    told.goTo(day, 15).tell('movement', { from: 'C-03', to: 'people', amount: litres(2.8) });
    told.goTo(day, 16).tell('declared-empty', { store: 'C-03', counters: [] });
  }
}

const overdose = (more: { targetMgPerL?: number }) => (told: Told) =>
  told
    .goTo(2)
    .tell(
      'dose',
      { stores: ['C-04'], biocide: 'silver', doseEach: litres(0.1), ...more },
      { happened: 'it was poured before anybody looked' },
    );

export const storageSamples = {
  'dose-above-maximum': sample(
    'More biocide was dosed than the outpost allows: by what was meant, or by how strong the concentrate is.',
    () => failureOf('dose-above-maximum', overdose({ targetMgPerL: 2 }), holmSilver),
    () => failureOf('dose-above-maximum', overdose({}), holmSilver),
  ),
  'biocide-over-age': stoodSample(
    'biocide-over-age',
    'Biocide has been in water for longer than the outpost lets it count, and no rate of the wall is known.',
    (told) => {
      told
        .goTo(1)
        .tell('dose', { stores: ['R1'], biocide: 'silver', doseEach: litres(0.05), targetMgPerL: 0.2 });
      told.goTo(125);
    },
  ),
  'line-stood-too-long': stoodSample(
    'line-stood-too-long',
    'No water has gone through a port or a hose for longer than a biocide counts.',
    (told) => told.goTo(125),
  ),
  'container-life-near': stoodSample(
    'container-life-near',
    'A container has nine tenths of its fillings or its days behind it.',
    (told) => filledOften(told, 5),
  ),
  'container-life-over': stoodSample(
    'container-life-over',
    'A container has more fillings or days behind it than the outpost file allows.',
    (told) => filledOften(told, 6),
  ),
  'taste-repeated': toldSample(
    'taste-repeated',
    'Something was tasted or smelled twice within two weeks at one place.',
    (told) => {
      told.goTo(3).tell('taste', { point: 'tap', words: 'metallic', who: 'second', strength: 2 });
      told.goTo(9).tell('taste', { point: 'tap', words: 'like a coin' });
    },
  ),
} satisfies Partial<Samples<AccountFindingCode>>;
