// Table of what the desk finds about beds and about figures of one sample.
import { bedList } from '../../../src/desk/index.ts';
import type { DeskFindingCode } from '../../../src/papers/index.ts';
import { holmWithBeds } from '../../journeys/holm-beds.ts';
import { draftOf, holmBook, keep } from '../../journeys/kept.ts';
import { at } from '../../journeys/told.ts';
import { deskOver, failed, NOW } from './asked-desk.ts';
import { type Samples, sample } from './sample.ts';

type Value = readonly [parameter: string, value: number, unit: string];

async function contradicted(given: string, values: readonly Value[]) {
  const port = await holmBook(holmWithBeds);
  const body = {
    sample: 'S-7',
    point: 'product',
    values: values.map(([parameter, value, unit]) => ({ parameter, value, unit })),
  };
  await keep(port, [draftOf('result', body, { atMs: at(1, 9), count: 90 })]);
  const sheet = await bedList(await deskOver(port), { kind: 'now' }, NOW);
  const finding = sheet.ok
    ? sheet.value.findings.find(({ code }) => code === 'figures-contradict')
    : undefined;
  if (finding === undefined) throw new Error(`nothing contradicts itself: ${given}`);
  return { given: [given], finding };
}

export const bedSamples = {
  'no-beds': sample('Beds were asked for where the outpost file tells of none.', async () =>
    failed(
      'no-beds',
      ['an outpost file whose purifier has no section beds, asked for its beds'],
      await bedList(await deskOver(await holmBook()), { kind: 'now' }, NOW),
    ),
  ),
  'figures-contradict': sample(
    'Figures of one sample cannot all be of one water.',
    () =>
      contradicted('result S-7 at product: calcium 40 mg/L, chloride 71 mg/L, conductivity 120 µS/cm', [
        ['calcium', 40, 'mg/L'],
        ['chloride', 71, 'mg/L'],
        ['conductivity', 120, 'µS/cm'],
      ]),
    () =>
      contradicted('result S-7 at product: calcium 40 mg/L, conductivity 60 µS/cm', [
        ['calcium', 40, 'mg/L'],
        ['conductivity', 60, 'µS/cm'],
      ]),
    () =>
      contradicted('result S-7 at product: calcium 40 mg/L, magnesium 5 mg/L, hardness 60 mg/L', [
        ['calcium', 40, 'mg/L'],
        ['magnesium', 5, 'mg/L'],
        ['hardness', 60, 'mg/L'],
      ]),
  ),
} satisfies Partial<Samples<DeskFindingCode>>;
