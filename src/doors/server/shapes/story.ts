// Shapes of the past of a store and of what a reading would be worth; each is held against the type of the papers by the compiler.
import * as z from 'zod';
import type {
  BeforeAndAfter,
  CoverAtRateFigure,
  FamilyNode,
  GaugingSheet,
  ReadingWorth,
} from '../../../papers/index.ts';
import { figure } from './figures.ts';

const familyNode: z.ZodType<FamilyNode> = z
  .strictObject({
    kind: z.enum(['store', 'hose', 'pool', 'opening', 'delivery', 'came aboard', 'older']),
    name: z.string(),
    grade: z.string().nullable(),
    volume: figure,
    share: z.number().describe('of the whole content, from 0 to 1'),
    days: z.strictObject({ first: z.int(), last: z.int() }).nullable(),
    refs: z.array(z.string()),
    entryCount: z.int(),
    get parts() {
      return z.array(familyNode);
    },
  })
  .meta({ id: 'FamilyNode' });

export const family = z.array(familyNode).describe('where its water came from');

const moment = { day: z.number(), at: z.string() };

export const gauging = z.strictObject({
  capacityL: z.number(),
  remainderL: z.number(),
  estimates: z.array(
    z.strictObject({ ...moment, when: z.enum(['line', 'before', 'after']), volume: figure }),
  ),
  readings: z.array(
    z.strictObject({
      ...moment,
      ref: z.string(),
      id: z.string(),
      stamp: z.string(),
      how: z.string(),
      read: figure,
      believed: figure.nullable(),
      difference: figure.nullable(),
    }),
  ),
}) satisfies z.ZodType<GaugingSheet>;

const beforeAndAfter = z.strictObject({
  before: figure,
  after: figure,
}) satisfies z.ZodType<BeforeAndAfter>;

export const readingWorth = z
  .strictObject({
    store: z.string(),
    way: z.enum(['gas injection', 'weighing', 'sight glass', 'dip stick', 'level gauge']),
    instrument: z.string().nullable(),
    task: z.strictObject({ id: z.string(), minutes: z.number(), people: z.number() }).nullable(),
    readingU95L: z.number(),
    content: beforeAndAfter,
    cover: z
      .strictObject({
        grade: z.string(),
        reach: z.enum(['free', 'to floor']),
        stock: beforeAndAfter,
        days: beforeAndAfter.nullable(),
      })
      .nullable(),
  })
  .meta({ id: 'ReadingWorth' }) satisfies z.ZodType<ReadingWorth>;

export const coverAtRate = z.strictObject({
  rate: z.enum(['planning', 'survival']),
  litresPerPersonDay: z.number(),
  people: z.number(),
  free: figure,
  toFloor: figure,
  reserve: figure,
}) satisfies z.ZodType<CoverAtRateFigure>;
