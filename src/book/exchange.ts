// The book as JSON Lines: a header, then one line an entry, in the order of each site's chain. It is the exchange with another site, too.
import { canonicalJson, type Json } from './canonical.ts';
import type { AnyEntry } from './entry.ts';
import type { BookInfo, BookPort, KeptEntry } from './port.ts';
import { headOf } from './port.ts';
import { FIRST_SEAL, type Hash, type Head, sealOf } from './seal.ts';
import { type BookFinding, readDraft } from './validate.ts';
import { rowOf } from './keep.ts';

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
  const header: ExportHeader = { format: EXPORT_FORMAT, version: EXPORT_VERSION, site: info.site, purpose: info.purpose };
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
  const value = parseLine(line);
  if (value?.['format'] === EXPORT_FORMAT && typeof value['site'] === 'string') {
    const version = value['version'];
    if (version === EXPORT_VERSION) {
      const purpose = value['purpose'] === 'practice' ? 'practice' : 'book';
      return { ok: true, header: { format: EXPORT_FORMAT, version, site: value['site'], purpose } };
    }
    const data = { kind: 'export', version: typeof version === 'number' ? version : null, known: EXPORT_VERSION };
    return { ok: false, finding: { code: 'shape-newer', severity: 'error', where: { line: 1 }, data, entries: [] } };
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
  const heads = new Map((await port.heads()).map((head) => [head.site, head]));
  const before = [...heads.values()];
  const fresh: KeptEntry[] = [];
  let alreadyKept = 0;
  let lineNumber = by.firstLine - 1;
  for (const line of lines) {
    lineNumber += 1;
    if (line.trim() === '') continue;
    const read = readLine(line, lineNumber, by.keptAtMs);
    if (!read.ok) return { ok: false, findings: read.findings };
    const row = read.row;
    const head = headOf([...heads.values()], row.site, FIRST_SEAL);
    if (row.number <= head.number) {
      const kept = fresh.find((other) => other.site === row.site && other.number === row.number) ?? (await port.findNumber(row.site, row.number));
      if (kept?.seal !== row.seal) return { ok: false, findings: [rowFinding('number-reused', lineNumber, row)] };
      alreadyKept += 1;
      continue;
    }
    if (row.number !== head.number + 1) return { ok: false, findings: [rowFinding('chain-gap', lineNumber, row, head.number + 1)] };
    if (sealOf(by.hash, head.seal, row.text) !== row.seal) return { ok: false, findings: [rowFinding('seal-broken', lineNumber, row)] };
    if ((await port.find(row.id)) !== null) return { ok: false, findings: [rowFinding('id-reused', lineNumber, row)] };
    heads.set(row.site, { site: row.site, number: row.number, seal: row.seal });
    fresh.push(row);
  }
  if (fresh.length > 0) await port.append(fresh, expectedHeads(fresh, before));
  return { ok: true, accepted: fresh.length, alreadyKept, heads: [...heads.values()] };
}

function expectedHeads(fresh: readonly KeptEntry[], before: readonly Head[]): Head[] {
  return [...new Set(fresh.map((row) => row.site))].map((site) => headOf(before, site, FIRST_SEAL));
}

type LineOutcome = { ok: true; row: KeptEntry } | { ok: false; findings: BookFinding[] };

function readLine(line: string, lineNumber: number, keptAtMs: number): LineOutcome {
  const value = parseLine(line);
  const entry = value?.['entry'];
  const seal = value?.['seal'];
  if (typeof entry !== 'object' || entry === null || typeof seal !== 'string') {
    return { ok: false, findings: [lineFinding('line-no-json', lineNumber, { expected: 'entry and seal' })] };
  }
  const { site, number, ...draft } = entry as Record<string, unknown>;
  const checked = readDraft(draft, { line: lineNumber });
  if (!checked.ok) return checked;
  if (typeof site !== 'string' || !/^[a-z0-9][a-z0-9-]{0,30}$/.test(site) || !Number.isSafeInteger(number) || (number as number) < 1) {
    return { ok: false, findings: [lineFinding('line-no-json', lineNumber, { expected: 'site and number' })] };
  }
  const whole = { ...checked.draft, site, number: number as number } as AnyEntry;
  return { ok: true, row: rowOf(whole, { text: canonicalJson(whole as unknown as Json), seal, keptAtMs }) };
}

function parseLine(line: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}

function lineFinding(code: BookFinding['code'], line: number, data: BookFinding['data']): BookFinding {
  return { code, severity: 'error', where: { line }, data, entries: [] };
}

function rowFinding(code: BookFinding['code'], line: number, row: KeptEntry, next?: number): BookFinding {
  const data = { site: row.site, number: row.number, next: next ?? null };
  return { code, severity: 'error', where: { line, entry: row.id }, data, entries: [row.id] };
}
