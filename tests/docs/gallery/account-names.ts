// Table of entries that name what is not there, come twice, come late, or leave something open.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import { litres, readings, type Told } from '../../journeys/told.ts';
import type { Samples } from './sample.ts';
import { toldSample } from './told-entries.ts';

const fill = { from: 'R1', to: 'C-03', amount: litres(20.5) };
const copied = { by: 'planner', source: 'copied on the ground' };

export const nameSamples = {
  'store-unknown': toldSample(
    'store-unknown',
    'An entry names a store that is not aboard.',
    (told) => told.goTo(1).tell('movement', { from: 'C-04', to: 'C-O3', amount: litres(2) }),
    (told) => told.goTo(1).tell('weigh', { store: 'soft bag', amount: litres(2) }),
  ),
  'port-unknown': toldSample(
    'port-unknown',
    'A store was put on a port that the outpost does not have.',
    (told) => told.goTo(1).tell('hookup', { store: 'C-02', port: 'galley' }),
  ),
  'instrument-unknown': toldSample(
    'instrument-unknown',
    'A reading of a counter that nobody knows.',
    (told) => told.goTo(1).tell('meter', { readings: readings({ 'sink meter': 3 }) }),
  ),
  'run-unknown': toldSample('run-unknown', 'A run goes on whose start is not in the book.', (told) =>
    told.goTo(1).tell('run-finish', { run: 'T-9', amount: litres(5) }),
  ),
  'port-empty': toldSample('port-empty', 'Water was taken from a port on which nothing stands.', (told) => {
    told.goTo(1).tell('declared-empty', { store: 'C-01', port: 'tap feed', counters: [] });
    told.tell('movement', { from: 'tap feed', to: 'C-03', amount: litres(1) });
  }),
  'late-in-closed-day': toldSample(
    'late-in-closed-day',
    'An entry came after its day was closed.',
    (told) => {
      told.goTo(1, 22).tell('day-close', { day: 1, what: 'day', figures: [] });
      told
        .goTo(1, 14)
        .tell('movement', { from: 'R1', to: 'C-03', amount: litres(2) }, { late: 'found on paper' });
    },
  ),
  'duplicate-proposed': toldSample(
    'duplicate-proposed',
    'Two entries look like one act: by two clocks, by two people, or typed twice.',
    (told) => {
      told.goTo(1, 9).tell('movement', fill);
      told.goTo(1, 14.5).tell('movement', fill, copied);
    },
    (told) => {
      told.goTo(1, 9).tell('movement', fill);
      told.goTo(1, 9.3).tell('movement', fill, copied);
    },
    (told) => {
      told.goTo(1, 9).tell('movement', { from: 'C-04', to: 'W-02', amount: litres(2) });
      told.goTo(1, 9 + 1 / 60).tell('movement', { from: 'C-04', to: 'W-02', amount: litres(2) });
    },
  ),
  'unit-doubt': toldSample('unit-doubt', 'A note has an amount of water without its unit.', (told) =>
    told.goTo(1).tell('note', { text: 'water load 430' }, { by: 'chief' }),
  ),
  'refused-recorded': toldSample(
    'refused-recorded',
    'Somebody wrote down that a rule had stopped something.',
    (told) => told.goTo(1).tell('refused', { what: 'pour V-1 into C-04', rule: 'biocides must not meet' }),
  ),
  'unit-alarm': toldSample(
    'unit-alarm',
    'A unit is in alarm, or has failed.',
    (told) => condition(told, 'condenser', 'alarm'),
    (told) => told.goTo(1).tell('unit-condition', { unit: 'purifier', state: 'failed', readings: [] }),
  ),
} satisfies Partial<Samples<AccountFindingCode>>;

function condition(told: Told, unit: string, state: 'alarm' | 'failed'): void {
  const temperature = { name: 'temperature', value: 1.6, unit: '°C' };
  told.goTo(1).tell('unit-condition', { unit, state, readings: [temperature] });
}
