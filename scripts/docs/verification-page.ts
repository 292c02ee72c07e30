// The page of promises: what is promised, which tests hold it, what they counted, and what is still open.
import type { PromiseRow, PromiseTest } from './promises.ts';

/** What the page reads of a record of counts. */
export interface CountRecord {
  readonly name: string;
  readonly seed?: number;
  readonly counts: Readonly<Record<string, number>>;
  readonly node: string;
  readonly platform: string;
}

const HEAD = `# Verification

Made by a test from the table \`scripts/docs/promises.ts\` and from what the tests counted. Do not edit it.

Each promise has an own test, or is marked *not yet*: then nothing is claimed. *In part* says what is open. Figures are those that a test wrote down when it passed; a test with a fault in it leaves none. To renew them: \`npm test\`, \`npm run test:browser\` and \`npm run test:faults\`, then \`npm run golden -- tests/docs\`, and read the difference.
`;

export function verificationPage(
  promises: readonly PromiseRow[],
  records: ReadonlyMap<string, CountRecord>,
): string {
  const rows = promises.map(
    (row) => `| [${row.id}](#${row.id.toLowerCase()}) | ${row.promise} | ${stateOf(row)} |`,
  );
  const sections = promises.filter(({ tests }) => tests.length > 0).map((row) => section(row, records));
  return [HEAD, ['| | promise | |', '|---|---|---|', ...rows, ''].join('\n'), ...sections].join('\n');
}

function stateOf({ tests, open }: PromiseRow): string {
  if (tests.length === 0) return 'not yet';
  return open === undefined ? 'held' : 'in part';
}

function section(
  { id, promise, tests, open }: PromiseRow,
  records: ReadonlyMap<string, CountRecord>,
): string {
  return [
    `## ${id}\n\n${promise}\n`,
    ...tests.map((test) => testLines(test, records)),
    ...(open === undefined ? [''] : [`\nOpen: ${open}\n`]),
  ].join('\n');
}

function testLines(
  { file, holds, records = [] }: PromiseTest,
  known: ReadonlyMap<string, CountRecord>,
): string {
  const counted = records.map((name) => `  - ${countedBy(name, known.get(name))}`);
  return [`- \`${file}\`: ${holds}`, ...counted].join('\n');
}

function countedBy(name: string, record: CountRecord | undefined): string {
  if (record === undefined) return `${name}: not counted yet`;
  const counts = Object.entries(record.counts).map(([what, count]) => `${what} ${grouped(count)}`);
  const seed = record.seed === undefined ? '' : `seed ${record.seed}; `;
  return `${name}: ${counts.join(', ')} (${seed}Node ${record.node.replace(/^v/, '')}, ${record.platform})`;
}

/** `5,880`: groups of three. */
function grouped(count: number): string {
  return `${count}`.replace(/\B(?=(\d{3})+$)/g, ',');
}
