// Controls for the counting: what did not run, was skipped or could not be loaded must count as failed.
import { expect, test } from 'vitest';
import { checkDependencies } from './dependencies.ts';
import { check, closingLine, table } from './part.ts';
import { talliedBy, type VitestReport } from './tests-part.ts';

const WELL: VitestReport = {
  numPassedTests: 2,
  numFailedTests: 0,
  numPendingTests: 0,
  numTodoTests: 0,
  testResults: [
    { name: 'a.test.ts', status: 'passed', assertionResults: [{ status: 'passed' }, { status: 'passed' }] },
  ],
};
const ENDED_WELL = { status: 0, isChosenByName: false };

test('tests that passed are counted and nothing is remarked', () => {
  expect(talliedBy(WELL, ENDED_WELL)).toEqual({ passed: 2, failed: 0, remarks: [] });
});

test.each([
  ['a run without a report', undefined, ENDED_WELL],
  ['a run without tests', { ...WELL, numPassedTests: 0, testResults: [] }, ENDED_WELL],
  ['a failed test', { ...WELL, numFailedTests: 1 }, { ...ENDED_WELL, status: 1 }],
  ['a skipped test', { ...WELL, numPendingTests: 1 }, ENDED_WELL],
  ['a test still to be written', { ...WELL, numTodoTests: 1 }, ENDED_WELL],
  ['an error outside the tests', WELL, { ...ENDED_WELL, status: 1 }],
  [
    'a file that could not be loaded',
    { ...WELL, testResults: [{ name: 'a.test.ts', status: 'failed', message: 'no', assertionResults: [] }] },
    { ...ENDED_WELL, status: 1 },
  ],
] as const)('%s counts as one failure', (_, report, how) => {
  expect(talliedBy(report, how).failed).toBe(1);
});

test('tests left out by their name are not counted', () => {
  const report = { ...WELL, numPendingTests: 7 };
  expect(talliedBy(report, { status: 0, isChosenByName: true })).toMatchObject({ passed: 2, failed: 0 });
});

test('the closing line sums the parts, each check as one', () => {
  const parts = [
    check('types', { ok: true, output: '' }, 1.25),
    check('rules', { ok: false, looked: '3 files', output: 'a.ts:1: no' }, 0.5),
    { name: 'tests', passed: 40, failed: 2, looked: '5 files', seconds: 10, output: '' },
  ];
  expect(closingLine(parts)).toBe('41 passed, 3 failed');
  expect(closingLine([])).toBe('0 passed, 0 failed');
  expect(table(parts).split('\n')).toEqual([
    'part   passed  failed  seconds  looked at',
    'types       1       0      1.3',
    'rules       0       1      0.5  3 files',
    'tests      40       2     10.0  5 files',
  ]);
});

test('a dependency without a row, without a reason or not at one version is caught, and a row without a package', () => {
  const page = '| `a` | reads | it is good |\n| `b` | writes | |\n| `gone` | was used | it was good |\n';
  const wanted = (dependencies: Record<string, string>): string =>
    JSON.stringify({ dependencies, devDependencies: { a: '1.0.0' } });
  const gone = 'gone has a row and is not used';
  expect(checkDependencies(wanted({}), page).says).toEqual(['b has a row and is not used', gone]);
  expect(checkDependencies(wanted({ b: '1.0.0', c: '1.0.0' }), page).says).toEqual([
    'c has no row in docs/dependencies.md',
    'b has a row without a reason',
    gone,
  ]);
  expect(checkDependencies(wanted({ b: '^1.0.0' }), page).says).toContain('b is not at one exact version');
  expect(checkDependencies('{}', '').says).toEqual(['package.json names no package']);
});
