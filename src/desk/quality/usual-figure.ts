// A figure far outside of what this outpost has read so far is asked about: 142, or 14.2?
import type { Entry } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { basisUnlessSaid, toldIn } from '../../outpost/index.ts';
import { deskFinding } from '../desk-finding.ts';
import type { ResultFigure } from './read-figure.ts';

/** So many spreads away from the mean is no usual figure. The outpost's interface asks for five. */
const TIMES = 5;
/** Fewer earlier figures say nothing of what is usual. Ours, no source. */
const LEAST_FIGURES = 4;
/** Readings that happen to be alike make no spread of nothing: this share of their mean is one. Ours, no source. */
const LEAST_SHARE = 0.1;
const SLIPS = [0.1, 10, 0.01, 100, 0.001, 1000];

/** A question, no error; none where too little was read before. A censored figure has no place to be far from. */
export function askUnusual(figure: ResultFigure, earlier: readonly Entry<'result'>[]): readonly Finding[] {
  if (figure.below === true || figure.above === true) return [];
  const values = earlier.flatMap(({ body }) => body.values).flatMap((one) => valueIn(one, figure));
  if (values.length < LEAST_FIGURES) return [];
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance =
    values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0) / (values.length - 1);
  // A count of n germs scatters by its own root.
  const counted = figure.unit.startsWith('CFU') ? Math.sqrt(Math.max(1, mean)) : 0;
  const spread = Math.max(Math.sqrt(variance), LEAST_SHARE * mean, counted);
  const [low, high] = [Math.max(0, mean - TIMES * spread), mean + TIMES * spread];
  if (figure.value >= low && figure.value <= high) return [];
  const fits = SLIPS.map((factor) => figure.value * factor).find((value) => value >= low && value <= high);
  const { parameter: of, value, unit } = figure;
  const data = { of, value, unit, low, high, fits: fits ?? null };
  return [deskFinding('reading-unusual', data, { where: { field: of }, severity: 'know' })];
}

function valueIn(one: ResultFigure, figure: ResultFigure): readonly number[] {
  if (one.parameter !== figure.parameter || one.below === true || one.above === true) return [];
  const basisOf = ({ parameter, basis }: ResultFigure) => basis ?? basisUnlessSaid(parameter) ?? '';
  const told = toldIn(
    { value: one.value, unit: one.unit, basis: basisOf(one) },
    { unit: figure.unit, basis: basisOf(figure) },
  );
  return told === undefined ? [] : [told];
}
