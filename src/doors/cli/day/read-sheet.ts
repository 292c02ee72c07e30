// A day sheet that was written before: lines of name and value, two columns, JSON, or bare values in the order of the meters.
import type { DayFormItem } from '../../../desk/index.ts';
import { nearest } from '../../../ground/units/index.ts';
import { type InputFile, linesOf } from '../input-file.ts';
import { badInput } from '../problem.ts';

/** Readings as texts, by instrument. */
export function readSheet(
  { name, text }: InputFile,
  items: readonly DayFormItem[],
): Readonly<Record<string, string>> {
  const told = linesOf(text).flatMap((line, k) => {
    const bare = line.replace(/\r$/, '').trim();
    return bare === '' || bare.startsWith('#') ? [] : [{ text: bare, line: k + 1 }];
  });
  if (told.length === 0)
    throw badInput('day-sheet-form', { received: 'nothing', names: namesOf(items) }, { file: name });
  if (told[0]?.text.startsWith('{')) return ofJson({ name, text }, items);
  if (told.every(({ text: each }) => isBareValue(each)))
    return inOrder(
      told.map(({ text: each }) => each),
      name,
      items,
    );
  const readings = new Map<string, string>();
  for (const [k, { text: each, line }] of told.entries()) {
    if (k === 0 && isHeading(each)) continue;
    const pair = pairOf(each, items);
    if (pair === null || readings.has(pair.instrument)) throw noReading(each, items, { file: name, line });
    readings.set(pair.instrument, pair.value);
  }
  return Object.fromEntries(readings);
}

/** `455`, `6.9 L`, `-`: no name before it. */
function isBareValue(text: string): boolean {
  return /^(?:-|[-+\u2212]?[\d.,\u202F\u2009]+(?:\s*[^\s\d]{1,8})?)$/.test(text);
}

function isHeading(text: string): boolean {
  return /^"?(?:name|meter|instrument)"?\s*[,;\t]\s*"?(?:value|reading)/i.test(text);
}

/** Every meter has its value, or it is not known which value is whose. */
function inOrder(
  values: readonly string[],
  file: string,
  items: readonly DayFormItem[],
): Readonly<Record<string, string>> {
  if (values.length !== items.length) {
    throw badInput('day-sheet-count', { values: values.length, wanted: items.length }, { file });
  }
  return Object.fromEntries(items.map(({ instrument }, k) => [instrument, values[k] ?? '-']));
}

function ofJson({ name, text }: InputFile, items: readonly DayFormItem[]): Readonly<Record<string, string>> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw badInput('json-unreadable', { received: (error as Error).message.slice(0, 120) }, { file: name });
  }
  const pairs = Object.entries(value as Record<string, unknown>).map(([told, reading]) => {
    const item = itemNamed(told, items);
    const isReading = reading === null || typeof reading === 'number' || typeof reading === 'string';
    if (item === null || !isReading)
      throw noReading(`${told}: ${JSON.stringify(reading)}`, items, { file: name });
    return [item.instrument, reading === null ? '-' : `${reading}`] as const;
  });
  return Object.fromEntries(pairs);
}

/** The name that the line begins with is the longest one that fits; what is behind it is the value. */
function pairOf(text: string, items: readonly DayFormItem[]): { instrument: string; value: string } | null {
  const names = items
    .flatMap((item) => [
      { item, name: item.instrument },
      { item, name: item.name },
    ])
    .sort((a, b) => b.name.length - a.name.length);
  const plain = text.replace(/"/g, '');
  for (const { item, name } of names) {
    if (plain.slice(0, name.length).toLowerCase() !== name.toLowerCase()) continue;
    const match = /^(?:\s*[:=,;\t]\s*|\s+)(\S.*)$/.exec(plain.slice(name.length));
    if (match?.[1] !== undefined) return { instrument: item.instrument, value: match[1].trim() };
  }
  return null;
}

function itemNamed(typed: string, items: readonly DayFormItem[]): DayFormItem | null {
  const wanted = typed.trim().toLowerCase();
  return (
    items.find(
      ({ instrument, name }) => instrument.toLowerCase() === wanted || name.toLowerCase() === wanted,
    ) ?? null
  );
}

function noReading(
  text: string,
  items: readonly DayFormItem[],
  where: { file: string; line?: number },
): Error {
  const name = text.split(/[\s:=,;]/)[0] ?? '';
  const near = nearest(
    name,
    items.map(({ instrument }) => instrument),
  );
  return badInput(
    'day-sheet-line',
    { received: text.slice(0, 60), nearest: near, names: namesOf(items) },
    where,
  );
}

function namesOf(items: readonly DayFormItem[]): readonly string[] {
  return items.map(({ instrument }) => instrument);
}
