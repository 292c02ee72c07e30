// Shapes of trends of quality in answers; each is held against the type of the papers by the compiler.
import * as z from 'zod';
import type { Trend, TrendSheet } from '../../../papers/index.ts';
import { figure, head } from './figures.ts';

const texts = z.array(z.string());
const maybeText = z.string().nullable();
const count = z.strictObject({ beyond: z.int(), of: z.int() });
const chance = z
  .literal([1, 10, 20, 100, 1000])
  .describe(
    'chance alone gives as much in fewer than 1 of so many looks; 1: more often. No probability of a cause',
  );
const told = z.strictObject({
  value: z.number(),
  unit: z.string(),
  basis: maybeText,
  censored: z.enum(['no', 'below', 'above']),
});
const placeKind = z.enum(['store', 'point', 'grade', 'everywhere']);
const countedPlace = z.strictObject({ kind: z.enum(['store', 'point']), name: z.string(), results: z.int() });

const point = z.strictObject({
  day: z.number().describe('when the sample was drawn; 12.5 is the noon of Day 12'),
  at: z.string(),
  knownDay: z.int(),
  place: z.strictObject({ kind: placeKind, name: z.string() }).nullable(),
  grade: maybeText,
  sample: z.string(),
  ref: z.string(),
  id: z.string(),
  told,
  figure,
  against: z.enum(['within', 'above', 'below', 'unclear', 'no limit']),
  method: maybeText,
  madeAt: z.enum(['aboard', 'laboratory']).nullable(),
  duplicate: z.boolean(),
  drawnFrom: maybeText,
  afterGap: z.boolean(),
});

const signal = z.strictObject({
  rule: z.enum(['beyond the limits', 'on one side', 'rising', 'falling']),
  side: z.enum(['high', 'low']).nullable(),
  fromDay: z.int(),
  toDay: z.int(),
  ids: texts,
});

const chart = z.union([
  z.strictObject({
    limits: z.null(),
    why: z.enum(['several waters', 'few results', 'too few seen', 'no spread']),
    results: z.int(),
    seen: z.int(),
    least: z.int(),
    enough: z.array(countedPlace),
  }),
  z.strictObject({
    limits: z.strictObject({ centre: figure, low: figure.nullable(), high: figure }),
    by: z.enum(['moving ranges', 'censored fit']),
    results: z.int(),
    seen: z.int(),
    isProvisional: z.boolean(),
    full: z.int(),
    sinceDay: z.int(),
    signals: z.array(signal),
  }),
]);

const trait = z.strictObject({
  kind: z.enum(['from', 'by', 'filled on', 'brought by', 'stands in']),
  name: z.string(),
});

const pattern = z.strictObject({
  isByLimit: z.boolean(),
  now: count,
  before: z.strictObject({ count, chance }).nullable(),
  stores: z.array(
    z.strictObject({
      store: z.string(),
      found: z.enum(['above', 'below', 'seen', 'unclear', 'within', 'not seen']),
      isBeyond: z.boolean(),
      day: z.int(),
      told,
      ref: z.string(),
    }),
  ),
  sharedByAll: z.array(trait),
  groups: z.array(
    z.strictObject({ traits: z.array(trait), stores: texts, inside: count, outside: count, chance }),
  ),
});

const markValue = z.strictObject({ day: z.int(), value: z.number() }).nullable();

const trend = z.strictObject({
  parameter: z.string(),
  place: z.strictObject({ kind: placeKind, name: z.string() }),
  unit: z.string(),
  basis: maybeText,
  points: z.array(point),
  apart: z.array(z.strictObject({ sample: z.string(), ref: z.string(), told })),
  interval: z.strictObject({ service: z.string(), everyDays: z.number() }).nullable(),
  gaps: z.array(z.strictObject({ fromDay: z.int(), toDay: z.int(), days: z.int(), everyDays: z.number() })),
  methodChanges: z.array(
    z.strictObject({ day: z.number(), at: z.string(), from: z.string(), to: z.string() }),
  ),
  marks: z.array(
    z.strictObject({
      day: z.number(),
      at: z.string(),
      what: z.string(),
      before: markValue,
      after: markValue,
    }),
  ),
  limits: z.array(
    z.strictObject({
      row: z.string(),
      side: z.enum(['at least', 'at most']),
      value: z.number().nullable(),
      isOff: z.boolean(),
      source: z.string(),
      evidence: z.string(),
      firstAct: z.string(),
    }),
  ),
  chart,
  patternDays: z.int(),
  pattern: pattern.nullable().describe('null of one place, and where fewer than two stores were measured'),
}) satisfies z.ZodType<Trend>;

export const trendSheet = z.strictObject({
  head,
  parameters: z.array(
    z.strictObject({
      parameter: z.string(),
      results: z.int(),
      places: z.array(countedPlace),
      last: z.strictObject({ day: z.int(), told }),
    }),
  ),
  trend: trend.nullable().describe('null where no parameter was asked for'),
}) satisfies z.ZodType<TrendSheet>;
