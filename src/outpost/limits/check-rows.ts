// Faults between the keys of a row, and between rows: ids, sources and acts that are there, figures that fit their evidence.
import { nearest } from '../../ground/units/index.ts';
import type { Fault, OutpostFindingCode, Path } from '../outpost-finding.ts';
import type { YamlTree } from '../yaml-tree.ts';
import type { LimitFindingCode } from './limit-finding.ts';
import { type LimitSetFile, limitSetSchema } from './limit-set-schema.ts';
import { fitTogether } from './limit-units.ts';

type Code = LimitFindingCode | OutpostFindingCode;
export type LimitFault = Fault<Code>;
type Row = LimitSetFile['rows'][number];
type Add = (code: Code, path: Path, data: LimitFault['data']) => void;
type Raw = Readonly<Record<string, unknown>>;

/** Whatever else is wrong, what can be checked is checked: all faults of a file are told at once. */
export function checkRows(tree: YamlTree): readonly LimitFault[] {
  const faults: LimitFault[] = [];
  const add: Add = (code, path, data) =>
    faults.push({ code, spot: { offset: tree.spotOf(path), path }, data });
  const raw = asRaw(tree.value);
  for (const section of ['sources', 'acts', 'rows'] as const) checkTwice(raw, section, add);
  const schema = limitSetSchema().shape.rows.element;
  listOf(raw['rows']).forEach((item, index) => {
    const { data: row } = schema.safeParse(item, { jitless: true });
    if (row === undefined) return;
    checkNames(raw, row, ['rows', index], add);
    checkFigures(row, ['rows', index], add);
  });
  return faults;
}

const asRaw = (value: unknown): Raw => (typeof value === 'object' && value !== null ? (value as Raw) : {});
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const textsOf = (list: readonly unknown[]): readonly string[] =>
  list.filter((item): item is string => typeof item === 'string');
const idsOf = (list: unknown): readonly string[] => textsOf(listOf(list).map((item) => asRaw(item)['id']));

function checkTwice(raw: Raw, section: string, add: Add): void {
  const seen = new Map<string, string>();
  listOf(raw[section]).forEach((item, index) => {
    const { id } = asRaw(item);
    if (typeof id !== 'string') return;
    const first = seen.get(id.toLowerCase());
    if (first === undefined) seen.set(id.toLowerCase(), id);
    else add('id-twice', [section, index, 'id'], { what: section.slice(0, -1), id, first });
  });
}

/** A section that cannot be read has been reported; what it would have named is not known. */
function checkNames(raw: Raw, row: Row, path: Path, add: Add): void {
  const uses = textsOf(listOf(asRaw(raw['set'])['uses']));
  const named = [
    { key: 'source', id: row.source, known: idsOf(raw['sources']) },
    { key: 'act', id: row.act, known: idsOf(raw['acts']) },
    ...(row.requiredFor ?? []).map((id) => ({ key: 'requiredFor', id, known: uses })),
  ];
  for (const { key, id, known } of named)
    if (known.length > 0 && !known.includes(id))
      add('id-unknown', [...path, key], { what: NAMES_OF[key] ?? key, id, known, near: nearest(id, known) });
}

const NAMES_OF: Readonly<Record<string, string>> = { requiredFor: 'use' };

function checkFigures(row: Row, path: Path, add: Add): void {
  const { id, evidence, status, remembered, unit, basis } = row;
  const own = has(row);
  if (evidence === 'memory' && (status === 'on' || own)) {
    add('row-from-memory-in-force', path, { row: id, status, figure: own });
  } else if (evidence !== 'memory' && remembered !== undefined)
    add('row-remembered-not-memory', [...path, 'remembered'], { row: id, evidence });
  else if (!own && !has(remembered ?? {})) add('row-without-figure', path, { row: id });
  if (!fitTogether(unit, basis)) add('row-unit-and-basis', [...path, 'basis'], { row: id, unit, basis });
  checkOrder(row, path, add);
  checkOrder(remembered ?? {}, [...path, 'remembered'], add);
}

interface Figures {
  readonly atLeast?: number;
  readonly atMost?: number;
}

const has = ({ atLeast, atMost }: Figures): boolean => atLeast !== undefined || atMost !== undefined;

function checkOrder({ atLeast, atMost }: Figures, path: Path, add: Add): void {
  if (atLeast === undefined || atMost === undefined || atLeast <= atMost) return;
  add('amount-order', [...path, 'atLeast'], {
    smaller: 'atLeast',
    larger: 'atMost',
    low: atLeast,
    high: atMost,
    strict: false,
  });
}
