// Controls for the oracles: no answer, no points, a refusal and an unseen control count as failed.
import { expect, test } from 'vitest';
import type { Oracle } from '../../tests/oracles/oracle.ts';
import { askScript } from './ask-script.ts';
import { hold, pointsOf } from './hold.ts';
import { oracleParts, partOf } from './oracle-parts.ts';

const doubled: Oracle<{ x: number }> = {
  subject: 'twice',
  against: 'a sum',
  answers: { of: ({ x }) => x + x },
  count: 20,
  point: (chance) => ({ x: 1 + chance.uniform() }),
  ours: ({ x }) => 2 * x,
  tolerance: { rel: 1e-15 },
  because: 'doubling is exact',
  control: { is: 'three times', wrong: ({ x }) => 3 * x },
};

const countsOf = async (oracle: Oracle): Promise<string> => {
  const [part] = await oracleParts([oracle], { seed: 1, areAll: false });
  return `${part?.passed} ${part?.failed}`;
};

test('a function that agrees passes twice: itself and its control', async () => {
  expect(await countsOf(doubled)).toBe('2 0');
  expect(hold(doubled, [{ x: 3 }], [6])).toEqual({ points: 1, digits: 16, faults: [], controlSeen: 1 });
});

test('digits are those of the worst point, and the worst fault stands first', () => {
  const held = hold(doubled, [{ x: 3 }, { x: 3 }, { x: 3 }], [6.006, 6, 7]);
  expect(held.digits).toBeCloseTo(0.845, 3);
  expect(held.faults).toEqual(['{"x":3}: ours 6, theirs 7', '{"x":3}: ours 6, theirs 6.006']);
});

test.each<[string, Partial<Oracle<{ x: number }>>]>([
  ['a wrong function', { ours: ({ x }) => 2 * x + 1e-9 }],
  ['a function that gives NaN', { ours: () => Number.NaN }],
  [
    'a function that refuses',
    {
      ours: () => {
        throw new RangeError('beyond');
      },
    },
  ],
  [
    'an oracle that fails',
    {
      answers: {
        of: () => {
          throw new Error('beyond');
        },
      },
    },
  ],
  ['more values than were asked', { ours: ({ x }) => [2 * x, 1] }],
  ['no values at all', { ours: () => [], answers: { of: () => [] } }],
  ['a control that is right', { control: { is: 'the same', wrong: ({ x }) => 2 * x } }],
])('%s is found out', async (_, change) => {
  expect(await countsOf({ ...doubled, ...change })).not.toBe('2 0');
});

test('no point is a failure', async () => {
  expect(partOf(doubled, hold(doubled, [], []), 1)).toMatchObject({ passed: 0, failed: 2 });
  const parts = await oracleParts([{ ...doubled, count: 0 }], { seed: 1, areAll: false });
  expect(parts.map(({ failed }) => failed)).toEqual([2, 1]);
});

test('all oracles together have to ask two thousand points', async () => {
  const lastOf = async (count: number) =>
    (await oracleParts([{ ...doubled, count }], { seed: 1, areAll: true })).at(-1);
  expect(await lastOf(1999)).toMatchObject({ passed: 0, failed: 1 });
  expect(await lastOf(2000)).toMatchObject({ passed: 1, failed: 0 });
});

test('points are those of the seed and of the subject', () => {
  expect(pointsOf(doubled, 1)).toEqual(pointsOf(doubled, 1));
  expect(pointsOf(doubled, 1)).not.toEqual(pointsOf(doubled, 2));
  expect(pointsOf(doubled, 1)).not.toEqual(pointsOf({ ...doubled, subject: 'thrice' }, 1));
});

test('a script that is not there answers every question with its fault', () => {
  const answers = askScript('nowhere.py', [
    { ask: 'x', point: { x: 1 } },
    { ask: 'x', point: { x: 2 } },
  ]);
  expect(answers).toHaveLength(2);
  for (const answer of answers)
    expect(answer).toHaveProperty('fault', expect.stringContaining('nowhere.py gave 0'));
});
