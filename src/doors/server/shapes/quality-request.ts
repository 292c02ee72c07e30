// Shapes of what a page may ask about samples, results and holds, exactly as the desk takes it.
import * as z from 'zod';
import type { HoldAct, ResultRequest, SampleRequest } from '../../../desk/index.ts';

const name = z.string().min(1).max(80);
const names = z.array(name).max(1000);
const sentence = z.string().min(1).max(1000);
const day = z.string().min(1).max(20).describe('an outpost day: D60');
const amount = z.string().min(1).max(60).describe('with its unit: 10mL');
const time = z.string().min(1).max(60);

export const sampleRequest = z.strictObject({
  of: names.min(1).describe('stores or a point; each gets a sample of its own'),
  sample: name.exactOptional().describe('absent: the next name of the series'),
  tests: names.exactOptional().describe('absent: what a release of this water needs'),
  bottles: names.exactOptional(),
  volume: amount.exactOptional(),
  drawnFrom: sentence.exactOptional(),
  batch: name.exactOptional(),
  duplicateOf: name.exactOptional(),
}) satisfies z.ZodType<SampleRequest>;

export const resultRequest = z.strictObject({
  of: name.describe('a sample, a bottle of it, or a store or a point that was read without one'),
  figures: z
    .record(name, z.string().min(1).max(80))
    .exactOptional()
    .describe('by parameter: {"silver": "0.03 mg/L", "TOC": "<0.5 mg/L"}'),
  values: z.array(z.string().min(1).max(160)).max(100).exactOptional().describe('NAME=VALUE, any parameter'),
  store: name.exactOptional().describe('held against the sample'),
  method: sentence.exactOptional(),
  madeAt: z.enum(['aboard', 'laboratory']).exactOptional(),
  custody: z.enum(['kept', 'broken']).exactOptional(),
  preliminary: z.boolean().exactOptional(),
  degassed: z.boolean().exactOptional(),
  taken: time.exactOptional().describe('when it was drawn, where the sample has no entry'),
  hold: z
    .union([z.literal('all'), names.min(1)])
    .exactOptional()
    .describe('if it fails: all that is proposed, or only these; then with reason and a second person'),
  reason: sentence.exactOptional(),
  holdName: name.exactOptional(),
}) satisfies z.ZodType<ResultRequest>;

const shapes = {
  add: z.strictObject({
    act: z.literal('add'),
    stores: names.exactOptional(),
    conditional: names.exactOptional(),
    sample: name.exactOptional().describe('all that its water touched'),
    only: names.exactOptional(),
    reason: sentence.exactOptional(),
    name: name.exactOptional(),
  }),
  release: z.strictObject({
    act: z.literal('release'),
    of: names.min(1).describe('a hold and stores of it; or stores that wait for their first release'),
    samples: names.exactOptional(),
    until: day.exactOptional(),
  }),
  waive: z.strictObject({
    act: z.literal('waive'),
    hold: name,
    stores: names.exactOptional(),
    reason: sentence,
    until: day,
  }),
  downgrade: z.strictObject({
    act: z.literal('downgrade'),
    hold: name.exactOptional(),
    store: name,
    grade: name.exactOptional(),
  }),
  treat: z.strictObject({
    act: z.literal('treat'),
    store: name,
    recipe: name.exactOptional(),
    dose: amount.exactOptional(),
  }),
  park: z.strictObject({
    act: z.literal('park'),
    hold: name,
    owner: name,
    until: day,
    reason: sentence.exactOptional(),
  }),
  aside: z.strictObject({
    act: z.literal('aside'),
    sample: name,
    parameter: name.exactOptional(),
    reason: sentence,
  }),
} satisfies { readonly [Act in HoldAct['act']]: z.ZodType<HoldAct & { readonly act: Act }> };

export const holdRequest = z.discriminatedUnion('act', [
  shapes.add,
  shapes.release,
  shapes.waive,
  shapes.downgrade,
  shapes.treat,
  shapes.park,
  shapes.aside,
]);
