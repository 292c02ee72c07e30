// The examples of docs/methods/cover.md and worth-of-a-reading.md are run as they stand there.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Estimator } from '../account/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { coverHalfWidth, coverQuantiles } from './cover-quantiles.ts';
import { dailyUse } from './daily-use.ts';
import { sureUse } from './use-ahead.ts';

const pageOf = (name: string) => readFileSync(join(import.meta.dirname, '../../docs/methods', name), 'utf8');
const linesOf = (page: string, fence: string) =>
  (page.split(`\`\`\`${fence}\n`)[1]?.split('```')[0] ?? '').split('\n').filter((line) => line !== '');
const cut = (line: string) => {
  const [asked = '', wanted = ''] = line.split('=>');
  const [what = '', ...words] = asked.trim().split(/\s+/);
  return { what, words, numbers: words.map(Number), wanted: wanted.trim() };
};

const cover = pageOf('cover.md');
const worth = pageOf('worth-of-a-reading.md');
const [covers, readings] = [linesOf(cover, 'examples'), linesOf(worth, 'examples')];

test('the pages have examples', () => {
  expect(covers.length).toBeGreaterThanOrEqual(6);
  expect(readings.length).toBeGreaterThanOrEqual(6);
});

test.each(covers)('%s', (line) => {
  const { numbers, wanted } = cut(line);
  const [massMg = 0, uMg = 0, meanMg = 0, useUMg = 0, dayUMg = 0] = numbers;
  const cases = [sureUse({ meanMg, uMg: useUMg, dayUMg })];
  const { q05, q50, q95 } = coverQuantiles({ massMg, uMg }, { people: 1, cases });
  expect([q05, q50, q95].map((days) => days?.toFixed(2) ?? 'never').join(' ')).toBe(wanted);
});

/** The worked example of the page on cover: what is given, and what comes of it. */
const learned = linesOf(cover, 'learned').map(cut);
const given = (what: string) => learned.find((each) => each.what === what)?.numbers ?? [];
const MG = 1_000_000;

function learnedUse() {
  const [people = 1] = given('people');
  const [netL = 0, grossL = 0] = given('norm');
  const usage = given('days').map((litres, k) => ({
    day: k + 1,
    endMs: k * msPerDay,
    days: 1,
    peopleAboard: people,
    netMg: litres * MG,
    entry: `day ${k + 1}`,
  }));
  const use = dailyUse(usage, { netMg: netL * MG, grossMg: grossL * MG });
  if (use === null) throw new Error('nothing was learned');
  return { use, people };
}

test('the worked example comes out as it stands on the page', () => {
  const { use, people } = learnedUse();
  const [stockL = 0, uL = 0] = given('stock');
  const stock = { massMg: stockL * MG, uMg: uL * MG };
  const { q05, q50, q95 } = coverQuantiles(stock, { people, cases: use.cases });
  const said: Readonly<Record<string, (rate: number) => string>> = {
    use: () => `${(use.meanMg / MG).toFixed(3)} ${(use.meanUMg / MG).toFixed(3)}`,
    memory: () => use.memory.toFixed(2),
    cover: () => [q05, q50, q95].map((days) => days?.toFixed(1) ?? 'never').join(' '),
    rate: (rate) => `${(stockL / rate / people).toFixed(2)} ${((2 * uL) / rate / people).toFixed(2)}`,
  };
  const asked = learned.filter(({ what }) => what in said);
  expect(asked).toHaveLength(5);
  for (const { what, numbers, wanted } of asked) expect(said[what]?.(numbers[0] ?? 0), what).toBe(wanted);
});

test.each(readings)('%s', (line) => {
  const { what, numbers, wanted } = cut(line);
  expect(what === 'reading' ? afterReading(numbers) : beforeAndAfter(numbers)).toBe(wanted);
});

function afterReading([u = 0, fresh = 0, repeated = 0]: readonly number[]): string {
  const estimator = new Estimator();
  const places = [estimator.add(10, u * u), estimator.add(0, repeated * repeated)];
  estimator.read({ places, value: 10, u: fresh });
  return Math.sqrt(estimator.variance(places[0] ?? 0)).toFixed(4);
}

function beforeAndAfter([
  stock = 0,
  before = 0,
  after = 0,
  meanMg = 0,
  uMg = 0,
  dayUMg = 0,
]: readonly number[]) {
  const draw = { people: 1, cases: [sureUse({ meanMg, uMg, dayUMg })] };
  const widths = [before, after].map((doubt) => coverHalfWidth({ massMg: stock, uMg: doubt }, draw));
  return widths.map((days) => days?.toFixed(2) ?? 'never').join(' ');
}
