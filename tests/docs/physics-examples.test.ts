// Runs every @example of these subjects of the physics: what it says after // is what comes out.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import * as physics from '../../src/ground/physics/index.ts';
import * as units from '../../src/ground/units/index.ts';
import { EXAMPLE_THINGS } from './example-things.ts';

const ROOM = join(import.meta.dirname, '../../src/ground/physics');
/** What the other subjects start from is made in tests of their own; scald times are not given out. */
const SUBJECTS =
  /^(air|bed|condenser|electrolysis|gas|gauging|heat|hose|solution|water)\/(?!scald)|^molar\.ts/;
const words: Readonly<Record<string, unknown>> = { ...units, ...physics, ...EXAMPLE_THINGS };

const examples = readdirSync(ROOM, { recursive: true, encoding: 'utf8' })
  .filter((path) => SUBJECTS.test(path) && path.endsWith('.ts') && !path.endsWith('.test.ts'))
  .flatMap((path) => examplesIn(path, readFileSync(join(ROOM, path), 'utf8')));

/** An example may go on over lines of the comment; it ends with // and the figure. */
function examplesIn(
  path: string,
  text: string,
): readonly { path: string; code: string; figure: string; isCut: boolean }[] {
  return [...text.matchAll(/@example ((?:(?!\*\/|@)[\s\S])*?)\s*\/\/ (-?\d[\d_.e+-]*)(…?)/g)].map(
    ([, code = '', figure = '', cut = '']) => ({
      path,
      code: code.replace(/\n\s*\* ?/g, ' '),
      figure: figure.replaceAll('_', ''),
      isCut: cut !== '',
    }),
  );
}

/** The last digit that is printed. A figure is rounded, so that half of this is the most; one that goes on with … is cut. */
function lastPlace(figure: string): number {
  const [mantissa = '', exponent = '0'] = figure.split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return 10 ** (Number(exponent) - decimals);
}

it.each(examples)('$path: $code gives $figure', ({ code, figure, isCut }) => {
  const value: unknown = new Function(...Object.keys(words), `return ${code};`)(...Object.values(words));
  expect(typeof value).toBe('number');
  expect(Math.abs((value as number) - Number(figure))).toBeLessThanOrEqual(
    (isCut ? 1 : 0.50001) * lastPlace(figure),
  );
});

it('has found examples', () => {
  expect(examples.length).toBeGreaterThanOrEqual(40);
});
