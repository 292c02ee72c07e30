// Shapes of samples, results, holds and the medic's queue; each is held against the type of the papers by the compiler.
import * as z from 'zod';
import type {
  HoldSheet,
  HoldsSheet,
  HoldTree,
  QualitySheet,
  ResultSheet,
  SampleSheet,
  SamplesSheet,
} from '../../../papers/index.ts';
import { coverFigure } from './cover.ts';
import { figure, finding, head } from './figures.ts';
import { keptSheet } from './sheets.ts';

const maybeText = z.string().nullable();
const texts = z.array(z.string());
const share = z.number().nullable();

const figureLine = z.strictObject({
  parameter: z.string(),
  value: z.number(),
  censored: z.enum(['no', 'below', 'above']),
  unit: z.string(),
  basis: maybeText,
  limits: z.array(
    z.strictObject({
      row: z.string(),
      atLeast: z.number().nullable(),
      atMost: z.number().nullable(),
      unit: z.string(),
    }),
  ),
  verdict: z.enum(['within', 'above', 'below', 'cannot be told', 'no limit set', 'no limit']),
  setAside: z.boolean(),
  ref: maybeText,
});

const sampleLine = z
  .strictObject({
    sample: z.string(),
    state: z.enum(['waits', 'late', 'passed', 'failed', 'not judged', 'set aside']),
    place: z.string(),
    drawnFrom: maybeText,
    speaksOf: texts,
    taken: z.string(),
    takenDay: z.int(),
    age: z.number().describe('hours since it was drawn'),
    tests: texts,
    open: texts.describe('tests that no result has answered'),
    bottles: texts,
    batch: maybeText,
    duplicateOf: maybeText,
    figures: z.array(figureLine),
    result: maybeText,
    ref: maybeText,
    resultRefs: texts,
  })
  .meta({ id: 'SampleLine' });

const dueLine = z
  .strictObject({
    kind: z.enum(['interval', 'test', 'treated', 'certificate']),
    name: z.string(),
    place: z.string(),
    parameters: texts,
    dueDay: z.number(),
    overdueDays: z.number(),
    lastDay: z.int().nullable(),
  })
  .meta({ id: 'DueLine' });

export const samplesSheet = z.strictObject({
  head,
  samples: z.array(sampleLine),
  older: z.int(),
  due: z.array(dueLine),
}) satisfies z.ZodType<SamplesSheet>;

const touched = z.strictObject({
  kind: z.enum(['store', 'hose', 'pool']),
  name: z.string(),
  isSource: z.boolean(),
  fate: z.enum(['hold', 'conditional', 'not held', 'waste', 'gone', 'none left', 'in the hose', 'used']),
  suspect: figure,
  held: figure.nullable(),
  share,
  first: z.string(),
  last: z.string(),
  firstDay: z.int(),
  path: z.array(
    z.strictObject({ from: z.string(), to: z.string(), ref: z.string(), at: z.string(), hose: maybeText }),
  ),
  bySampledWay: z.boolean(),
});

const trace = z
  .strictObject({
    sample: maybeText,
    drawn: z.string(),
    windows: z.array(
      z.strictObject({
        store: z.string(),
        opened: z.string(),
        since: z.string(),
        until: z.string(),
        ref: maybeText,
      }),
    ),
    touched: z.array(touched),
    cuts: z.array(
      z.strictObject({
        store: z.string(),
        how: z.enum(['clean result', 'release']),
        ref: z.string(),
        at: z.string(),
        cleared: figure,
      }),
    ),
    drunk: z
      .strictObject({ volume: figure, sinceDay: z.int(), untilDay: z.int() })
      .nullable()
      .describe('how much people drank of it; who did stands nowhere here'),
  })
  .meta({ id: 'Trace' });

export const holdTree = z
  .strictObject({
    trace,
    hold: texts,
    conditional: texts,
    heldVolume: figure,
    conditionalVolume: figure,
    effect: z.array(z.strictObject({ grade: z.string(), before: coverFigure, after: coverFigure })),
  })
  .meta({ id: 'HoldTree' }) satisfies z.ZodType<HoldTree>;

export const sampleSheet = z.strictObject({
  head,
  sample: sampleLine,
  method: texts,
  volume: figure.nullable(),
  tree: holdTree.nullable(),
}) satisfies z.ZodType<SampleSheet>;

export const resultSheet = z.strictObject({
  kept: z.boolean().describe('false: it was only tried'),
  sample: z.string(),
  speaksOf: texts,
  figures: z.array(figureLine),
  fails: texts,
  tree: holdTree
    .nullable()
    .describe('what its water touched, and what holding it changes; null where nothing fails'),
  asks: z.boolean().describe('it is kept only with a word on what is to be held'),
  entry: keptSheet,
  findings: z.array(finding).describe('what is asked first'),
}) satisfies z.ZodType<ResultSheet>;

const holdLine = z
  .strictObject({
    hold: z.string(),
    open: z.boolean(),
    since: z.string(),
    sinceDay: z.int(),
    reason: z.string(),
    failed: texts,
    sample: maybeText,
    stores: z.array(
      z.strictObject({
        store: z.string(),
        as: z.enum(['hold', 'conditional', 'waived']),
        grade: maybeText,
        volume: figure,
        lacks: texts.describe('what results still lack, parameter: code'),
        until: maybeText,
      }),
    ),
    volume: figure,
    conditionalVolume: figure,
    parked: z
      .strictObject({ owner: z.string(), until: z.string(), untilDay: z.int(), over: z.boolean() })
      .nullable(),
    leftFree: texts,
    ref: maybeText,
  })
  .meta({ id: 'HoldLine' });

const waits = z.array(
  z.strictObject({ grade: z.string(), volume: figure, days: z.number().nullable().describe('days of use') }),
);

export const holdsSheet = z.strictObject({
  head,
  holds: z.array(holdLine),
  waits,
}) satisfies z.ZodType<HoldsSheet>;

/** Who drank is no part of it: that sheet has a field more, and no address gives it. */
export const holdSheet = z.strictObject({
  head,
  hold: holdLine,
  sampleIsGuess: z.boolean(),
  trace: trace.nullable(),
  origins: z.array(
    z.strictObject({
      store: z.string(),
      parts: z.array(
        z.strictObject({
          kind: z.string(),
          name: z.string(),
          visit: maybeText,
          volume: figure,
          share: z.number(),
          since: z.string(),
        }),
      ),
    }),
  ),
  waits,
  ways: z.array(z.strictObject({ act: z.string(), text: z.string(), command: z.string() })),
  findings: z.array(finding),
}) satisfies z.ZodType<Omit<HoldSheet, 'drank'>>;

export const qualitySheet = z.strictObject({
  head,
  due: z.array(dueLine),
  results: z.array(sampleLine).describe('samples whose results are not back'),
  waiting: z.array(
    z.strictObject({
      store: z.string(),
      grade: maybeText,
      volume: figure,
      why: z.enum(['hold', 'conditional', 'not released', 'release over']),
      hold: maybeText,
      lacks: texts,
    }),
  ),
  waits,
  parked: z.array(holdLine),
  ending: z.array(
    z.strictObject({
      store: z.string(),
      kind: z.enum(['release', 'waiver']),
      by: z.string(),
      until: z.string(),
      untilDay: z.int(),
      days: z.number(),
    }),
  ),
  off: z.array(z.strictObject({ set: z.string(), row: z.string(), parameter: z.string() })),
  findings: z.array(finding),
}) satisfies z.ZodType<QualitySheet>;
