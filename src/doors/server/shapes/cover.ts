// Shape of the cover of a grade: days that its free water lasts, as quantiles; held against the type of the papers by the compiler.
import * as z from 'zod';
import type { CoverFigure } from '../../../papers/index.ts';
import { because, figure } from './figures.ts';
import { coverAtRate } from './story.ts';

const days = z.number().nullable().describe('days; null: it does not run out in that outcome');
const quantiles = z.strictObject({ q05: days, q50: days, q95: days });

export const coverFigure = z
  .strictObject({
    ...quantiles.shape,
    unit: z.literal('d'),
    basis: z.enum(['learned', 'norm', 'not enough data']),
    free: figure,
    use: figure.nullable(),
    outDayQ05: z.int().nullable(),
    outDayQ50: z.int().nullable(),
    toFloor: quantiles.nullable(),
    atRates: z.array(coverAtRate).nullable().describe('at the rates of policy'),
    because,
  })
  .meta({ id: 'Cover' }) satisfies z.ZodType<CoverFigure>;
