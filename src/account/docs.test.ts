// The examples of docs/methods/account.md are run as they stand there.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Estimator } from './estimator.ts';

const page = readFileSync(join(import.meta.dirname, '../../docs/methods/account.md'), 'utf8');
const lines = (page.split('```examples\n')[1]?.split('```')[0] ?? '').trim().split('\n');

test('the example of the page says what the estimator says', () => {
  const estimator = new Estimator();
  const places = new Map<string, number>();
  const at = (name = '') => places.get(name) ?? -1;
  let compared = 0;
  for (const line of lines) {
    const [first = '', second = '', ...rest] = line.split(/\s+/);
    if (first === 'store')
      places.set(second, estimator.add(Number(rest[0]), Number(rest[1]) * Number(rest[1])));
    else if (first === 'meter') places.set(second, estimator.add(0, Number(rest[0]) * Number(rest[0])));
    else if (first === 'move') {
      const [to, mass, meter, u] = rest;
      estimator.move({
        from: at(second),
        to: at(to),
        calibration: at(meter),
        massKg: Number(mass),
        uKg: Number(u),
      });
    } else if (first === 'read')
      estimator.read({ places: [at(second)], value: Number(rest[0]), u: Number(rest[1]) });
    else {
      const said = [estimator.mean(at(first)), Math.sqrt(estimator.variance(at(first)))].map((value) =>
        value.toFixed(4),
      );
      expect(said.join(' '), line).toBe(rest.join(' '));
      compared += 1;
    }
  }
  expect(compared).toBe(5);
});
