// The shape of a card's file: one strict schema, built when the first card is read.
import * as z from 'zod';
import { type Atoms, FORMULA_NAME_PATTERN, makeAtoms } from '../shape/atoms.ts';
import { USES } from '../shape/flow-end.ts';
import { CARD_UNITS } from './card-units.ts';
import { ACT_NAMES, HAZARD_KINDS, MUST_PASS, SIGNAL_WORDS } from './hazards.ts';
import { CHOICES } from './names.ts';

export const CARD_FORMAT = 'waterwright card';
export const CARD_VERSION = 1;
/** READ-DO: read a line, do it. DO-CONFIRM: do the group from memory, then confirm its lines. */
export const CARD_FORMS = ['READ-DO', 'DO-CONFIRM'] as const;
export const INPUT_KINDS = ['tick', 'number', 'choice', 'time', 'text'] as const;
/** Which end of the band is the limit time: the late one only where a store is to be emptied. */
export const FLOW_DANGERS = ['over-fill', 'over-pressure', 'run-dry', 'left behind'] as const;
/** Kinds of entries that a finished card posts; a flow posts its own. */
export const POST_KINDS = [
  'weigh',
  'pvt',
  'gauge',
  'movement',
  'push',
  'declared-empty',
  'declared-full',
  'hookup',
  'sample',
  'dose',
  'relabel',
  'check',
  'stock-count',
  'service',
  'unit-condition',
  'part-used',
] as const;

const named = () => z.string().regex(FORMULA_NAME_PATTERN);
/** The reader of formulas has a closer limit of its own. */
const formula = () => z.string().min(1).max(600);

function choiceSchema(a: Atoms) {
  return z.strictObject({
    id: named(),
    of: z.enum(CHOICES),
    what: a.words,
    /** Kinds of store, or of unit, that may be chosen. */
    kinds: z.array(z.string()).min(1).exactOptional(),
    /** Of a quantity. */
    unit: z.enum(CARD_UNITS).exactOptional(),
    /** What a quantity is if nobody says. */
    otherwise: formula().exactOptional(),
  });
}

function needsSchema(a: Atoms) {
  return z.strictObject({
    /** Names without which the card does not start: "rating missing". */
    ratings: z.array(z.string().min(1).max(80)).default([]),
    /** The movement that the rules of grade, hold, release and biocide are asked about. */
    movement: z
      .strictObject({
        from: named(),
        to: named(),
        /** The grade that a line of this card gives the receiver first. */
        relabelledTo: a.maybe.id,
      })
      .exactOptional(),
    /** Comparisons that have to hold surely. */
    conditions: z.array(z.strictObject({ holds: formula(), otherwise: a.words })).default([]),
  });
}

function hazardSchema(a: Atoms) {
  return z.strictObject({
    id: named(),
    kind: z.enum(HAZARD_KINDS),
    word: z.enum(SIGNAL_WORDS),
    /** Without a number. */
    text: a.words,
    /** Figures of the outpost file: a number, or a line to write it on. */
    limits: z.array(z.strictObject({ what: a.words, figure: z.string().min(1).max(80) })).default([]),
  });
}

function inputSchema(a: Atoms) {
  return z.strictObject({
    kind: z.enum(INPUT_KINDS),
    unit: z.enum(CARD_UNITS).exactOptional(),
    /** One standard deviation of what is read. */
    doubt: formula().exactOptional(),
    choices: z.array(a.words).min(2).max(6).exactOptional(),
  });
}

function expectSchema(a: Atoms) {
  return z.strictObject({
    /** In words, of a tick. */
    words: a.words.exactOptional(),
    about: formula().exactOptional(),
    within: formula().exactOptional(),
    atLeast: formula().exactOptional(),
    atMost: formula().exactOptional(),
    /** The choices that are right. */
    right: z.array(a.words).min(1).exactOptional(),
  });
}

function stepSchema(a: Atoms) {
  return z.strictObject({
    id: named(),
    who: a.id,
    /** One act, verb first. */
    do: a.words,
    input: inputSchema(a),
    expect: expectSchema(a).exactOptional(),
    mustPass: z.enum(MUST_PASS).exactOptional(),
    /** Somebody else than who did the lines before it, with a code of their own. */
    holdPoint: a.noUnlessSaid,
    /** What is expected is hidden until something was found. */
    blind: a.noUnlessSaid,
    /** Two people at this line. */
    twoPersons: a.noUnlessSaid,
    acts: z.array(z.enum(ACT_NAMES)).default([]),
    hazards: z.array(named()).default([]),
    note: a.maybe.words,
  });
}

function flowSchema() {
  return z.strictObject({
    from: named(),
    to: named(),
    hose: named().exactOptional(),
    /** Lines: with the first the water begins to flow, with the second it has stopped, the third finds how much. */
    starts: named(),
    stops: named(),
    amount: named(),
    /** Lines that are done again after the water was stopped on the way. */
    again: z.array(named()).default([]),
    planned: formula(),
    minutes: formula(),
    danger: z.enum(FLOW_DANGERS),
    /** What stays in the hose when the water is stopped. */
    lineContent: formula().exactOptional(),
  });
}

function postSchema(a: Atoms) {
  return z.strictObject({
    kind: z.enum(POST_KINDS),
    /** Only if this line was done. */
    when: named().exactOptional(),
    /** Due as soon as that line is done; else when the card is finished. */
    atOnce: a.noUnlessSaid,
    /** Fields that name something: a choice of the card, or the word found at a line (`found.LINE`). */
    names: z.record(z.string(), z.string().min(1).max(80)).default({}),
    /** Fields with a figure. */
    figures: z.record(z.string(), z.strictObject({ value: formula(), unit: z.enum(CARD_UNITS) })).default({}),
    /** Fields that are always the same. */
    words: z.record(z.string(), a.words).default({}),
    use: z.enum(USES).exactOptional(),
  });
}

function makeSchema() {
  const a = makeAtoms();
  return z.strictObject({
    format: z.literal(CARD_FORMAT),
    version: z.literal(CARD_VERSION),
    card: z.strictObject({
      id: a.id,
      name: a.words,
      what: a.words,
      revision: a.countFromOne,
      forms: z.array(z.enum(CARD_FORMS)).min(1),
      /** The line of `taskMinutes` that says how long it takes. */
      task: a.maybe.id,
    }),
    choose: z.array(choiceSchema(a)).default([]),
    needs: needsSchema(a).default({ ratings: [], conditions: [] }),
    values: z
      .array(z.strictObject({ id: named(), what: a.words, formula: formula(), unit: z.enum(CARD_UNITS) }))
      .default([]),
    hazards: z.array(hazardSchema(a)).default([]),
    steps: z.array(stepSchema(a)).min(1).max(60),
    flow: flowSchema().exactOptional(),
    posts: z.array(postSchema(a)).default([]),
  });
}

let made: ReturnType<typeof makeSchema> | undefined;

export function cardSchema(): ReturnType<typeof makeSchema> {
  made ??= makeSchema();
  return made;
}

export type CardFile = z.output<ReturnType<typeof makeSchema>>;

/** The shape alone, as JSON Schema for editors; formulas and what lines ask of each other are checked when the file is read. */
export function cardJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = z.toJSONSchema(cardSchema(), { io: 'input', target: 'draft-2020-12' });
  return { $schema, title: `${CARD_FORMAT}, version ${CARD_VERSION}`, ...rest };
}
