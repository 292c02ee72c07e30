// Every set of limits that can be chosen: the outpost's own, those that ship, those of files that somebody brings; with figures that were typed.
import { type ChosenSet, type Fold, policyInForce, typedRow } from '../../account/index.ts';
import { amend, amendmentsOf, type Entry, entryOf } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { type LimitSet, policyLimitSet, readLimitSet } from '../../outpost/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, NamedText } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { findName } from '../log/context.ts';

export interface KnownSet {
  readonly set: LimitSet;
  readonly from: 'outpost file' | 'program' | 'book' | 'own file';
}

/** @param own files of somebody's own; a fault in one of them is told whole, and nothing is known then */
export async function knownSets(
  desk: Desk,
  fold: Fold,
  own: readonly NamedText[] = [],
): Promise<Answer<readonly KnownSet[]>> {
  const shipped = readAll(await desk.limitFiles(), 'program');
  const brought = readAll(own, 'own file');
  const faults = [...shipped, ...brought].flatMap(({ findings }) => findings);
  if (faults.length > 0) return no('bad input', ...faults);
  const sets = [ofOutpost(fold), ...[...shipped, ...brought].flatMap(({ known }) => known)];
  const twice = sets.find(({ set }, k) => sets.slice(0, k).some((other) => other.set.id === set.id));
  if (twice !== undefined) {
    const data = { what: 'set of limits', name: twice.set.id };
    return no('bad input', deskFinding('name-taken', data, { where: { field: 'set.id' } }));
  }
  const typed = await typedLimits(desk);
  return yes([...sets, ...onlyInForce(fold, sets)].map((known) => withTyped(known, typed)));
}

function ofOutpost({ index }: Fold): KnownSet {
  const whole = policyLimitSet(index.outpost);
  // Rows that the outpost file itself has off are required by nobody.
  const rows = policyInForce(index).sets.flatMap((one) => one.rows);
  return { set: { ...whole, rows }, from: 'outpost file' };
}

interface ReadFile {
  readonly known: readonly KnownSet[];
  readonly findings: readonly Finding[];
}

function readAll(files: readonly NamedText[], from: KnownSet['from']): readonly ReadFile[] {
  return files.map(({ file, text }) => {
    const read = readLimitSet(text, { file });
    return read.ok
      ? { known: [{ set: read.set, from }], findings: [] }
      : { known: [], findings: read.findings };
  });
}

/** A set of a file that is not here any more stands whole in the entry that chose it. */
function onlyInForce({ limits }: Fold, sets: readonly KnownSet[]): readonly KnownSet[] {
  const ids = new Set(sets.map(({ set }) => set.id));
  return limits.sets
    .filter(({ set }) => !ids.has(set))
    .map((chosen) => ({ set: setOfChosen(chosen), from: 'book' as const }));
}

/** What is not kept of a set when it is chosen: its own sentence about itself. */
export function setOfChosen({ set: id, name, rows }: ChosenSet): LimitSet {
  return { id, name, what: '', uses: [...new Set(rows.flatMap(({ requiredFor }) => requiredFor))], rows };
}

/** Figures that somebody typed, in the order of the book, without those that were undone. */
async function typedLimits(desk: Desk): Promise<readonly Entry<'limit-typed'>[]> {
  const amendments = await amendmentsOf(desk.port, {});
  const typed: Entry<'limit-typed'>[] = [];
  for await (const rows of desk.port.scan({ order: 'total', kinds: ['limit-typed'] }))
    for (const row of rows) {
      const entry = amend(entryOf(row), amendments);
      if (entry?.kind === 'limit-typed') typed.push(entry);
    }
  return typed;
}

function withTyped({ set, from }: KnownSet, typed: readonly Entry<'limit-typed'>[]): KnownSet {
  const own = typed.filter(({ body }) => body.set === set.id);
  if (own.length === 0) return { set, from };
  const rows = set.rows.map((row) =>
    own
      .filter(({ body }) => body.row === row.id)
      .reduce((told, entry) => (told.limit === null ? typedRow(told, entry) : told), row),
  );
  return { set: { ...set, rows }, from };
}

/** A set as people name it: by its id, with spaces or with dashes. */
export function findSet(sets: readonly KnownSet[], typed: string): Answer<KnownSet> {
  const ids = sets.map(({ set }) => set.id);
  const found = findName('set of limits', typed, ids);
  return found.ok ? yes(sets.find(({ set }) => set.id === found.value) as KnownSet) : found;
}
