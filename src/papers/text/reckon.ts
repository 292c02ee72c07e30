// What a calculator answered, for a terminal: cautions first, then the answer, then what it was reckoned from.
import { plusMinus, roundInTwoDigits, roundToDigits, styled, unitSign } from '../../ground/units/index.ts';
import type { ReckonInput, ReckonResult, ReckonSheet } from '../sheets/reckon.ts';
import { reckonLabels } from '../words/en/reckon/page-labels.ts';
import { saidSeconds } from '../words/en/reckon/said-seconds.ts';
import { inputLabel, namedOrChosen, reckonWords, resultLabel, sourceLabel } from '../words/en/reckon.ts';
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
    ...([...sheet.results, ...sheet.inputs].every(({ u95 }) => u95 === null)
      ? prose(reckonLabels.noDoubt)
      : []),
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
  const text =
    limit !== null || u95 === null
      ? signed(bare(value, sign), options.style)
      : signed(inTwoDigits({ value, u95, unit: sign }), options.style);
  return unit === 's' && value >= 60 ? `${text}, ${saidSeconds(value)}` : text;
}

/** `173.6 ± 3.2 L`: who reckons on wants to see both digits that GUM 7.2.6 allows. */
export function inTwoDigits({ value, u95, unit }: { value: number; u95: number; unit: string }): string {
  const rounded = roundInTwoDigits({ value, u95 });
  const parts = [
    styled(rounded.value, 'screen'),
    plusMinus('screen'),
    styled(rounded.u95 ?? '', 'screen'),
    unit,
  ];
  return parts.filter((part) => part !== '').join('\u00A0');
}

/** Without a ± there is nothing to round to: four digits are more than anybody reads off an instrument. */
function bare(value: number, unit: string): string {
  const digits = styled(roundToDigits(value, DIGITS), 'screen');
  return unit === '' ? digits : `${digits}\u00A0${unit}`;
}
const DIGITS = 4;

/** What somebody typed or the book knows, how good the instruments are, and what makes a part of the ± that can be seen. */
function bears({ name, by, share, u95 }: ReckonInput): boolean {
  if (name.endsWith('-doubt')) return true;
  return by === 'typed' || (by === 'book' && u95 !== null) || (share ?? 0) >= LEAST_SHARE;
}

const LEAST_SHARE = 0.005;

function inputLines(
  { inputs, names }: ReckonSheet,
  options: TextOptions,
  explain: boolean,
): readonly string[] {
  const named = Object.entries(names).map(([name, value]) => `${inputLabel(name)} ${namedOrChosen(value)}`);
  const shown = inputs.filter((input) => explain || bears(input));
  return [
    ...(named.length > 0 ? wrap(`${reckonLabels.asked} ${named.join(', ')}.`, proseWidth(options)) : []),
    ...table(INPUT_COLUMNS(options), shown, options).lines,
  ];
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
    ? signed(typedDigits(shown.value, shown.unit), options.style)
    : said(shown, options);
}

/** As many digits as anybody types; a conversion leaves none behind. */
function typedDigits(value: number, unit: string): string {
  const digits = styled(roundToDigits(value, MOST_TYPED), 'screen');
  return unit === '' ? digits : `${digits}\u00A0${unit}`;
}
const MOST_TYPED = 7;

/** A bore in millimetres and a roughness in micrometres, as they are typed. */
export function handy({ value, u95, unit }: Pick<ReckonInput, 'value' | 'u95' | 'unit'>): {
  readonly value: number;
  readonly u95: number | null;
  readonly unit: string;
} {
  const scaled = (by: number, to: string) => ({
    value: value * by,
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
