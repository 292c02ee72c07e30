// Runs tests under vitest and counts them: what could not be loaded, what was skipped and what did not run count as failed.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Part, timed } from './part.ts';
import { runTool } from './run-tool.ts';

/** The part that is read of the report that vitest writes. */
export interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message?: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

export interface Tally {
  readonly passed: number;
  readonly failed: number;
  readonly remarks: readonly string[];
}

export async function testsPart(name: string, words: readonly string[], env = {}): Promise<Part> {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-tests-'));
  const report = join(folder, 'report.json');
  try {
    const { result, seconds } = await timed(() =>
      runTool(
        'vitest',
        ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...words],
        {
          aloud: true,
          env,
        },
      ),
    );
    const tally = talliedBy(read(report), { status: result.status, isChosenByName: namesChoose(words) });
    const looked = `${read(report)?.testResults.length ?? 0} files`;
    return {
      name,
      passed: tally.passed,
      failed: tally.failed,
      looked,
      seconds,
      output: tally.remarks.join('\n'),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Counts a report; `status` is how vitest itself ended. */
export function talliedBy(
  report: VitestReport | undefined,
  { status, isChosenByName }: { readonly status: number; readonly isChosenByName: boolean },
): Tally {
  if (report === undefined) return { passed: 0, failed: 1, remarks: ['vitest ended without a report'] };
  const unloaded = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((each) => each.status === 'failed'),
  );
  // With `-t` every test that the name leaves out is reported as skipped.
  const skipped = isChosenByName ? 0 : report.numPendingTests + report.numTodoTests;
  const failed = report.numFailedTests + unloaded.length + skipped;
  const ran = report.numPassedTests + report.numFailedTests;
  const remarks = [
    ...unloaded.map((file) => `${file.name} did not run to its end: ${file.message ?? ''}`),
    ...(skipped > 0 ? [`${skipped} tests were skipped; a test runs or is taken out`] : []),
    ...(ran === 0 ? ['no test ran'] : []),
    ...(status !== 0 && failed === 0 && ran > 0
      ? [`vitest ended with ${status}; an error outside the tests`]
      : []),
  ];
  const silent = failed === 0 && (ran === 0 || status !== 0) ? 1 : 0;
  return { passed: report.numPassedTests, failed: failed + silent, remarks };
}

function namesChoose(words: readonly string[]): boolean {
  return words.some((word) => /^(-t|--testNamePattern)(=|$)/.test(word));
}

function read(path: string): VitestReport | undefined {
  try {
    return JSON.parse(readFileSync(path, 'utf8')) as VitestReport;
  } catch {
    return undefined;
  }
}
