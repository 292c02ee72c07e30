// What is to be said of a value of the day line while it is typed: it is no number, or not what is expected.
import type { DayFormItem } from '../../desk/index.ts';
import { parseNumber } from '../../ground/units/index.ts';

export type MeterMark = 'fine' | 'no reading' | 'no number' | 'below' | 'above';

/** Dashes of every length, as keyboards and hands write them, are one: no reading was taken. */
export function tidyReading(typed: string): string {
  const text = typed.trim();
  return /^[-\u2010-\u2015\u2212]$/.test(text) ? '-' : text;
}

/** Half a step of the meter is no difference: the ends of what is expected are shown to its step as well. */
export function markOf(item: Pick<DayFormItem, 'low' | 'high' | 'resolution'>, typed: string): MeterMark {
  const text = tidyReading(typed);
  if (text === '' || text === '-') return text === '' ? 'fine' : 'no reading';
  const read = parseNumber(text);
  if (!read.ok) return 'no number';
  const slack = (item.resolution ?? 0) / 2;
  if (item.low === null || item.high === null || item.low > item.high) return 'fine';
  if (read.value < item.low - slack) return 'below';
  return read.value > item.high + slack ? 'above' : 'fine';
}

/** What was typed, by instrument; a blank says nothing. */
export function readingsIn(values: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const said = Object.entries(values).map(([instrument, value]) => [instrument, tidyReading(value)] as const);
  return Object.fromEntries(said.filter(([, value]) => value !== ''));
}
