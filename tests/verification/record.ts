// What a test has counted, written down when it passes, so that docs/verification.md is made of figures and not of words.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { RECORDS } from '../golden/record.ts';

const ROOT = join(import.meta.dirname, '../..');
/** Of the last run on this machine; no part of the tree. */
const LAST_RUN = join(ROOT, 'dist/verification');
/** Those that the page is made of: taken over from the last run by `npm run golden`, and read as a diff. */
export const TAKEN_OVER = join(RECORDS, 'verification');

export interface Counted {
  /** The seed that brings the same cases again; absent where chance had no part. */
  readonly seed?: number;
  /** What was counted, in words: `{ 'images': 5880, 'images with something missing': 4127 }`. */
  readonly counts: Readonly<Record<string, number>>;
}

export interface VerificationRecord extends Counted {
  readonly name: string;
  /** Path of the test in the tree. */
  readonly test: string;
  readonly node: string;
  readonly platform: string;
}

/**
 * Called as the last line of a test, so that a test which fails leaves no figure.
 * @param name small letters and `-`: the name of the record, once in the whole tree
 * @example recordCounts('kills', import.meta.filename, { seed: SEED, counts: { kills: 60, 'entries lost': 0 } });
 */
export function recordCounts(name: string, test: string, { seed, counts }: Counted, folder = LAST_RUN): void {
  if (!/^[a-z]+(-[a-z]+)*$/.test(name)) throw new Error(`"${name}" is no name for a record`);
  const figures = Object.values(counts);
  if (figures.length === 0 || !figures.every(Number.isFinite)) throw new Error(`${name} has counted nothing`);
  const record: VerificationRecord = {
    name,
    test: relative(ROOT, test).replaceAll('\\', '/'),
    ...(seed !== undefined && { seed }),
    counts,
    node: process.version,
    platform: `${process.platform} ${process.arch}`,
  };
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${name}.json`), `${JSON.stringify(record, null, 2)}\n`);
}

/** Records by name, in the order of their names. */
export function readRecords(folder = TAKEN_OVER): ReadonlyMap<string, VerificationRecord> {
  const records = namesIn(folder).map((file) => {
    const record = JSON.parse(readFileSync(join(folder, file), 'utf8')) as VerificationRecord;
    return [record.name, record] as const;
  });
  return new Map(records);
}

/** Takes over what the last run counted. A record that it did not renew stays as it is. */
export function takeOverRecords(from = LAST_RUN, to = TAKEN_OVER): number {
  const names = namesIn(from);
  mkdirSync(to, { recursive: true });
  for (const file of names) writeFileSync(join(to, file), readFileSync(join(from, file), 'utf8'));
  return names.length;
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.json'))
      .sort();
  } catch {
    return [];
  }
}
