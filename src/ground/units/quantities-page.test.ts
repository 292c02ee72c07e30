// Runs every example of docs/methods/quantities.md.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { convert } from './convert.ts';
import { formatFigure, formatRange, roundCoverDays } from './format-figure.ts';
import { formatIso, parseInstantIso } from './instant.ts';
import { formatStamp } from './outpost-day.ts';
import { parseNumber } from './parse-number.ts';
import { parseQuantity, type QuantityRule } from './parse-quantity.ts';

const page = readFileSync(join(import.meta.dirname, '../../../docs/methods/quantities.md'), 'utf8');
const block = /```examples\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
const examples = block
  .trim()
  .split('\n')
  .map((line) => /^(\S+)\s+(.*?)\s+=> (.*)$/.exec(line)?.slice(1) ?? [line, '', '']);

const plain = { style: 'plain' } as const;

function quantity(text: string, rule: QuantityRule): string {
  const read = parseQuantity(text, rule);
  return read.ok ? formatFigure(read.quantity, plain) : read.finding.code;
}

function instant(text: string, show: (at: { utcMs: number; offsetMin: number }) => string): string {
  const read = parseInstantIso(text);
  return read.ok ? show(read.instant) : read.finding.code;
}

const rule = { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 };

const acts: Readonly<Record<string, (text: string) => string>> = {
  number: (text) => {
    const read = parseNumber(text);
    return read.ok ? String(read.value) : read.finding.code;
  },
  volume: (text) => quantity(text, { dimension: 'volume' }),
  mass: (text) => quantity(text, { dimension: 'mass' }),
  pressure: (text) => quantity(text, { dimension: 'pressure' }),
  strokes: (text) => quantity(text, { dimension: 'count', defaultUnit: 'strokes' }),
  convert: (text) => {
    const [value = '', from = '', to = ''] = text.split(' ');
    return String(convert(Number(value), from, to));
  },
  print: (text) => {
    const [value = '', u95 = '', unit = ''] = text.split(' ');
    return formatFigure({ value: Number(value), u95: Number(u95), unit }, plain);
  },
  range: (text) => {
    const [middle, low, high] = text.split(' ').map(Number);
    if (middle === undefined || low === undefined || high === undefined) throw new Error(text);
    return formatRange({ middle, low, high, unit: text.split(' ')[3] ?? '' }, plain);
  },
  cover: (text) => roundCoverDays(Number(text)),
  time: (text) => instant(text, formatIso),
  stamp: (text) => instant(text, ({ utcMs }) => formatStamp(utcMs, rule, 'plain')),
};

it.each(examples)('%s %s => %s', (act = '', text = '', expected = '') => {
  const run = acts[act];
  if (run === undefined) throw new Error(`the page has an example "${act}" that no test knows`);
  expect(run(text)).toBe(expected);
});

it('has found the examples', () => {
  expect(examples.length).toBeGreaterThan(30);
  expect(new Set(examples.map(([act]) => act)).size).toBe(Object.keys(acts).length);
});
