// English for what readings have taught of instruments, norms and openings.
import { formatFigure, roundFigure, styled } from '../../../ground/units/index.ts';
import type { QuirkFacts } from '../../sheets/quirks.ts';
import { counted, listed, saidValueAt } from './said.ts';

/** `Strokes run 0.9 ± 0.6 % short …`: what it is, how surely, and from what. */
export function quirkInWords(quirk: QuirkFacts): string {
  return `${sayings[quirk.kind](quirk)}, ${lessonsInWords(quirk)}.`;
}

const sayings: Readonly<Record<QuirkFacts['kind'], (quirk: QuirkFacts) => string>> = {
  calibration: ({ name, error, countMl }) => {
    if (countMl !== null) {
      const each = within({ value: countMl * (1 + error.value), u95: countMl * error.u95 }, 'mL');
      return `${capital(name)}: ${percentOf(error, 'more', 'less')} than the ${saidValueAt(countMl, -1, 'mL')} that a count is taken for, so ${each} each`;
    }
    // True = read × (1 + error): what is truly more was read too low.
    return `${capital(name)} reads ${percentOf(error, 'low', 'high')}`;
  },
  gauge: ({ name, error, unit }) => `${capital(name)} reads ${offBy(error, unit, 'high', 'low')}`,
  shell: ({ name, error, unit }) => `Gaugings of ${name} come out ${offBy(error, unit, 'high', 'low')}`,
  norm: ({ name, error, normL }) => {
    const norm = normL ?? 0;
    const here = within({ value: norm * (1 + error.value), u95: norm * error.u95 }, 'L');
    return `${capital(name)}: ${here} a person and day here, where the norm says ${saidValueAt(norm, -2, 'L')}`;
  },
  // The reading is content + error = remainder: what is above 0 in the error lies below the remainder in the store.
  remainder: ({ name, error, unit }) =>
    `${name} stops giving ${offBy(error, unit, 'below', 'above')} its usable remainder`,
  level: ({ name, error, unit }) => `${name} is left ${offBy(error, unit, 'below', 'above')} its level`,
  opening: ({ name, error, unit }) =>
    `${name} held ${offBy(error, unit, 'more', 'less')} than what was told of it first`,
};

/** Against what the file assumes: `known to ± 0.6 %, where ± 3 % was assumed; from 14 emptied containers`. */
function lessonsInWords({ error, unit, kind, lessons, lessonsInAll }: QuirkFacts): string {
  const isRelative = kind === 'calibration' || kind === 'norm';
  const assumed = isRelative ? doubt(100 * error.assumedU95, '%') : doubt(error.assumedU95, unit);
  const known = lessons.reduce((sum, { count }) => sum + count, 0);
  const more = lessonsInAll > known ? ` and ${lessonsInAll - known} earlier ones` : '';
  return `where ${assumed} was assumed; from ${listed(lessons.map(lessonInWords))}${more}`;
}

const lessonNames: Readonly<Record<string, readonly [one: string, many: string]>> = {
  'declared-empty': ['emptied container', 'emptied containers'],
  'declared-full': ['full container', 'full containers'],
  'day-line': ['day line', 'day lines'],
  weigh: ['weighing', 'weighings'],
  gauge: ['gauging', 'gaugings'],
  pvt: ['gauging', 'gaugings'],
  'stock-count': ['stock count', 'stock counts'],
  movement: ['movement', 'movements'],
};

function lessonInWords({ kind, count }: QuirkFacts['lessons'][number]): string {
  const [one, many] = lessonNames[kind] ?? ['entry', 'entries'];
  return counted(count, one, many);
}

type Error = QuirkFacts['error'];

function percentOf({ value, u95 }: Error, above: string, below: string): string {
  return offBy({ value: 100 * value, u95: 100 * u95 }, '%', above, below);
}

/** `0.9 ± 0.6 % low`; what does not stand out from its ± is said to be right within it. */
function offBy(
  { value, u95 }: { readonly value: number; readonly u95: number },
  unit: string,
  above: string,
  below: string,
): string {
  return `${within({ value: Math.abs(value), u95 }, unit)} ${value >= 0 ? above : below}`;
}

function within(figure: { readonly value: number; readonly u95: number }, unit: string): string {
  return formatFigure({ ...figure, unit }, { style: 'screen' });
}

function doubt(u95: number, unit: string): string {
  return `±\u00A0${styled(roundFigure({ value: 0, u95 }).u95 ?? '0', 'screen')}\u00A0${unit}`;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

export const quirkLabels = {
  head: 'WHAT READINGS HAVE TAUGHT',
  none: 'Readings have not taught anything yet that was not assumed.',
  scatter: 'HOW READINGS KEEP TO THEIR DECLARED DOUBTS (1 fits; said as a finding outside 0.8 to 1.25)',
  instrument: 'READ BY',
  readings: 'READINGS',
  factor: 'FACTOR',
  showMe: 'entries',
} as const;
