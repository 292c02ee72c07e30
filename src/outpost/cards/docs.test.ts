// docs/cards.md and the JSON Schema: no key, word, name, function or unit is left out, and the examples do what they say.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectGolden } from '../../../tests/golden/record.ts';
import { cardJsonSchema } from './card-schema.ts';
import { CARD_UNITS, type CardUnit, fromSi, spanFromSi, spanToSi, toSi, typeOfUnit } from './card-units.ts';
import { holdsSurely, type Leaf, reckonFormula } from './formula/evaluate.ts';
import { FUNCTIONS } from './formula/functions.ts';
import { parseFormula } from './formula/parse.ts';
import { ACT_NAMES, ACTS } from './hazards.ts';
import { NAMES_OF_CHOICES, NAMES_OF_OUTPOST } from './names.ts';
import { readCard } from './read-card.ts';

const ROOT = join(import.meta.dirname, '../../..');
const DOCS = join(ROOT, 'docs');
const page = readFileSync(join(DOCS, 'cards.md'), 'utf8');

test('docs/card.schema.json is up to date', () => {
  expectGolden('card.schema.json', `${JSON.stringify(cardJsonSchema(), null, 2)}\n`, DOCS);
});

const isOnPage = (word: string): boolean => page.includes(`\`${word}\``);

test('every key and every word of the schema is on the page', () => {
  const words = new Set<string>();
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    const { enum: list } = node as { enum?: string[] };
    for (const word of list ?? []) words.add(word);
    for (const [key, inner] of Object.entries(node)) {
      if (key === 'properties') for (const name of Object.keys(inner as object)) words.add(name);
      walk(inner);
    }
  };
  walk(cardJsonSchema());
  expect(words.size).toBeGreaterThan(120);
  expect([...words].filter((word) => !isOnPage(word) && !page.includes(`${word}: `))).toEqual([]);
});

test('every name, function and act is on the page, with what it takes', () => {
  const names = Object.entries(NAMES_OF_CHOICES).flatMap(([of, keys]) =>
    Object.keys(keys).map((key) => `${of}.${key}`),
  );
  expect(names.length).toBeGreaterThan(25);
  expect([...names, ...Object.keys(NAMES_OF_OUTPOST)].filter((name) => !isOnPage(name))).toEqual([]);
  const calls = Object.entries(FUNCTIONS).map(([name, { takes }]) =>
    takes === null ? `${name}(…)` : `${name}(${takes.map(([each]) => each).join(', ')})`,
  );
  expect(calls.filter((call) => !isOnPage(call))).toEqual([]);
  const rows = ACT_NAMES.map((act) => {
    const { hazards, ratings } = ACTS[act];
    const after = 'after' in ACTS[act] ? (ACTS[act] as { after: string }).after : '';
    return `| \`${act}\` | ${hazards.join(', ')} | ${ratings.map((name) => `\`${name}\``).join(', ')} | ${after} |`;
  });
  expect(rows.filter((row) => !page.includes(row))).toEqual([]);
});

test('the table has every card that ships, with its lines', () => {
  const counted = readdirSync(join(ROOT, 'cards')).map((name) => {
    const read = readCard(readFileSync(join(ROOT, 'cards', name), 'utf8'), { file: name });
    if (!read.ok) throw new Error(name);
    return [name, `${read.card.steps.length}`];
  });
  const shown = [...page.matchAll(/^\| `(\S+\.yaml)` \| .* \| (\d+) \|$/gm)].map(([, ...cells]) => cells);
  expect(shown.sort()).toEqual(counted.sort());
});

test('the card of the page is read', () => {
  const [, text = ''] = /```yaml\n(format: waterwright card[\s\S]*?)```/.exec(page) ?? [];
  expect(text.length).toBeGreaterThan(400);
  expect(readCard(text, { file: 'page.yaml' })).toMatchObject({ ok: true });
});

/** `to.content=0.6±0.1 L` with ± of 95 %. */
function leafIn(word: string): readonly [string, Leaf] {
  const [, name = '', value = '', u95 = '0', unit = ''] =
    /^(\S+)=([\d.]+)(?:±([\d.]+))? (.+)$/.exec(word) ?? [];
  return [
    name,
    { value: toSi(Number(value), unit as CardUnit), u: spanToSi(Number(u95) / 2, unit as CardUnit) },
  ];
}

describe('examples', () => {
  const [, block = ''] = /```examples\n([\s\S]*?)```/.exec(page) ?? [];
  const lines = block.split('\n').filter((line) => line.trim() !== '');

  test('there are enough of them', () => {
    expect(lines.length).toBeGreaterThanOrEqual(10);
  });

  test.each(lines)('%s', (line) => {
    const [, text = '', given = '', expected = ''] = /^(.*?)\s+(?:where (.*?))?\s*=> (.*)$/.exec(line) ?? [];
    const leaves = new Map(given === '' ? [] : given.split('; ').map(leafIn));
    expect(told(text.trim(), leaves)).toBe(expected);
  });
});

function told(text: string, leaves: ReadonlyMap<string, Leaf>): string {
  const parsed = parseFormula(text);
  if (!parsed.ok) return `${parsed.fault.code}, column ${parsed.fault.column}`;
  if (parsed.formula.compared !== null) return holdsSurely(parsed.formula, leaves);
  const reckoned = reckonFormula(parsed.formula, leaves);
  if (reckoned.is === 'not known') return `not known: ${reckoned.missing.join(', ')}`;
  if (reckoned.is === 'no answer') return `no answer: ${reckoned.why}`;
  const unit = UNITS_SHOWN.find((each) => text.startsWith(each[0]))?.[1] ?? 'L';
  const value = typeOfUnit(unit).point ? fromSi(reckoned.value, unit) : spanFromSi(reckoned.value, unit);
  const doubt = reckoned.u === 0 ? '' : ` ± ${round(2 * spanFromSi(reckoned.u, unit))}`;
  return `${round(value)}${doubt} ${unit}`;
}

/** What an example is told in, by how it begins. */
const UNITS_SHOWN: readonly (readonly [string, CardUnit])[] = [
  ['end_pressure', 'kPa abs'],
  ['largest_bottle', 'kPa abs'],
  ['dose_volume', 'mL'],
  ['dose_result', 'mg/L'],
  ['boils_at', '°C'],
  ['heating_time', 'min'],
  ['fill_time', 'min'],
  ['stroke_volume', 'mL'],
  ['150 kPa', 'kPa over cabin'],
];

const round = (value: number): string => String(Math.round(value * 1000) / 1000);

test('units of the page are units of cards', () => {
  const shown = /Units: (.*)\./.exec(page)?.[1]?.match(/`[^`]+`/g) ?? [];
  expect(shown.map((word) => word.slice(1, -1)).sort()).toEqual([...CARD_UNITS].sort());
});
