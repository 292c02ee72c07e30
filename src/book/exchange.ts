// The book as JSON Lines: a header, then one line an entry, in the order of each site's chain. It is the exchange with another site, too.
import { canonicalJson, type Json } from './canonical.ts';
import type { AnyEntry } from './entry.ts';
import { rowOf } from './keep.ts';
import type { BookInfo, BookPort, KeptEntry } from './port.ts';
import { headOf } from './port.ts';
import { FIRST_SEAL, type Hash, type Head, sealOf } from './seal.ts';
import { type BookFinding, readDraft } from './validate.ts';

export const EXPORT_FORMAT = 'waterwright book';
export const EXPORT_VERSION = 1;

export interface ExportHeader {
  readonly format: typeof EXPORT_FORMAT;
  readonly version: number;
  readonly site: string;
  readonly purpose: BookInfo['purpose'];
}

/** Where the reader's own book stands, site by site: entries up to there are left out. */
export type Since = readonly { readonly site: string; readonly number: number }[];

/** Lines of an export, without their line ends. Each entry line is `{"entry":…,"seal":…}`. */
export async function* exportLines(port: BookPort, since: Since = []): AsyncIterable<string> {
  const info = await port.info();
  const header: ExportHeader = {
    format: EXPORT_FORMAT,
    version: EXPORT_VERSION,
    site: info.site,
    purpose: info.purpose,
  };
  yield canonicalJson(header as unknown as Json);
  const known = new Map(since.map((place) => [place.site, place.number]));
  for await (const rows of port.scan({ order: 'site' })) {
    for (const row of rows) {
      if (row.number > (known.get(row.site) ?? 0)) yield `{"entry":${row.text},"seal":"${row.seal}"}`;
    }
  }
}

export type HeaderOutcome = { ok: true; header: ExportHeader } | { ok: false; finding: BookFinding };

export function readHeader(line: string): HeaderOutcome {
  const value = objectInLine(line);
  if (value?.['format'] === EXPORT_FORMAT && typeof value['site'] === 'string') {
    const version = value['version'];
    if (version === EXPORT_VERSION) {
      const purpose = value['purpose'] === 'practice' ? 'practice' : 'book';
      return { ok: true, header: { format: EXPORT_FORMAT, version, site: value['site'], purpose } };
    }
    const data = {
      kind: 'export',
      version: typeof version === 'number' ? version : null,
      known: EXPORT_VERSION,
    };
    return {
      ok: false,
      finding: { code: 'shape-newer', severity: 'error', where: { line: 1 }, data, entries: [] },
    };
  }
  return { ok: false, finding: lineFinding('line-no-json', 1, { expected: EXPORT_FORMAT }) };
}

export type AcceptOutcome =
  | { ok: true; accepted: number; alreadyKept: number; heads: readonly Head[] }
  | { ok: false; findings: BookFinding[] };

/**
 * Takes entry lines of an export into a book: all of them or none. Lines that the book has are passed over;
 * a broken seal, a gap in a chain, or other content under a known number is a finding.
 * @param lines entry lines, without the header; `firstLine` is the number of the first one in its file
 */
export async function acceptLines(
  port: BookPort,
  lines: Iterable<string>,
  by: { readonly hash: Hash; readonly keptAtMs: number; readonly firstLine: number },
): Promise<AcceptOutcome> {
  const before = await port.heads();
  const arrived: Arrived = {
    heads: new Map(before.map((head) => [head.site, head])),
    rows: new Map(),
    ids: new Set(),
  };
  let alreadyKept = 0;
  let lineNumber = by.firstLine - 1;
  for (const line of lines) {
    lineNumber += 1;
    if (line.trim() === '') continue;
    const read = readLine(line, lineNumber, by.keptAtMs);
    if (!read.ok) return read;
    const fault = await faultOf(port, read.row, arrived, by.hash);
    if (fault !== null) return { ok: false, findings: [rowFinding(fault, lineNumber, read.row, arrived)] };
    if (read.row.number <= headIn(arrived, read.row.site).number) alreadyKept += 1;
    else take(read.row, arrived);
  }
  const rows = [...arrived.rows.values()];
  if (rows.length > 0) await port.append(rows, expectedHeads(rows, before));
  return { ok: true, accepted: rows.length, alreadyKept, heads: [...arrived.heads.values()] };
}

/** What the lines before this one brought. */
interface Arrived {
  readonly heads: Map<string, Head>;
  /** By site and number. */
  readonly rows: Map<string, KeptEntry>;
  readonly ids: Set<string>;
}

function headIn(arrived: Arrived, site: string): Head {
  return arrived.heads.get(site) ?? headOf([], site, FIRST_SEAL);
}

function take(row: KeptEntry, arrived: Arrived): void {
  arrived.heads.set(row.site, { site: row.site, number: row.number, seal: row.seal });
  arrived.rows.set(`${row.site} ${row.number}`, row);
  arrived.ids.add(row.id);
}

/** What speaks against a row: as a new one, or as one that the book has. */
async function faultOf(
  port: BookPort,
  row: KeptEntry,
  arrived: Arrived,
  hash: Hash,
): Promise<BookFinding['code'] | null> {
  const head = headIn(arrived, row.site);
  if (row.number <= head.number) {
    const kept =
      arrived.rows.get(`${row.site} ${row.number}`) ?? (await port.findNumber(row.site, row.number));
    if (kept?.seal !== row.seal) return 'number-reused';
    return kept.text === row.text ? null : 'seal-broken';
  }
  if (row.number !== head.number + 1) return 'chain-gap';
  if (sealOf(hash, head.seal, row.text) !== row.seal) return 'seal-broken';
  return arrived.ids.has(row.id) || (await port.find(row.id)) !== null ? 'id-reused' : null;
}

function expectedHeads(fresh: readonly KeptEntry[], before: readonly Head[]): Head[] {
  return [...new Set(fresh.map((row) => row.site))].map((site) => headOf(before, site, FIRST_SEAL));
}

type LineOutcome = { ok: true; row: KeptEntry } | { ok: false; findings: BookFinding[] };

function readLine(line: string, lineNumber: number, keptAtMs: number): LineOutcome {
  const value = objectInLine(line);
  const entry = value?.['entry'];
  const seal = value?.['seal'];
  if (typeof entry !== 'object' || entry === null || typeof seal !== 'string') {
    return { ok: false, findings: [lineFinding('line-no-json', lineNumber, { expected: 'entry and seal' })] };
  }
  const { site, number, ...draft } = entry as Record<string, unknown>;
  const checked = readDraft(draft, { line: lineNumber });
  if (!checked.ok) return checked;
  if (
    typeof site !== 'string' ||
    !/^[a-z0-9][a-z0-9-]{0,30}$/.test(site) ||
    !Number.isSafeInteger(number) ||
    (number as number) < 1
  ) {
    return {
      ok: false,
      findings: [lineFinding('line-no-json', lineNumber, { expected: 'site and number' })],
    };
  }
  const whole = { ...checked.draft, site, number: number as number } as AnyEntry;
  return { ok: true, row: rowOf(whole, { text: canonicalJson(whole as unknown as Json), seal, keptAtMs }) };
}

/** An object in one line of JSON; null where the line is anything else. */
export function objectInLine(line: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}

function lineFinding(code: BookFinding['code'], line: number, data: BookFinding['data']): BookFinding {
  return { code, severity: 'error', where: { line }, data, entries: [] };
}

function rowFinding(code: BookFinding['code'], line: number, row: KeptEntry, arrived: Arrived): BookFinding {
  const next = code === 'chain-gap' ? headIn(arrived, row.site).number + 1 : null;
  const data = { site: row.site, number: row.number, next };
  return { code, severity: 'error', where: { line, entry: row.id }, data, entries: [row.id] };
}
