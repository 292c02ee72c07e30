// English for samples and results: how each stands, what is due, and what a result means before it is kept.
import type {
  DueLine,
  FigureLine,
  FigureVerdict,
  ResultSheet,
  SampleLine,
  SampleState,
} from '../../sheets/samples.ts';
import { counted, listed, saidValue } from './said.ts';

export const sampleStates: Readonly<Record<SampleState, string>> = {
  waits: 'waits',
  late: 'LATE',
  passed: 'passed',
  failed: 'FAILED',
  'not judged': 'no limit for it',
  'set aside': 'set aside',
};

export const figureVerdicts: Readonly<Record<FigureVerdict, string>> = {
  within: 'within',
  above: 'ABOVE',
  below: 'BELOW',
  'cannot be told': 'cannot be told',
  'no limit set': 'no limit set: hold',
  'no limit': 'no limit',
};

/** `silver 0.03 mg/L`, `<0.05 mg/L`. */
export function saidFigure({ parameter, value, censored, unit }: FigureLine): string {
  const sign = censored === 'below' ? '<' : censored === 'above' ? '>' : '';
  return `${parameter} ${sign}${saidValue(value, unit)}`.trim();
}

/** `0.05 to 0.4 mg/L`, `at most 50 CFU/mL`. */
export function saidLimits({ limits }: FigureLine): string {
  const [first] = limits;
  if (first === undefined) return '';
  const least = Math.max(...limits.map(({ atLeast }) => atLeast ?? Number.NEGATIVE_INFINITY));
  const most = Math.min(...limits.map(({ atMost }) => atMost ?? Number.POSITIVE_INFINITY));
  const { unit } = first;
  if (limits.some((limit) => limit.unit !== unit)) return listed(limits.map(({ row }) => row));
  if (Number.isFinite(least) && Number.isFinite(most))
    return `${saidValue(least, '')} to ${saidValue(most, unit)}`;
  return Number.isFinite(least) ? `at least ${saidValue(least, unit)}` : `at most ${saidValue(most, unit)}`;
}

export function saidDue({ kind, name, parameters }: DueLine): string {
  const tests = listed(parameters);
  switch (kind) {
    case 'interval':
      return name;
    case 'test':
      return `result of ${name}: ${tests}`;
    case 'treated':
      return `sample of the treated ${name}: ${tests}`;
    case 'certificate':
      return `own sample of what came on the loader\u2019s certificate, ${name}: ${tests}`;
  }
}

export const sampleLabels = {
  none: 'No sample is in the book. The first: waterwright sample add STORE.',
  next: 'One of them whole: waterwright sample show SAMPLE.',
  dueHead: 'DUE',
  setAside: 'set aside',
  older: (older: number, all: number): string =>
    `${counted(older, 'older sample')} not shown: waterwright sample list --most ${all}.`,
  waitsFor: (tests: readonly string[]): string => `waits for ${listed(tests)}`,
  overdue: (days: number): string => (days === 0 ? '' : `${counted(days, 'day')} over`),
  head: ({ sample, place, state, taken }: SampleLine): string =>
    `${sample} of ${place}, drawn ${taken}: ${sampleStates[state]}.`,
  facts: (
    line: SampleLine,
    { method, volumeL }: { readonly method: readonly string[]; readonly volumeL: number | null },
  ) =>
    [
      { name: 'drawn from', text: line.drawnFrom ?? '' },
      { name: 'speaks of', text: listed(line.speaksOf) },
      { name: 'for', text: listed(line.tests) },
      { name: 'waits for', text: listed(line.open) },
      { name: 'bottles', text: listed(line.bottles) },
      { name: 'batch', text: line.batch ?? '' },
      { name: 'second of', text: line.duplicateOf ?? '' },
      { name: 'volume', text: volumeL === null ? '' : saidValue(volumeL * 1000, 'mL') },
      { name: 'result', text: line.result ?? '' },
      { name: 'read', text: listed(method) },
      { name: 'entries', text: listed([...(line.ref === null ? [] : [line.ref]), ...line.resultRefs]) },
    ].filter(({ text }) => text !== ''),
  resultHead: ({ sample, speaksOf, fails }: ResultSheet): string => {
    const of = speaksOf.length === 0 ? '' : ` speaks of the water of ${listed(speaksOf)}`;
    return fails.length === 0
      ? `${sample}${of === '' ? ': nothing of it fails' : `${of}; nothing of it fails`}.`
      : `${sample}${of === '' ? '' : `${of};`} FAILS: ${listed(fails)}.`;
  },
  columns: {
    sample: 'SAMPLE',
    place: 'PLACE',
    taken: 'DRAWN',
    state: 'STATE',
    figures: 'FIGURES',
    ref: 'ENTRY',
    due: 'DUE',
    overdue: 'OVER',
    what: 'WHAT',
    parameter: 'PARAMETER',
    figure: 'FIGURE',
    limit: 'LIMIT',
    verdict: 'IS',
  },
} as const;
