// Reads a card's file: text in, a frozen card or every fault out. It never throws and touches nothing.
import { fieldOf } from '../field-of.ts';
import { freezeDeep } from '../freeze-deep.ts';
import { MOST_FINDINGS } from '../outpost-finding.ts';
import { ShapeFaults } from '../shape-faults.ts';
import { findingsOf, readYaml } from '../yaml-source.ts';
import type { YamlTree } from '../yaml-tree.ts';
import type { Card, CardFlow, CardPost, CardStep } from './card.ts';
import type { CardFinding } from './card-finding.ts';
import { type CardFile, cardSchema } from './card-schema.ts';
import { checkFormulas } from './check/check-formulas.ts';
import { checkLines } from './check/check-lines.ts';
import { checkNames } from './check/check-names.ts';
import { checkSafety } from './check/check-safety.ts';
import { type CardFault, CardFaults, soundCard } from './check/sound-card.ts';
import { type Formula, parseFormula } from './formula/parse.ts';

export type ReadCard =
  | { readonly ok: true; readonly card: Card }
  | { readonly ok: false; readonly findings: readonly CardFinding[] };

/** @example readCard(text, { file: 'cards/weigh-in.yaml' }) */
export function readCard(text: string, { file }: { readonly file: string }): ReadCard {
  const read = readYaml(text, { file });
  if (!read.ok) return read;
  const { faults, card } = judge(read.tree, text);
  return card === null ? { ok: false, findings: findingsOf(faults, read.source) } : { ok: true, card };
}

function judge(
  tree: YamlTree,
  text: string,
): { readonly faults: readonly CardFault[]; readonly card: Card | null } {
  const schema = cardSchema();
  const parsed = schema.safeParse(tree.value, { jitless: true });
  const shape = new ShapeFaults(tree, schema);
  const leftOut = new Set(tree.faults.map(({ spot }) => fieldOf(spot.path ?? [])));
  const issues = (parsed.error?.issues ?? []).slice(0, MOST_FINDINGS + 1).flatMap((issue) => shape.of(issue));
  const fresh = issues.filter(({ spot }) => !leftOut.has(fieldOf(spot.path ?? [])));
  const within = new CardFaults(tree, text);
  const sound = soundCard(tree, parsed.success && tree.faults.length === 0);
  for (const check of [checkNames, checkFormulas, checkLines, checkSafety]) check(sound, within);
  const faults = [...tree.faults, ...fresh, ...within.all];
  return { faults, card: parsed.success && faults.length === 0 ? cardOf(parsed.data) : null };
}

function cardOf(file: CardFile): Card {
  const { card, choose, needs, values, hazards, steps, flow, posts } = file;
  return freezeDeep({
    ...card,
    task: card.task ?? null,
    choose: choose.map((choice) => ({ ...choice, otherwise: maybe(choice.otherwise) })),
    choices: new Map(choose.map(({ id, of }) => [id, of])),
    ratings: needs.ratings,
    movement: needs.movement ?? null,
    conditions: needs.conditions.map(({ holds, otherwise }) => ({ holds: formula(holds), otherwise })),
    values: values.map(({ id, what, unit }) => ({ id, what, unit })),
    named: new Map(values.map((value) => [value.id, formula(value.formula)])),
    hazards,
    steps: steps.map(stepOf),
    flow: flow === undefined ? null : flowOf(flow),
    posts: posts.map(postOf),
  });
}

/** Only after the checks: a formula that cannot be read has been reported. */
function formula(text: string): Formula {
  const parsed = parseFormula(text);
  if (!parsed.ok) throw new Error(`the formula "${text}" was not checked`);
  return parsed.formula;
}

const maybe = (text: string | undefined): Formula | null => (text === undefined ? null : formula(text));

function stepOf({ input, expect = {}, ...step }: CardFile['steps'][number]): CardStep {
  return {
    ...step,
    input: { ...input, doubt: maybe(input.doubt) },
    expect: {
      words: expect.words ?? null,
      about: maybe(expect.about),
      within: maybe(expect.within),
      atLeast: maybe(expect.atLeast),
      atMost: maybe(expect.atMost),
      right: expect.right ?? null,
    },
  };
}

function flowOf({ hose, planned, minutes, lineContent, ...flow }: NonNullable<CardFile['flow']>): CardFlow {
  return {
    ...flow,
    hose: hose ?? null,
    planned: formula(planned),
    minutes: formula(minutes),
    lineContent: maybe(lineContent),
  };
}

function postOf({ figures, ...post }: CardFile['posts'][number]): CardPost {
  const read = Object.entries(figures).map(
    ([field, { value, unit }]) => [field, { value: formula(value), unit }] as const,
  );
  return { ...post, figures: Object.fromEntries(read) };
}
