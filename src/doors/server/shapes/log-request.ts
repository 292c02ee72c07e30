// Shapes of what a page may ask to be entered: the words as they were typed, exactly as the desk takes them.
import * as z from 'zod';
import { type LogRequest, type RequestWith, USES } from '../../../desk/index.ts';
import { secondNamed } from './code.ts';

const text = (most: number) => z.string().min(1).max(most);
const amount = text(60).describe('with its unit: 200mL, 7.5L, 21.4kg, 20.5L+-0.2');
const name = text(80);
const entry = text(80).describe('its number here, SITE NUMBER, or its id');
const sentence = text(2000);
const texts = z.record(text(80), z.string().max(60));
const maybeAmount = amount.exactOptional();
const maybeName = name.exactOptional();
const also = z
  .array(text(120))
  .max(10)
  .exactOptional()
  .describe('MEANS=AMOUNT: the same water by other means');

/** What has a body that the desk made itself is not asked for from outside. */
type Outside = Exclude<LogRequest['what'], 'kind'>;

const shapes = {
  drink: z.strictObject({
    what: z.literal('drink'),
    amount: text(60).describe('strokes of the dispenser, or an amount with its unit'),
    from: maybeName,
    person: maybeName.describe('by whom; no page shows it'),
  }),
  fill: z.strictObject({
    what: z.literal('fill'),
    store: name,
    amount: maybeAmount,
    from: maybeName,
    hose: maybeName,
    method: maybeName,
    also,
  }),
  move: z.strictObject({
    what: z.literal('move'),
    amount,
    from: maybeName,
    to: maybeName,
    hose: maybeName,
    method: maybeName,
    also,
  }),
  use: z.strictObject({
    what: z.literal('use'),
    amount,
    use: z.enum(USES),
    from: maybeName,
    person: maybeName.describe('by whom; no page shows it'),
  }),
  make: z.strictObject({ what: z.literal('make'), amount, from: maybeName, to: maybeName }),
  weigh: z.strictObject({ what: z.literal('weigh'), store: name, amount }),
  gauge: z.strictObject({ what: z.literal('gauge'), store: name, amount }),
  empty: z.strictObject({
    what: z.literal('empty'),
    store: name,
    residual: maybeAmount,
    flowStopped: z.boolean().exactOptional(),
    counters: texts.exactOptional(),
  }),
  full: z.strictObject({ what: z.literal('full'), store: name, amount: maybeAmount }),
  hookup: z.strictObject({ what: z.literal('hookup'), store: name, port: name }),
  relabel: z.strictObject({ what: z.literal('relabel'), store: name, grade: name, photo: maybeName }),
  day: z.strictObject({
    what: z.literal('day'),
    readings: texts.describe('by instrument; - is no reading'),
    peopleAboard: z.int().min(0).max(10_000).exactOptional(),
    day: z.int().min(0).max(99_999).exactOptional(),
  }),
  undo: z.strictObject({
    what: z.literal('undo'),
    entry: entry.exactOptional(),
    reason: sentence.exactOptional(),
  }),
  correct: z.strictObject({
    what: z.literal('correct'),
    entry,
    value: maybeAmount.describe('the right amount, of an entry that has one'),
    readings: texts.exactOptional().describe('of a line of meters: those that were wrong'),
    reason: sentence,
  }),
  decide: z.strictObject({
    what: z.literal('decide'),
    first: entry,
    second: entry,
    decision: z.enum(['merge', 'both are true']),
  }),
  told: z.strictObject({
    what: z.literal('told'),
    kind: name,
    fields: z.record(text(80), z.json()).describe('by name, as GET /api/kinds/{kind} lists them'),
  }),
} satisfies { readonly [What in Outside]: z.ZodType<LogRequest & { readonly what: What }> };

export const logRequest = z.discriminatedUnion('what', [
  shapes.drink,
  shapes.fill,
  shapes.move,
  shapes.use,
  shapes.make,
  shapes.weigh,
  shapes.gauge,
  shapes.empty,
  shapes.full,
  shapes.hookup,
  shapes.relabel,
  shapes.day,
  shapes.undo,
  shapes.correct,
  shapes.decide,
  shapes.told,
]);

/** What the union left out would not be taken: each shape has to stand in it. */
type Left = Exclude<Outside, z.output<typeof logRequest>['what']>;
true satisfies [Left] extends [never] ? true : false;

export const requestWith = z.strictObject({
  at: text(60).exactOptional().describe('when it happened: now, -15m, 14:05, D46T14:05, ISO'),
  note: sentence.exactOptional(),
  minutes: z.int().min(0).max(100_000).exactOptional(),
  people: z.int().min(0).max(1000).exactOptional(),
  source: name.exactOptional().describe('who copied it, when it was not the person who did it'),
  happened: sentence.exactOptional().describe('it has already happened although a rule speaks against it'),
  late: sentence.exactOptional().describe('why it comes after its day was closed'),
  sure: z.boolean().exactOptional().describe('yes to what is asked first: it stands as it is'),
  dryRun: z.boolean().exactOptional().describe('show what would happen and keep nothing'),
}) satisfies z.ZodType<RequestWith>;

/** Who speaks. Without its code a second person is declared, and the entry says so for ever. */
export const whoSpeaks = {
  by: name.exactOptional().describe('the office that says so; else the keeper'),
  second: secondNamed.exactOptional(),
};
