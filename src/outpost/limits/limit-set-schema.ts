// The shape of a file of limits: one strict schema, built when the first such file is read.
import * as z from 'zod';
import { type Atoms, makeAtoms } from '../shape/atoms.ts';
import { LIMIT_BASES, LIMIT_UNITS } from './limit-units.ts';

export const LIMIT_SET_FORMAT = 'waterwright limit set';
export const LIMIT_SET_VERSION = 1;

/** For how long the water is drunk; `any` where the rule does not depend on it. */
export const EXPOSURES = ['any', 'lifetime', '1 d', '10 d', '100 d', '1000 d'] as const;
/** How the figure is known: `seen` in the rule itself, `quoted` in another text, by `memory`, or set as `policy`. */
export const EVIDENCES = ['seen', 'quoted', 'memory', 'policy'] as const;

function figuresSchema(a: Atoms) {
  return z.strictObject({ atLeast: a.maybe.zeroOrMore, atMost: a.maybe.zeroOrMore });
}

function rowSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    parameter: a.id,
    basis: z.enum(LIMIT_BASES),
    unit: z.enum(LIMIT_UNITS),
    atLeast: a.maybe.zeroOrMore,
    atMost: a.maybe.zeroOrMore,
    /** What somebody remembers. No judge reads it. */
    remembered: figuresSchema(a).exactOptional(),
    status: z.enum(['on', 'off']),
    evidence: z.enum(EVIDENCES),
    exposure: z.enum(EXPOSURES).default('any'),
    /** One of the sources of the file, and where in it. */
    source: a.id,
    locator: a.words,
    /** One of the acts of the file. */
    act: a.id,
    /** The uses of water that need this row; all those of the set unless said. */
    requiredFor: z.array(a.id).exactOptional(),
    /** Of what a result is needed before release; one that is there is judged in any water. */
    neededOf: z.enum(['every store', 'product']).default('every store'),
    /** A reading of water that still holds gas does not count. */
    degassed: a.noUnlessSaid,
    /** For a limit of nought: a result below this detection limit counts as none. */
    noneIfBelow: a.maybe.positive,
    /** Results of one sample that differ by a greater share contradict each other. */
    duplicatesWithinShare: a.maybe.share,
    note: a.maybe.words,
  });
}

function makeSchema() {
  const a = makeAtoms();
  return z.strictObject({
    format: z.literal(LIMIT_SET_FORMAT),
    version: z.literal(LIMIT_SET_VERSION),
    set: z.strictObject({ id: a.id, name: a.words, what: a.words, uses: z.array(a.id).min(1) }),
    sources: z.array(z.strictObject({ id: a.id, source: a.words })).min(1),
    /** What a breach of a row comes from, what it does, and what to do first and how soon. */
    acts: z
      .array(
        z.strictObject({
          id: a.id,
          cause: a.words,
          consequence: a.words,
          firstAct: a.words,
          timeToActH: a.positive,
        }),
      )
      .min(1),
    rows: z.array(rowSchema(a)).min(1),
  });
}

let made: ReturnType<typeof makeSchema> | undefined;

export function limitSetSchema(): ReturnType<typeof makeSchema> {
  made ??= makeSchema();
  return made;
}

export type LimitSetFile = z.output<ReturnType<typeof makeSchema>>;

/** The shape alone, as JSON Schema for editors; what rows say of each other is checked when the file is read. */
export function limitSetJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = z.toJSONSchema(limitSetSchema(), { io: 'input', target: 'draft-2020-12' });
  return { $schema, title: `${LIMIT_SET_FORMAT}, version ${LIMIT_SET_VERSION}`, ...rest };
}
