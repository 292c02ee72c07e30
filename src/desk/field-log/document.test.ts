// docs/field-log.md: its sample lines are one log that is read without a finding, and it names every field of every kind.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { corrieReader } from '../../../tests/field-log/corrie-log.ts';
import { readFieldLog } from './index.ts';
import { fieldLogJsonSchema } from './json-schema.ts';
import { LONGEST_LINE, MOST_LINES } from './raw-lines.ts';
import { lineShapes } from './shape/line-shapes.ts';

const DOCUMENT = readFileSync(join(import.meta.dirname, '../../../docs/field-log.md'), 'utf8');
const kinds = Object.keys(lineShapes());
const samples = [...DOCUMENT.matchAll(/```json\n([\s\S]*?)```/g)].flatMap(([, block = '']) =>
  block.trim().split('\n'),
);
const readCorrie = corrieReader(readFieldLog);

/** The text below the heading of a kind, up to the next heading. */
function sectionOf(kind: string): string {
  const [, section] = DOCUMENT.split(`\n### ${kind}\n`);
  if (section === undefined) throw new Error(`no section for ${kind}`);
  return section.split(/\n##+ /)[0] ?? '';
}

/** Names of all fields of a shape, those of its items inside. */
function fieldsOf(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const node = schema as Record<string, unknown>;
  const own = node['type'] === 'object' ? Object.keys((node['properties'] ?? {}) as object) : [];
  return [...own, ...Object.values(node).flatMap(fieldsOf)];
}

test('the sample lines are one log, and every one is understood', () => {
  const read = readCorrie(samples);
  expect(read.findings).toEqual([]);
  expect(read.understood).toBe(samples.length);
  expect(read.drafts.length).toBe(samples.length);
});

test('each kind has a section with a sample of its own', () => {
  expect(kinds.length).toBe(34);
  for (const kind of kinds) expect(sectionOf(kind)).toContain(`"kind": "${kind}"`);
  const sections = [...DOCUMENT.matchAll(/\n### ([a-z_]+)\n/g)].map(([, kind]) => kind);
  expect([...sections].sort()).toEqual([...kinds].sort());
});

test.each(kinds)('%s: the section names every field', (kind) => {
  const schema = (fieldLogJsonSchema()['$defs'] as Record<string, unknown>)[kind];
  const common = ['id', 't', 'day', 'kind', 'by', 'crew_min', 'note', 'source'];
  const text = sectionOf(kind);
  const fields = fieldsOf(schema).filter((field) => !common.includes(field));
  for (const field of fields) expect(text).toContain(`\`${field}\``);
  for (const field of common) expect(DOCUMENT).toContain(`| \`${field}\` |`);
});

test('the caps that it names are those of the reader', () => {
  const written = (count: number) =>
    String(count)
      .replace(/(?=(\d{3})+$)/g, ',')
      .replace(/^,/, '');
  expect(DOCUMENT).toContain(
    `at most ${written(LONGEST_LINE)} signs, a log at most ${written(MOST_LINES)} lines`,
  );
});
