// What a calculator answered, for a terminal: cautions first, then the answer, then what it was reckoned from.
import { roundAtPlace, styled, unitSign } from '../../ground/units/index.ts';
import type { ReckonInput, ReckonResult, ReckonSheet } from '../sheets/reckon.ts';
import { reckonLabels } from '../words/en/reckon/page-labels.ts';
import { saidSeconds } from '../words/en/reckon/said-seconds.ts';
import { choiceLabel, inputLabel, reckonWords, resultLabel, sourceLabel } from '../words/en/reckon.ts';
import { saidValue } from '../words/en/said.ts';
import { fieldsOf, said } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { signed } from './signs.ts';
import { table } from './table.ts';
import { hanging, wrap } from './wrap.ts';

export function reckonText(
  sheet: ReckonSheet,
  options: TextOptions,
  how: { readonly explain: boolean } = { explain: false },
): string {
  return `${linesOf(sheet, options, how).join('\n')}\n`;
}

function linesOf(
  sheet: ReckonSheet,
  options: TextOptions,
  how: { readonly explain: boolean },
): readonly string[] {
  if (options.style === 'plain') return plainLines(sheet);
  const { title, question } = reckonWords(sheet.calculator);
  const prose = (text: string) => wrap(signed(text, options.style), proseWidth(options));
  return [
    ...prose(`${title}: ${question}`),
    ...cautionLines(sheet, options),
    '',
    ...table(RESULT_COLUMNS(options), sheet.results, options).lines.slice(1),
    ...sheet.sayings.flatMap(({ text }) => prose(text)),
    ...(sheet.results.every(({ u95 }) => u95 === null) ? prose(reckonLabels.noDoubt) : []),
    '',
    ...inputLines(sheet, options, how.explain),
    ...(how.explain ? explained(sheet, options) : [...prose(reckonLabels.explain)]),
  ];
}

/** WARNING, CAUTION and NOTICE stand before what they are about. */
function cautionLines({ cautions }: ReckonSheet, options: TextOptions): readonly string[] {
  return cautions.flatMap(({ signal, text }) =>
    hanging(signal, signed(text, options.style), { width: proseWidth(options), indent: 10 }),
  );
}

const RESULT_COLUMNS = (options: TextOptions) => [
  {
    head: '',
    align: 'left',
    priority: 0,
    cell: ({ name }: ReckonResult) => resultLabel(name),
    least: 18,
  } as const,
  {
    head: '',
    align: 'left',
    priority: 0,
    cell: (result: ReckonResult) => resultText(result, options),
  } as const,
];

/** `341.7 ± 18 s, 5 min 42 s`: seconds in minutes besides, and an end of a band without a ±. */
export function resultText(result: ReckonResult, options: TextOptions): string {
  const { value, u95, unit, limit } = result;
  const sign = unitSign(unit);
  const bare = limit !== null || u95 === null;
  const text = bare
    ? signed(saidValue(forPeople(result), sign), options.style)
    : signed(inTwoDigits({ value, u95, unit: sign }), options.style);
  return unit === 's' && value >= 60 ? `${text}, ${saidSeconds(value)}` : text;
}

/**
 * Value and ± at the second digit of the ±: GUM 7.2.6 allows two, and who reckons wants to see them; `173.6 ± 3.2 L`.
 * Elsewhere one is enough.
 */
export function inTwoDigits({ value, u95, unit }: { value: number; u95: number; unit: string }): string {
  const place = placeOfSecond(u95);
  const digits = (x: number) => styled(roundAtPlace(x, place), 'screen');
  return `${digits(value)} ± ${digits(u95)}${unit === '' ? '' : `\u00A0${unit}`}`.replaceAll(' ', '\u00A0');
}

/** `-1` for 3.17, `0` for 31.7. */
function placeOfSecond(u95: number): number {
  return Number(u95.toExponential(1).split('e')[1]) - 1;
}

/** Without a ± there is nothing to round to: four digits are more than anybody reads off an instrument. */
function forPeople({ value }: ReckonResult): number {
  return value === 0 ? 0 : Number(value.toPrecision(DIGITS));
}
const DIGITS = 4;

/** What somebody typed or the book knows, and what makes a part of the ± that can be seen. */
function bears({ by, share, u95 }: ReckonInput): boolean {
  return by === 'typed' || (by === 'book' && u95 !== null) || (share ?? 0) >= LEAST_SHARE;
}

const LEAST_SHARE = 0.005;

function inputLines(
  { inputs, names }: ReckonSheet,
  options: TextOptions,
  explain: boolean,
): readonly string[] {
  const named = Object.entries(names).map(([name, value]) => `${inputLabel(name)} ${known(value)}`);
  const shown = inputs.filter((input) => explain || bears(input));
  return [
    ...(named.length > 0 ? wrap(`${reckonLabels.asked} ${named.join(', ')}.`, proseWidth(options)) : []),
    ...table(INPUT_COLUMNS(options), shown, options).lines,
  ];
}

function known(value: string): string {
  try {
    return choiceLabel(value);
  } catch {
    return value;
  }
}

const INPUT_COLUMNS = (options: TextOptions) => [
  { head: reckonLabels.input, align: 'left', priority: 0, cell: inputName, least: 18 } as const,
  {
    head: reckonLabels.value,
    align: 'left',
    priority: 0,
    cell: (input: ReckonInput) => inputText(input, options),
  } as const,
  { head: reckonLabels.by, align: 'left', priority: 1, cell: givenBy, least: 14 } as const,
  { head: reckonLabels.share, align: 'right', priority: 2, cell: shareText } as const,
];

export function inputName({ name, place }: ReckonInput): string {
  return place === 0 ? inputLabel(name) : `${inputLabel(name)} ${place}`;
}

export function inputText(
  { value, u95, unit }: Pick<ReckonInput, 'value' | 'u95' | 'unit'>,
  options: TextOptions,
): string {
  const shown = handy({ value, u95, unit });
  return shown.u95 === null
    ? signed(saidValue(shown.value, shown.unit), options.style)
    : said(shown, options);
}

/** A bore in millimetres and a roughness in micrometres, as they are typed. */
export function handy({ value, u95, unit }: Pick<ReckonInput, 'value' | 'u95' | 'unit'>): {
  readonly value: number;
  readonly u95: number | null;
  readonly unit: string;
} {
  const scaled = (by: number, to: string) => ({
    value: Number((value * by).toPrecision(12)),
    u95: u95 === null ? null : u95 * by,
    unit: unitSign(to),
  });
  if (unit === 'm' && value !== 0 && Math.abs(value) < 1e-4) return scaled(1e6, 'um');
  if (unit === 'm' && value !== 0 && Math.abs(value) < 0.1) return scaled(1000, 'mm');
  return scaled(1, unit);
}

export function givenBy({ by, from, refs }: ReckonInput): string {
  if (by === 'typed') return reckonLabels.typed;
  const why = sourceLabel(by, from);
  if (by === 'assumed') return `${reckonLabels.assumed}: ${why}`;
  return by === 'book' && refs.length > 0
    ? `${reckonLabels.book}: ${why} (${refs.join(', ')})`
    : `${by === 'book' ? reckonLabels.book : reckonLabels.file}: ${why}`;
}

export function shareText({ share }: ReckonInput): string {
  if (share === null || share < LEAST_SHARE) return '';
  return `${Math.round(100 * share)}\u00A0%`;
}

function explained({ formulas, method }: ReckonSheet, options: TextOptions): readonly string[] {
  const { how, range, source, page } = reckonLabels;
  const width = proseWidth(options);
  const line = (head: string, text: string) =>
    hanging(head, signed(text, options.style), { width, indent: 11 });
  return [
    '',
    how,
    ...formulas.flatMap((formula) => [
      ...line('', formula.equation),
      ...line(range, formula.range),
      ...line(source, formula.source),
    ]),
    ...line(page, `docs/methods/${method}.md`),
  ];
}

/** One record a line: what, name, value, ±, unit, where it comes from. */
function plainLines({ results, inputs }: ReckonSheet): readonly string[] {
  return [
    ...results.map((result) =>
      ['result', result.name, ...fieldsOf(result), result.unit, result.limit ?? ''].join('\t'),
    ),
    ...inputs.map((input) => ['input', input.name, ...fieldsOf(input), input.unit, input.by].join('\t')),
  ];
}
