// Shapes of what the sheet of a store tells of its biocide and of its own life.
import * as z from 'zod';
import type { BiocideSheet, LifeSheet } from '../../../papers/index.ts';
import { figure } from './figures.ts';

const maybeNumber = z.number().nullable();
const maybeDay = z.int().nullable();

const age = z.strictObject({
  days: z.number(),
  since: z.string(),
  by: z.enum(['dose', 'fill', 'opening', 'delivery']),
  mostDays: maybeNumber,
  untilDay: maybeDay,
  isOver: z.boolean(),
});

const redose = z.strictObject({
  volume: figure,
  resulting: figure,
  mostMgPerL: maybeNumber,
  assumesNothingLeft: z.boolean(),
  cautions: z.array(z.strictObject({ signal: z.enum(['WARNING', 'CAUTION', 'NOTICE']), text: z.string() })),
});

export const biocideSheet = z
  .strictObject({
    biocide: z.string(),
    results: z
      .array(
        z.strictObject({
          ref: z.string(),
          id: z.string(),
          stamp: z.string(),
          valueMgPerL: z.number(),
          below: z.boolean(),
        }),
      )
      .describe('of the water that stands in it now'),
    level: figure.nullable(),
    levelIs: z.enum(['now', 'as read', 'not known']),
    rate: figure.nullable(),
    wallLoss: figure.nullable(),
    wall: figure,
    ratedBy: z.enum(['own', 'kind', 'both', 'not known']),
    ratedResults: z.int(),
    ratedStores: z.int(),
    noRate: z.enum(['no results', 'one result', 'limits alone', 'no instrument', 'undetermined']).nullable(),
    leastMgPerL: maybeNumber,
    mostMgPerL: maybeNumber,
    ends: z
      .strictObject({ q05: maybeDay, q50: maybeDay, q95: maybeDay })
      .nullable()
      .describe('outpost days on which the least is passed, by 5, 50 and 95 outcomes of a hundred'),
    age: age.nullable(),
    untilDay: maybeDay,
    untilBy: z.enum(['forecast', 'policy', 'below least', 'not known']),
    redose: redose.nullable(),
    noRedose: z
      .enum(['no concentrate told', 'no target', 'not needed', 'nothing inside', 'refused'])
      .nullable(),
    line: z
      .strictObject({
        line: z.string(),
        lastFlow: z.string().nullable(),
        days: z.number(),
        untilDay: maybeDay,
        isOver: z.boolean(),
      })
      .nullable(),
  })
  .meta({ id: 'BiocideSheet' }) satisfies z.ZodType<BiocideSheet>;

export const lifeSheet = z
  .strictObject({
    fills: z.int(),
    empties: z.int(),
    days: z.number(),
    since: z.string(),
    sinceWhat: z.enum(['disinfected', 'first in the book']),
    lifeCycles: maybeNumber,
    lifeDays: maybeNumber,
    verdict: z.enum(['within', 'near', 'over', 'no life told']),
  })
  .meta({ id: 'LifeSheet' }) satisfies z.ZodType<LifeSheet>;
