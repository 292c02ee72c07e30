// What is heard of samples and results: method, place of making, basis, bounds, second figures.
import { expect, test } from 'vitest';
import type { AnyEntry } from '../../book/index.ts';
import { MeasuredWatch } from './measured-watch.ts';

const at = (day: number) => Date.UTC(2147, 2, day, 21);

test('what a result says of method, place of making, basis and sample is kept; a second figure is one', () => {
  const watch = new MeasuredWatch();
  const hear = (kind: string, body: unknown, day: number) =>
    watch.hear({ stores: new Map() }, {
      kind,
      body,
      id: `${kind} ${day}`,
      happenedAtMs: at(day),
    } as unknown as AnyEntry);
  hear('sample', { sample: 'S-1', point: 'tap', tests: [], drawnFrom: 'the long line' }, 2);
  hear('sample', { sample: 'S-2', point: 'tap', tests: [], duplicateOf: 'S-1' }, 2);
  const nitrate = { parameter: 'nitrate', value: 5, unit: 'mg/L' };
  const made = { method: 'colour strip', madeAt: 'laboratory' };
  hear('result', { sample: 'S-1', values: [{ ...nitrate, basis: 'as N' }, nitrate], ...made }, 9);
  hear('result', { sample: 'S-2', values: [{ ...nitrate, above: true }] }, 9);
  hear(
    'result',
    { sample: 'S-3', store: 'C-01', takenAtMs: at(4), values: [{ ...nitrate, below: true }] },
    9,
  );
  const found = watch.measured.points.map(({ atMs, point, told, censored, madeAt, duplicate, drawnFrom }) => [
    ...[atMs, point, told.basis, censored, madeAt, duplicate, drawnFrom],
  ]);
  expect(found).toEqual([
    [at(2), 'tap', 'as N', 'no', 'laboratory', false, 'the long line'],
    [at(2), 'tap', null, 'no', 'laboratory', true, 'the long line'],
    [at(2), 'tap', null, 'above', null, true, null],
    [at(4), null, null, 'below', null, false, null],
  ]);
});
