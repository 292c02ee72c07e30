// The meaning of every column: declared, known from the last such table, or plain from its heading; else asked about.
import type { Finding } from '../../ground/units/index.ts';
import type { Heading } from './headings.ts';
import { inboxFinding, quoted } from './inbox-finding.ts';
import { meaningsOf, unitOf } from './match-heading.ts';
import { type Meaning, nearestMeanings, readMeaning, spellMeaning } from './meaning.ts';
import type { Shape, TableOptions } from './options.ts';
import type { TableRow } from './table.ts';
import { bare, type Vocabulary } from './vocabulary.ts';

export interface Column {
  readonly heading: string;
  /** Null: it means nothing here, and its cells go into the note. */
  readonly meaning: Meaning | null;
  /** Somebody said that it is to be left out. */
  readonly leftOut: boolean;
}

/** How headings were read before. */
export type KnownColumns = ReadonlyMap<string, string>;

export interface Matched {
  readonly columns: readonly Column[];
  readonly findings: readonly Finding[];
}

export function matchColumns(
  headings: readonly Heading[],
  vocabulary: Vocabulary,
  how: { readonly options: TableOptions; readonly known: KnownColumns },
): Matched {
  const findings: Finding[] = [];
  const declared = declaredColumns(headings, how.options, findings);
  const columns = headings.map((heading, k): Column => {
    const said = declared.get(k) ?? knownOf(heading, how.known);
    if (said === undefined) return plainColumn(heading, k, vocabulary, findings);
    const text = heading.tries.find((each) => how.known.has(each)) ?? heading.tries[0];
    if (said.trim() === '') return { heading: text, meaning: null, leftOut: true };
    const meaning = readMeaning(said, vocabulary);
    if (meaning === null) {
      const data = { received: quoted(said), nearest: nearestMeanings(said, vocabulary) };
      findings.push(inboxFinding('sheet-meaning-unknown', data, { column: k + 1, field: text }));
    }
    return { heading: text, meaning, leftOut: false };
  });
  return { columns, findings: [...findings, ...clashesIn(columns)] };
}

function declaredColumns(
  headings: readonly Heading[],
  { columns = {} }: TableOptions,
  findings: Finding[],
): ReadonlyMap<number, string> {
  const declared = new Map<number, string>();
  for (const [name, means] of Object.entries(columns)) {
    const at = headings.findIndex(({ tries }) => tries.some((text) => text === name || same(text, name)));
    if (at >= 0) declared.set(at, means);
    else {
      const names = headings.map(({ tries: [text] }) => text).filter((text) => text !== '');
      findings.push(
        inboxFinding('sheet-heading-missing', { received: quoted(name), headings: names.slice(0, 20) }),
      );
    }
  }
  return declared;
}

function same(a: string, b: string): boolean {
  return bare(a) === bare(b) && bare(a) !== '';
}

function knownOf({ tries }: Heading, known: KnownColumns): string | undefined {
  const text = tries.find((each) => known.has(each));
  return text === undefined ? undefined : known.get(text);
}

function plainColumn(heading: Heading, k: number, vocabulary: Vocabulary, findings: Finding[]): Column {
  const [first] = heading.tries;
  for (const text of heading.tries) {
    const meanings = meaningsOf(text, vocabulary);
    const [meaning] = meanings;
    if (meaning === undefined) continue;
    // A unit that stands in a line of its own under the name.
    const unit = meaning.unit ?? unitOf(first.replace(text, '').trim());
    if (meanings.length === 1) return { heading: text, meaning: { ...meaning, unit }, leftOut: false };
    const data = { heading: quoted(text), meanings: meanings.map(spellMeaning) };
    findings.push(inboxFinding('sheet-heading-open', data, { column: k + 1, field: quoted(text) }));
    return { heading: text, meaning: null, leftOut: false };
  }
  return { heading: first, meaning: null, leftOut: false };
}

/** Of two columns for one thing nobody knows which one counts. */
function clashesIn(columns: readonly Column[]): readonly Finding[] {
  const seen = new Map<string, number>();
  return columns.flatMap(({ heading, meaning }, k) => {
    // Notes in two columns are two notes.
    if (meaning === null || meaning.means.what === 'note') return [];
    const key = spellMeaning({ means: meaning.means, unit: null, zoneMin: null });
    const other = seen.get(key);
    seen.set(key, k);
    if (other === undefined) return [];
    const headings = [columns[other]?.heading ?? '', heading].map(quoted);
    return [
      inboxFinding(
        'sheet-columns-clash',
        { headings, means: key },
        { column: k + 1, field: quoted(heading) },
      ),
    ];
  });
}

const CLOCK = /^\d{1,2}(?::\d{2}){1,2}\s*(?:[ap]\.?m\.?)?$/i;

/** A column called time that holds clocks only, beside one that holds the days. */
export function withClock(columns: readonly Column[], body: readonly TableRow[]): readonly Column[] {
  const at = columns.findIndex(({ meaning }) => meaning?.means.what === 'time');
  const hasDay = columns.some(
    ({ meaning }) => meaning?.means.what === 'date' || meaning?.means.what === 'day',
  );
  const cells = body.map(({ cells }) => cells[at]?.trim() ?? '').filter((cell) => /\d/.test(cell));
  if (at < 0 || !hasDay || cells.length === 0 || !cells.every((cell) => CLOCK.test(cell))) return columns;
  return columns.map((column, k) =>
    k === at && column.meaning !== null
      ? { ...column, meaning: { ...column.meaning, means: { what: 'clock' } } }
      : column,
  );
}

/** Meters make a table of days, acts one of acts; null where it is neither. */
export function shapeOf(columns: readonly Column[], declared: Shape | undefined): Shape | null {
  if (declared !== undefined) return declared;
  const has = (what: string) => columns.some(({ meaning }) => meaning?.means.what === what);
  if (has('act') || (has('amount') && (has('from') || has('to')))) return 'acts';
  return has('instrument') || has('content') ? 'days' : null;
}

/** Declared by nobody and plain to nobody: told, so that somebody may say what they are. */
export function unknownHeadings(
  columns: readonly Column[],
  body: readonly TableRow[],
  vocabulary: Vocabulary,
) {
  return columns.flatMap(({ heading, meaning, leftOut }, k) => {
    const isUsed = body.some(({ cells }) => (cells[k] ?? '').trim() !== '');
    if (meaning !== null || leftOut || !isUsed) return [];
    const data = { heading: quoted(heading), nearest: nearestMeanings(heading, vocabulary) };
    return [inboxFinding('sheet-heading-unknown', data, { column: k + 1, field: quoted(heading) }, 'know')];
  });
}
