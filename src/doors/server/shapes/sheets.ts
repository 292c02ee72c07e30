// Shapes of the sheets that the desk gives; each is held against the type of the papers by the compiler.
import * as z from 'zod';
import type {
  BookLine,
  BookSheet,
  KeptSheet,
  QuirksSheet,
  SinceSheet,
  StoreLine,
  StoreSheet,
  StoresSheet,
  TodaySheet,
} from '../../../papers/index.ts';
import { biocideSheet, lifeSheet } from './biocide.ts';
import { coverFigure } from './cover.ts';
import { figure, finding, head } from './figures.ts';
import { storeQuality } from './store-quality.ts';
import { family, gauging, readingWorth } from './story.ts';

const texts = z.array(z.string());
const maybeText = z.string().nullable();

export const storeLine = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    kind: z.string(),
    place: z.string(),
    grade: maybeText,
    emptied: z.boolean(),
    held: z.boolean(),
    conditional: z.boolean(),
    reserve: z.boolean(),
    mark: z.enum(['HOLD', 'CONDITIONAL', 'WAIVED', 'NOT RELEASED', 'EMPTY', '']),
    port: maybeText,
    mass: figure,
    volume: figure,
    band: z.strictObject({ low: z.number(), high: z.number(), unit: z.string() }),
    capacityL: z.number(),
    howKnown: z.string(),
    standing: z.string(),
    age: z.number().nullable().describe('hours since the last direct reading'),
  })
  .meta({ id: 'StoreLine' }) satisfies z.ZodType<StoreLine>;

export const todaySheet = z.strictObject({
  head,
  silence: finding.nullable(),
  cover: z.record(z.string(), coverFigure).describe('by grade'),
  reserve: z
    .strictObject({ volume: figure, floorL: z.number(), capacityL: z.number(), conditionalL: z.number() })
    .nullable(),
  stores: z.array(storeLine),
  sums: z.array(z.strictObject({ name: z.string(), volume: figure })),
  total: figure,
  closureMg: z.int(),
  findings: z.array(finding).describe('open ones, the gravest first'),
  readings: z
    .array(readingWorth)
    .describe('what a reading of each store would be worth, the best bargain first'),
  visits: z.array(
    z.strictObject({
      visit: z.string(),
      berthDay: z.int(),
      departDay: z.int().nullable(),
      aboard: z.boolean(),
    }),
  ),
}) satisfies z.ZodType<TodaySheet>;

export const storesSheet = z.strictObject({
  head,
  stores: z.array(storeLine),
  quality: z.record(z.string(), storeQuality).describe('by the id of the store'),
}) satisfies z.ZodType<StoresSheet>;

export const storeSheet = z.strictObject({
  head,
  store: storeLine,
  answer: z.string().describe('may this water be used'),
  quality: storeQuality,
  facts: z.array(z.strictObject({ name: z.string(), text: z.string() })),
  gradeHistory: texts,
  biocides: texts,
  biocide: biocideSheet
    .nullable()
    .describe('null where its grade has none and nothing was dosed, and where it is emptied'),
  life: lifeSheet.nullable(),
  worth: readingWorth.nullable().describe('what a reading of it would be worth'),
  history: z.array(
    z.strictObject({
      ref: z.string(),
      id: z.string(),
      stamp: z.string(),
      kind: z.string(),
      text: z.string(),
      undoneBy: maybeText,
      correctedBy: maybeText,
      now: maybeText.describe('what counts instead, where it was corrected'),
    }),
  ),
  olderEvents: z.int(),
  family,
  gauging,
  findings: z.array(finding),
}) satisfies z.ZodType<StoreSheet>;

export const bookLine = z
  .strictObject({
    ref: z.string().describe('site and number'),
    fileRef: maybeText.describe('its name in the file that it came from'),
    id: z.string(),
    happened: z.string(),
    entered: z.string(),
    kind: z.string(),
    text: z.string(),
    by: z.string(),
    source: maybeText,
    note: maybeText,
    undoneBy: maybeText,
    correctedBy: maybeText,
    now: maybeText.describe('what counts instead, where it was corrected'),
    mayCorrect: z.enum(['amount', 'readings']).nullable().describe('null: undo it and enter it anew'),
    late: z.boolean(),
  })
  .meta({ id: 'BookLine' }) satisfies z.ZodType<BookLine>;

export const bookSheet = z.strictObject({
  head,
  lines: z.array(bookLine),
  more: z.boolean(),
}) satisfies z.ZodType<BookSheet>;

export const sinceSheet = z.strictObject({
  head,
  since: z.string(),
  entries: z.int(),
  corrections: z.int(),
  late: z.int(),
  heldSince: texts,
  freedSince: texts,
  moved: z.array(z.strictObject({ store: z.string(), before: figure, after: figure })),
  newFindings: z.array(finding),
  lines: z.array(bookLine),
}) satisfies z.ZodType<SinceSheet>;

const litres = z.strictObject({ valueL: z.number(), u95L: z.number() });

export const keptSheet = z.strictObject({
  kept: z.boolean().describe('false: it was only tried'),
  line: bookLine,
  also: z.array(bookLine).exactOptional().describe('entries that are kept with it, all or none'),
  stores: z.array(
    z.strictObject({
      before: litres.nullable(),
      after: z.strictObject({ id: z.string(), valueL: z.number(), u95L: z.number() }),
    }),
  ),
  became: z.array(z.string()).describe('what water is from now on, where the entry changed that'),
  cover: z.array(
    z.strictObject({
      grade: z.string(),
      beforeQ05: z.number().nullable(),
      afterQ05: z.number().nullable(),
    }),
  ),
  findings: z.array(finding).describe('what the account asks about the entry'),
}) satisfies z.ZodType<KeptSheet>;

const quirk = z.strictObject({
  kind: z.enum(['calibration', 'gauge', 'shell', 'norm', 'remainder', 'level', 'opening']),
  name: z.string(),
  error: z.strictObject({ value: z.number(), u95: z.number(), assumedU95: z.number() }),
  unit: z.string(),
  countMl: z.number().nullable(),
  normL: z.number().nullable(),
  lessons: z.array(z.strictObject({ kind: z.string(), count: z.int() })),
  lessonsInAll: z.int(),
  text: z.string(),
  figure,
  shown: texts,
});

export const quirksSheet = z.strictObject({
  head,
  quirks: z.array(quirk),
  scatter: z.array(z.strictObject({ of: z.string(), readings: z.int(), factor: z.number() })),
}) satisfies z.ZodType<QuirksSheet>;
