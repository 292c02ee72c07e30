// Named migrations: an entry of an older shape is read as the shape of today. The kept entry itself never changes.
import type { AnyEntry } from './entry.ts';
import { type Kind, kindVersion } from './kinds/index.ts';

/** One step of a kind's shape, from `from` to `from + 1`. */
export interface Migration {
  /** What it does, in a few words; it stands in a failure's message. */
  readonly name: string;
  readonly kind: Kind;
  readonly from: number;
  readonly change: (body: Readonly<Record<string, unknown>>) => Record<string, unknown>;
}

/** All steps so far. A change of a kind's shape raises its version in `kinds/index.ts` and adds a step here. */
export const migrations: readonly Migration[] = [];

/** Why an older entry cannot be read. It is a fault in the program, never in the book. */
export class MigrationMissing extends Error {
  override readonly name = 'MigrationMissing';
}

/**
 * The entry in the shape of today.
 * @param steps the steps that are known; other than the program's own only in tests
 * @param versionNow the version that a kind's shape has today
 * @throws MigrationMissing when no step leads on from a version below today's, or the entry is newer than the program
 */
export function migrated(
  entry: AnyEntry,
  steps: readonly Migration[] = migrations,
  versionNow: (kind: Kind) => number = kindVersion,
): AnyEntry {
  const wanted = versionNow(entry.kind);
  if (entry.version === wanted) return entry;
  if (entry.version > wanted)
    throw new MigrationMissing(`${entry.kind} ${entry.version} is newer than this program (${wanted})`);
  let body = entry.body as Record<string, unknown>;
  for (let version = entry.version; version < wanted; version++) {
    const step = steps.find((one) => one.kind === entry.kind && one.from === version);
    if (step === undefined)
      throw new MigrationMissing(`no step leads from ${entry.kind} ${version} to ${version + 1}`);
    body = step.change(body);
  }
  return { ...entry, version: wanted, body } as AnyEntry;
}
