// Nothing of a line is lost: every value of the practice log stands in its entry or is held against something, and none can change unseen.
import { expect, test } from 'vitest';
import { corrieReader, LOG_OBJECTS, type LogObject, lineWith } from '../../../tests/field-log/corrie-log.ts';
import { type AnyDraft, canonicalJson, type Json } from '../../book/index.ts';
import { parseInstantIso } from '../../ground/units/index.ts';
import { readFieldLog } from './index.ts';

const readCorrie = corrieReader(readFieldLog);
const MG_PER_L = 997_800;

type Path = readonly (string | number)[];
interface Leaf {
  readonly path: Path;
  readonly value: string | number | boolean | null;
}

function leavesOf(value: unknown, path: Path = []): Leaf[] {
  if (Array.isArray(value)) return value.flatMap((item, k) => leavesOf(item, [...path, k]));
  if (typeof value !== 'object' || value === null) return [{ path, value: value as Leaf['value'] }];
  return Object.entries(value).flatMap(([key, item]) => leavesOf(item, [...path, key]));
}

/** The name of the field that a leaf stands in, list places left out: `stores.capacity_L`. */
function fieldOf(path: Path): string {
  return path.filter((step) => typeof step === 'string').join('.');
}

/**
 * Fields of which the entry has no copy. The first are held against the outpost file or against another field, and a
 * difference is a finding; of the last each value has one entry kind, one word or one instrument behind it.
 */
const CHECKED: Readonly<Record<string, readonly string[]>> = {
  '*': ['day', 'kind'],
  opening_balance: [
    'format',
    'version',
    'outpost',
    'day_1',
    'clock',
    'stores.capacity_L',
    'stores.residual_L',
    'stores.fill_L',
    'stores.full_at_L',
  ],
  // Interrupted: a pause of the run; resumed: its finish.
  transfer: ['status'],
  // The entry names the counter whose water comes by that port.
  reserve_draw: ['to'],
};

const GRADES: Readonly<Record<string, string | null>> = {
  D: 'drinking',
  T: 'technical',
  K: 'raw',
  I: 'iodine',
  W: 'waste',
  '-': null,
};

/** What a value may have become in the entry. */
function imagesOf(leaf: Leaf): unknown[] {
  const { value } = leaf;
  const key = String(leaf.path.filter((step) => typeof step === 'string').at(-1));
  if (typeof value === 'number') {
    if (key.endsWith('_kg')) return [Math.round(value * 1e6)];
    if (key.includes('_mL') && !key.includes('cfu')) return [Math.round((value * MG_PER_L) / 1000)];
    return [value, Math.round(value * MG_PER_L)];
  }
  if (typeof value !== 'string') return [value];
  const time = parseInstantIso(value);
  const words = [value, value.toLowerCase(), `${value} bed`];
  if (time.ok) return [time.instant.utcMs];
  if (key === 'grade' || key.endsWith('_grade')) return [GRADES[value]];
  return key === 'was' ? [GRADES[value.slice(0, 1)]] : words;
}

function valuesOf(draft: AnyDraft): Set<unknown> {
  return new Set(leavesOf(draft).map(({ value }) => value));
}

const whole = readCorrie();
const drafts = new Map(whole.drafts.map((draft) => [draft.origin?.ref, draft]));

test.each(LOG_OBJECTS.map((line) => [`${line['id']} ${line['kind']}`, line] as const))(
  '%s: every value has a place',
  (_name, line) => {
    const draft = drafts.get(String(line['id']));
    if (draft === undefined) throw new Error('the line has no entry');
    const values = valuesOf(draft);
    const checked = [...(CHECKED['*'] ?? []), ...(CHECKED[String(line['kind'])] ?? [])];
    const lost = leavesOf(line).filter(
      (leaf) => !checked.includes(fieldOf(leaf.path)) && !imagesOf(leaf).some((image) => values.has(image)),
    );
    expect(lost).toEqual([]);
  },
);

/** Another value of the same sort, one that may stand there where that can be told. */
function otherValue({ value, path }: Leaf): unknown {
  if (typeof value === 'boolean') return !value;
  if (value === null) return 7;
  if (typeof value === 'number')
    return Number.isInteger(value) ? value + 1 : Math.round(value * 100 + 1) / 100;
  if (/^\d{4}-\d\d-\d\dT/.test(value))
    return value.replace(/\d\dZ$/, (minute) => (minute === '00Z' ? '01Z' : '00Z'));
  if (path.at(-1) === 'grade' || fieldOf(path).endsWith('_grade')) return value === 'D' ? 'T' : 'D';
  return `${value}x`;
}

function replaced(node: unknown, path: Path, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  const copy: Record<string | number, unknown> = Array.isArray(node)
    ? ([...node] as never)
    : { ...(node as object) };
  copy[step] = replaced(copy[step], rest, value);
  return copy;
}

function said(lines: readonly LogObject[]): { entries: string; quiet: boolean } {
  const { drafts: made, findings } = readCorrie(lines);
  return { entries: canonicalJson(made as unknown as Json), quiet: findings.length === 0 };
}

const opening = lineWith('E0001');

test('no value can change without a change of the entry or a finding', () => {
  let changes = 0;
  const unseen: string[] = [];
  for (const line of LOG_OBJECTS) {
    const isOpening = line['kind'] === 'opening_balance';
    const logOf = (one: LogObject) => (isOpening ? [one] : [opening, one]);
    const before = said(logOf(line));
    expect(before.quiet).toBe(true);
    for (const leaf of leavesOf(line)) {
      const after = said(logOf(replaced(line, leaf.path, otherValue(leaf)) as LogObject));
      changes += 1;
      if (after.quiet === before.quiet && after.entries === before.entries) {
        unseen.push(`${line['id']} ${leaf.path.join('.')}`);
      }
    }
  }
  expect(unseen).toEqual([]);
  expect(changes).toBeGreaterThan(2900);
});

test('a value that nothing looks at would be seen by this test', () => {
  const line = lineWith('E0005');
  const blind = (one: LogObject) =>
    canonicalJson(readCorrie([opening, { ...one, crew_min: 8 }]).drafts as unknown as Json);
  expect(blind(line)).toBe(blind({ ...line, crew_min: 9 }));
  expect(said([opening, line])).not.toEqual(said([opening, { ...line, crew_min: 9 }]));
});
