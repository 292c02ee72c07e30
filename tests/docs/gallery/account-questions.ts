// Table of entries that are asked about: figures, times, orders and stores that do not fit what an outpost does.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import { at, dayLine, litres, type Told } from '../../journeys/told.ts';
import type { Samples } from './sample.ts';
import { toldSample } from './told-entries.ts';

const whole = (day: number, more: Readonly<Record<string, number>> = {}) => ({
  condensate: (990 + 3.4 * day) % 1000,
  product: 3.26,
  strokes: 216,
  flushes: 12,
  ...more,
});
const line = (told: Told, day: number, more: Readonly<Record<string, number>> = {}) =>
  told.goTo(day, 21).tell('day-line', dayLine(day, whole(day, more)));
const run = (told: Told, day: number, hour: number, minutes: number, valueL = 4) => {
  const body = { from: 'R1', to: 'C-03', amount: litres(valueL), hose: 'H-1', flowMinutes: minutes };
  return told.goTo(day, hour + minutes / 60).tell('movement', { ...body, startAtMs: at(day, hour) });
};
const ground = { by: 'planner', source: 'copied on the ground' };

export const questionSamples = {
  'amount-implausible': toldSample(
    'amount-implausible',
    'An amount is far from what the source has, what the hose passes, or what is usual here; the reading that would fit is named.',
    (told) => told.goTo(1).tell('movement', { from: 'C-04', to: 'C-03', amount: litres(55) }),
    (told) => {
      for (const hour of [9, 10, 11]) run(told, 1, hour, 3);
      run(told, 1, 13, 3, 40);
    },
    (told) => line(told, 1, { strokes: 2160 }),
    (told) => line(told, 1, { product: 0.326 }),
    (told) =>
      told.goTo(1).tell('push', {
        from: [{ store: 'W-01', amount: litres(1.2) }],
        to: [{ store: 'W-02', amount: litres(12) }],
        amount: litres(1.2),
      }),
  ),
  'reading-implausible': toldSample(
    'reading-implausible',
    'A content is read that the store cannot hold, or that is off by a point, a unit or a sign.',
    (told) => told.goTo(1).tell('weigh', { store: 'C-04', amount: litres(181), method: 'balance' }),
    (told) =>
      told.goTo(1, 12).tell('declared-empty', {
        store: 'C-01',
        port: 'tap feed',
        residual: litres(6, 0.2),
        counters: [],
      }),
  ),
  'counter-replaced': toldSample(
    'counter-replaced',
    'A running total fell to where a new counter would stand, and no entry says that it was replaced.',
    (told) => {
      told.goTo(1, 21).tell('day-line', dayLine(1, whole(1, { condensate: 993 })));
      told.goTo(2, 21).tell('day-line', dayLine(2, whole(2, { condensate: 996 })));
      for (let day = 3; day <= 5; day++)
        told.goTo(day, 21).tell('day-line', dayLine(day, whole(day, { condensate: 3 * day - 10 + 10 })));
      told.goTo(6, 21).tell('day-line', dayLine(6, whole(6, { condensate: 1.5 })));
    },
  ),
  'copy-proposed': toldSample(
    'copy-proposed',
    'A reading or a day line stands twice: typed twice, or copied by a source with another clock.',
    (told) => {
      told.goTo(1, 9).tell('weigh', { store: 'C-04', amount: litres(18.1), method: 'balance' });
      told.goTo(1, 14.5).tell('weigh', { store: 'C-04', amount: litres(18.1), method: 'balance' }, ground);
    },
    (told) => {
      told.goTo(1, 9).tell('hookup', { store: 'C-04', port: 'tap feed' });
      told.goTo(1, 9 + 1 / 60).tell('hookup', { store: 'C-04', port: 'tap feed' });
    },
  ),
  'time-implausible': toldSample(
    'time-implausible',
    'A time does not fit: a second day line, a line hours off, a flow that its hose cannot have had, counters of another hour.',
    (told) => {
      line(told, 1);
      told.goTo(1, 23).tell('day-line', dayLine(1, whole(1, { condensate: 993.5 })));
    },
    (told) => told.goTo(1, 9).tell('day-line', dayLine(1, whole(1))),
    (told) => {
      run(told, 1, 9, 15);
      run(told, 1, 9.1, 16);
    },
    (told) => {
      const body = { from: 'R1', to: 'C-03', amount: litres(4), hose: 'H-1', flowMinutes: 3 };
      told.goTo(1, 12).tell('movement', { ...body, startAtMs: at(1, 9) });
    },
    (told) => told.goTo(1, 9).tell('hookup', { store: 'C-04', port: 'tap feed' }, { enteredAtMs: at(2, 20) }),
  ),
  'order-impossible': toldSample(
    'order-impossible',
    'Two entries cannot both be true in this order.',
    (told) => {
      told.goTo(1, 9).tell('hookup', { store: 'C-04', port: 'tap feed' });
      told.goTo(1, 14).tell('declared-empty', { store: 'C-01', port: 'tap feed', counters: [] });
    },
    (told) =>
      told.goTo(1, 12).tell('movement', { from: 'R1', to: 'C-03', amount: litres(4), startAtMs: at(1, 13) }),
    (told) => told.goTo(1, 12).tell('hookup', { store: 'C-04', port: 'tap feed' }, { enteredAtMs: at(1, 9) }),
  ),
  'store-doubtful': toldSample(
    'store-doubtful',
    'Another store than the named one seems to be meant; those that would fit are named.',
    (told) => told.goTo(1, 9).tell('hookup', { store: 'C-03', port: 'tap feed' }),
    (told) => told.goTo(1, 9).tell('declared-empty', { store: 'C-04', port: 'tap feed', counters: [] }),
    (told) => told.goTo(1, 9).tell('movement', { from: 'R1', to: 'C-04', amount: litres(12) }),
    (told) => {
      told.goTo(1, 9).tell('sample', { store: 'C-04', sample: 'S-1', tests: ['TOC'] });
      told.goTo(1, 12).tell('result', { sample: 'S-1', store: 'C-01', values: [] });
    },
  ),
  'people-differ': toldSample(
    'people-differ',
    'A day line counts other people than arrivals and departures leave aboard.',
    (told) => told.goTo(1, 21).tell('day-line', dayLine(1, whole(1), 5)),
  ),
} satisfies Partial<Samples<AccountFindingCode>>;
