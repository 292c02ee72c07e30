// Kinds that say that water moved, or that a counter was read.
import * as z from 'zod';
import { USES } from '../../outpost/index.ts';
import { amount, counterReading, massMg, placeName } from './amount.ts';

const use = z.enum(USES);
const positive = z.number().positive().max(1e6);

/** How a flow was made and watched: stop-watch, push and hose belong together. */
const flowFacts = {
  startAtMs: z.int().exactOptional(),
  hose: placeName.exactOptional(),
  flowMinutes: positive.exactOptional(),
  pushOverCabinKPa: z.number().min(0).max(10_000).exactOptional(),
  instrument: placeName.exactOptional(),
  method: z.string().min(1).max(80).exactOptional(),
  /** Grade of the water as the entry says it; compared with what the account believes. */
  grade: placeName.exactOptional(),
  /** Grade that the receiving store held before, as the entry says it. */
  receiverWas: placeName.exactOptional(),
  /** Whether it had been emptied, as the entry says it; true without a grade: it was never used. */
  receiverWasEmptied: z.boolean().exactOptional(),
};

/** Other means that measured the same water: the weight before less the weight after, strokes, a timed flow. */
const alsoRead = z
  .array(
    z.strictObject({
      amount,
      instrument: placeName.exactOptional(),
      method: z.string().min(1).max(80).exactOptional(),
    }),
  )
  .max(10);

export const movement = z.strictObject({
  from: placeName,
  to: placeName,
  amount,
  use: use.exactOptional(),
  /** Office of the person who drank or used it; shown only with the medic's code. */
  person: placeName.exactOptional(),
  alsoRead: alsoRead.exactOptional(),
  ...flowFacts,
});

export const runStart = z.strictObject({
  run: placeName,
  from: placeName,
  to: placeName,
  planned: amount.exactOptional(),
  ...flowFacts,
});
export const runPause = z.strictObject({
  run: placeName,
  from: placeName.exactOptional(),
  to: placeName.exactOptional(),
  /** Moved since the run started or was resumed, what stays in the hose inside. */
  amount,
  lineContentMg: massMg.exactOptional(),
  ...flowFacts,
});
export const runResume = z.strictObject({ run: placeName, ...flowFacts });
export const runFinish = z.strictObject({
  run: placeName,
  from: placeName.exactOptional(),
  to: placeName.exactOptional(),
  /** Moved since the run started or was last resumed. */
  amount,
  alsoRead: alsoRead.exactOptional(),
  ...flowFacts,
});

const leg = z.strictObject({ store: placeName, amount });
/** Several stores pushed into one or more others in one go; the legs say who gave and who got what. */
export const push = z.strictObject({
  from: z.array(leg).min(1).max(100),
  to: z.array(leg).min(1).max(100),
  amount,
  ...flowFacts,
});

export const meter = z.strictObject({ readings: z.array(counterReading).min(1).max(100) });

export const dayLine = z.strictObject({
  day: z.int().min(-100_000).max(1_000_000),
  /** People aboard for the whole day. */
  peopleAboard: z.int().min(0).max(10_000),
  readings: z.array(counterReading).max(200),
});

export const hookup = z.strictObject({ store: placeName, port: placeName });

/** The source of water that a counter has counted already: a change of source, no further use. */
export const sourceChange = z.strictObject({
  counter: placeName,
  store: placeName,
  sinceMs: z.int(),
  amount,
  reserve: z.boolean(),
  how: z.string().min(1).max(400).exactOptional(),
});
