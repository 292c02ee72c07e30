// How headings were read the last time: kept in the book, so that every hand and every site shares it.
import { type AnyDraft, type Body, entryOf, type Hash, kindVersion } from '../../book/index.ts';
import type { Desk } from '../desk.ts';
import type { Heading } from './headings.ts';
import { spellMeaning } from './meaning.ts';
import type { TableOptions } from './options.ts';
import type { Sheet } from './sheet.ts';

type Matching = Body<'column-matching'>;

export function signatureOf(hash: Hash, headings: readonly Heading[]): string {
  return hash(headings.map(({ tries: [text] }) => text.toLowerCase()).join('\n'));
}

/** The youngest matching of these headings; null for headings that nobody has seen. */
export async function knownMatching(desk: Desk, signature: string): Promise<Matching | null> {
  let found: Matching | null = null;
  for await (const rows of desk.port.scan({ order: 'total', kinds: ['column-matching'] })) {
    for (const entry of rows.map(entryOf))
      if (entry.kind === 'column-matching' && entry.body.signature === signature) found = entry.body;
  }
  return found;
}

/** What somebody declares now counts before what was declared then. */
export function withKnown(options: TableOptions, known: Matching | null): TableOptions {
  if (known === null) return options;
  const { decimal, dates, zoneMin, shape } = known;
  return {
    shape,
    ...(decimal !== undefined && { decimal }),
    ...(dates !== undefined && { dates }),
    ...(zoneMin !== undefined && { zoneMin }),
    ...options,
  };
}

/** Only what was declared is kept beside the meanings: what a table proves, the next one proves by itself. */
export function matchingBody(sheet: Sheet, signature: string, options: TableOptions): Matching {
  const { decimal, dates, zoneMin } = options;
  return {
    signature,
    shape: sheet.shape,
    columns: sheet.columns.map(({ heading, meaning, leftOut }) => ({
      heading,
      means: meaning === null ? (leftOut ? ' ' : '') : spellMeaning(meaning),
    })),
    ...(decimal !== undefined && { decimal }),
    ...(dates !== undefined && { dates }),
    ...(zoneMin !== undefined && { zoneMin }),
  };
}

export function isSameMatching(a: Matching, b: Matching): boolean {
  const columns = (matching: Matching) =>
    matching.columns.map(({ heading, means }) => `${heading}\n${means}`).join('\n\n');
  return (
    a.shape === b.shape &&
    a.decimal === b.decimal &&
    a.dates === b.dates &&
    a.zoneMin === b.zoneMin &&
    columns(a) === columns(b)
  );
}

export function matchingDraft(
  body: Matching,
  at: { readonly id: string; readonly ms: number; readonly offsetMin: number; readonly by: string },
): AnyDraft {
  const { id, ms, offsetMin, by } = at;
  return {
    id,
    version: kindVersion('column-matching'),
    kind: 'column-matching',
    happenedAtMs: ms,
    happenedOffsetMin: offsetMin,
    enteredAtMs: ms,
    enteredOffsetMin: offsetMin,
    by,
    body,
  };
}
