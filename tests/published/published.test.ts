// Holds the tool against published and independently computed values: every row of every table beside this file, save
// those that a room runs with steps of its own; of these it is seen that a test does run them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SUBJECTS } from './subjects.ts';
import { ulpsFrom } from './ulps.ts';

type Tolerance =
  | { readonly ulp: number }
  | { readonly abs: number }
  | { readonly rel: number }
  | { readonly exact: true };

interface Table {
  readonly source: string;
  readonly locator: string;
  readonly seen: 'seen' | 'memory' | 'computed';
  readonly subject: string;
  readonly unit: string;
  readonly tolerance: Tolerance;
  /** The inputs, then the value expected; all as text, so that no digit is lost. */
  readonly rows: readonly (readonly string[])[];
}

const folder = import.meta.dirname;
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => ({
    name,
    content: JSON.parse(readFileSync(join(folder, name), 'utf8')) as Table | Table[],
  }));
const all = files.flatMap(({ name, content }) =>
  Array.isArray(content)
    ? content.map((table) => ({ name, table, isAlone: false }))
    : [{ name, table: content, isAlone: true }],
);
const isRunHere = ({ table, isAlone }: (typeof all)[number]): boolean => isAlone || table.subject in SUBJECTS;
const tables = all.filter(isRunHere);
/** Tables in a list whose subject is none of ours belong to a room, whose own test runs them. */
const ofRooms = all.filter((each) => !isRunHere(each));

/** How far off a value is, in the measure of the tolerance, and how far it may be. */
function missOf(
  value: number | string,
  expected: string,
  tolerance: Tolerance,
): { miss: number; most: number } {
  if ('exact' in tolerance) return { miss: String(value) === expected ? 0 : 1, most: 0 };
  if (typeof value !== 'number') throw new Error(`${value} is a text; its table wants { "exact": true }`);
  if ('ulp' in tolerance) return { miss: ulpsFrom(value, expected), most: tolerance.ulp };
  const difference = Math.abs(value - Number(expected));
  return 'abs' in tolerance
    ? { miss: difference, most: tolerance.abs }
    : { miss: difference / Math.abs(Number(expected)), most: tolerance.rel };
}

/** Digits in which a value agrees with the one printed; undefined for a text. A printed zero has no digits to agree in. */
function digitsOf(value: number | string, expected: string): number | undefined {
  const truth = Number(expected);
  if (typeof value !== 'number' || truth === 0 || !Number.isFinite(truth)) return undefined;
  const relative = Math.abs(value - truth) / Math.abs(truth);
  return relative === 0 ? MOST_DIGITS : Math.min(MOST_DIGITS, Math.max(0, -Math.log10(relative)));
}

const MOST_DIGITS = 16;
let rowsRun = 0;
const worst: string[] = [];

describe.each(tables)('$name, $table.subject, $table.unit', ({ name, table }) => {
  it('says where its values come from', () => {
    for (const text of [table.source, table.locator, table.unit]) expect(text.length).toBeGreaterThan(0);
    expect(['seen', 'memory', 'computed']).toContain(table.seen);
    expect(table.rows.length).toBeGreaterThan(0);
  });

  it(`holds in every row`, () => {
    const subject = SUBJECTS[table.subject];
    if (subject === undefined) throw new Error(`${name}: no subject is called ${table.subject}`);
    let worstMiss = 0;
    let digits: number | undefined;
    for (const row of table.rows) {
      const expected = row.at(-1) as string;
      const value = subject(...row.slice(0, -1));
      const { miss, most } = missOf(value, expected, table.tolerance);
      // Not (miss <= most) also catches NaN.
      if (!(miss <= most)) expect.soft(`${value}, off by ${miss}`, row.join(' ')).toBe(expected);
      worstMiss = Math.max(worstMiss, miss);
      const agreed = digitsOf(value, expected);
      if (agreed !== undefined) digits = Math.min(digits ?? MOST_DIGITS, agreed);
      rowsRun += 1;
    }
    const agreed = digits === undefined ? '' : `, ${digits.toFixed(1)} digits agreed at the worst`;
    worst.push(
      `${table.subject}: ${table.rows.length} rows, worst ${worstMiss.toPrecision(3)} of ${JSON.stringify(table.tolerance)}${agreed}`,
    );
  });
});

const source = join(folder, '../../src');
const testsOfRooms = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.test.ts'))
  .map((path) => readFileSync(join(source, path), 'utf8'));

it.each(ofRooms)('$name, $table.subject: run by its room', ({ name, table }) => {
  for (const text of [table.source, table.locator, table.seen, table.unit])
    expect(text.length).toBeGreaterThan(0);
  expect(table.rows.length).toBeGreaterThan(0);
  const runs = testsOfRooms.filter(
    (test) => test.includes(`tests/published/${name}`) && test.includes(`'${table.subject}'`),
  );
  expect(runs.length).toBeGreaterThan(0);
});

it('looked at rows', () => {
  console.log(worst.join('\n'));
  expect(rowsRun).toBe(tables.reduce((sum, { table }) => sum + table.rows.length, 0));
  expect(rowsRun).toBeGreaterThan(3000);
});

it('would see a value that is off', () => {
  expect(missOf(1.0000000000000002, '1', { ulp: 0.9 }).miss).toBeGreaterThan(0.9);
  expect(missOf(1.1, '1', { abs: 0.05 }).miss).toBeGreaterThan(0.05);
  expect(digitsOf(1.01, '1')).toBeCloseTo(2, 6);
  expect(digitsOf(1, '1')).toBe(MOST_DIGITS);
  expect(digitsOf(0, '1')).toBe(0);
  expect(digitsOf(1, '0')).toBeUndefined();
  expect(missOf('194 +/- 7 L', '194 +/- 6 L', { exact: true }).miss).toBe(1);
});
