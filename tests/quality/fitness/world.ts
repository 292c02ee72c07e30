// The outposts and the sets of limits that random histories of quality go through.
import type { Body } from '../../../src/book/index.ts';
import { indexOutpost } from '../../../src/outpost/index.ts';
import { HOLM } from '../../journeys/holm.ts';
import { outpostOf } from '../../journeys/told.ts';

const DAYS_BEFORE_SAMPLE = 2;

/** Holm, with days between a treatment and its sample, and a recipe that is never allowed. */
const STRICT_HOLM = HOLM.replace('sampleAfterDays: 0', `sampleAfterDays: ${DAYS_BEFORE_SAMPLE}`).replace(
  'policy:\n',
  `  - { id: raw to drinking, allowed: false, from: raw, to: drinking, sources: raw water, neverHeld: [iodine, waste],
      thenHold: true, sampleAfterDays: 1, releasedBy: medic, minutesPerContainer: 30, secondPerson: true }
policy:
`,
);

/** One takes the loader's certificate, the other does not. */
export const OUTPOSTS = [
  STRICT_HOLM,
  STRICT_HOLM.replace('usableOnLoadersCertificate: true', 'usableOnLoadersCertificate: false'),
].map((text) => indexOutpost(outpostOf(text)));

type Sets = Body<'limits-chosen'>['sets'];
type Row = Sets[number]['rows'][number];

function row(parameter: string, unit: string, limit: Row['limit'], basis = 'as itself'): Row {
  return {
    ...{ id: `${parameter} row`, parameter, basis, unit, limit, remembered: null, evidence: 'policy' },
    ...{ exposure: 'any', source: 'outpost policy', locator: 'tests', cause: '', consequence: '' },
    ...{ firstAct: '', timeToActH: null, requiredFor: ['drink'], neededOf: 'every store', degassed: false },
    ...{ noneIfBelow: null, duplicatesWithinShare: null, note: '', typed: null },
  };
}

const silver = (atLeast: number, atMost: number): Row => row('silver', 'mg/L', { atLeast, atMost });
const plates = row('plate count', 'CFU/mL', { atMost: 50 });

/** As they are chosen in turn: as of old, less silver, carbon beside, a row that is off. */
export const CHOICES: Sets = [
  { set: 'own', name: 'own rules', rows: [silver(0.05, 0.4), plates] },
  { set: 'less silver', name: 'rules of less silver', rows: [silver(0, 0.1), plates] },
  { set: 'carbon', name: 'rules with carbon', rows: [plates, row('TOC', 'mg/L', { atMost: 3 }, 'as C')] },
  {
    set: 'off',
    name: 'rules with a row that is off',
    rows: [silver(0.05, 0.4), row('TOC', 'mg/L', null, 'as C')],
  },
];
