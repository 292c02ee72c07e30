// Names that lines, boxes, the flow and the entries of a card use for each other: each is there, and there once.
import { nearest } from '../../../ground/units/index.ts';
import type { Path } from '../../outpost-finding.ts';
import { STORE_KINDS } from '../../shape/stores-and-ports.ts';
import { FOUND, NAMES_OF_OUTPOST, nameLine, namesInReach } from '../names.ts';
import type { CardFaults, Placed, SoundCard } from './sound-card.ts';

const UNIT_KINDS = ['condenser', 'purifier', 'dispenser', 'electrolyser', 'flush', 'meltSource', 'line'];

export function checkNames(card: SoundCard, faults: CardFaults): void {
  once([...card.choose, ...card.values], 'name', faults);
  once(card.steps, 'line', faults);
  once(card.hazards, 'hazard', faults);
  for (const choice of card.choose) checkChoice(choice, faults);
  if (!card.whole) return;
  const has = namesOf(card);
  for (const { item, path } of card.steps) {
    item.hazards.forEach((id, k) => {
      mustBe('hazard', id, has.hazards, [...path, 'hazards', k], faults);
    });
    for (const [, id = ''] of item.do.matchAll(/\{([^}]*)\}/g))
      mustBe('choice', id, has.choices, [...path, 'do'], faults);
  }
  const used = new Set(card.steps.flatMap(({ item }) => item.hazards));
  for (const { item, path } of card.hazards)
    if (!used.has(item.id)) faults.add('card-hazard-unused', path, { hazard: item.id });
  checkLimits(card, faults);
  checkNeeds(card, has, faults);
  checkFlowNames(card, has, faults);
  checkPostNames(card, has, faults);
}

interface Has {
  readonly hazards: readonly string[];
  readonly steps: readonly string[];
  readonly stores: readonly string[];
  readonly choices: readonly string[];
  /** Where water may go: stores, ports, units. */
  readonly places: readonly string[];
}

function namesOf(card: SoundCard): Has {
  return {
    hazards: card.hazards.map(({ item }) => item.id),
    steps: card.steps.map(({ item }) => item.id),
    stores: card.choose.filter(({ item }) => item.of === 'store').map(({ item }) => item.id),
    choices: card.choose.map(({ item }) => item.id),
    places: card.choose
      .filter(({ item }) => ['store', 'port', 'unit'].includes(item.of))
      .map(({ item }) => item.id),
  };
}

function once(placed: readonly Placed<{ readonly id: string }>[], what: string, faults: CardFaults): void {
  const seen = new Set<string>();
  for (const { item, path } of placed) {
    if (seen.has(item.id)) faults.add('id-twice', [...path, 'id'], { what, id: item.id, first: item.id });
    seen.add(item.id);
  }
}

function mustBe(what: string, id: string, known: readonly string[], path: Path, faults: CardFaults): void {
  if (!known.includes(id)) faults.add('id-unknown', path, { what, id, known, near: nearest(id, known) });
}

function checkChoice({ item, path }: SoundCard['choose'][number], faults: CardFaults): void {
  const { id, of, unit, kinds, otherwise } = item;
  const known: readonly string[] = of === 'store' ? STORE_KINDS : of === 'unit' ? UNIT_KINDS : [];
  const isQuantity = of === 'quantity';
  if (isQuantity !== (unit !== undefined) || (otherwise !== undefined && !isQuantity))
    faults.add('card-choice-keys', path, { id, of });
  if (kinds !== undefined && known.length === 0) faults.add('card-choice-keys', path, { id, of });
  else
    kinds?.forEach((kind, k) => {
      mustBe(`kind of ${of}`, kind, known, [...path, 'kinds', k], faults);
    });
}

/** A box takes its figures from the outpost file alone. */
function checkLimits(card: SoundCard, faults: CardFaults): void {
  const known = Object.keys(NAMES_OF_OUTPOST);
  for (const { item, path } of card.hazards)
    item.limits.forEach(({ figure }, k) => {
      mustBe('figure of the outpost file', figure, known, [...path, 'limits', k, 'figure'], faults);
    });
}

function checkNeeds({ needs, choose }: SoundCard, has: Has, faults: CardFaults): void {
  if (needs === null) return;
  const choices = new Map(choose.map(({ item }) => [item.id, item.of]));
  needs.ratings.forEach((name, k) => {
    if (nameLine(name, choices) === null)
      mustBe('name', name, namesInReach(choices), ['needs', 'ratings', k], faults);
  });
  if (needs.movement === undefined) return;
  mustBe('chosen store', needs.movement.from, has.stores, ['needs', 'movement', 'from'], faults);
  mustBe('choice', needs.movement.to, has.places, ['needs', 'movement', 'to'], faults);
}

function checkFlowNames({ flow }: SoundCard, has: Has, faults: CardFaults): void {
  if (flow === null) return;
  for (const end of ['from', 'to'] as const)
    mustBe('chosen store', flow[end], has.stores, ['flow', end], faults);
  if (flow.hose !== undefined) mustBe('choice', flow.hose, has.choices, ['flow', 'hose'], faults);
  for (const key of ['starts', 'stops', 'amount'] as const)
    mustBe('line', flow[key], has.steps, ['flow', key], faults);
  flow.again.forEach((id, k) => {
    mustBe('line', id, has.steps, ['flow', 'again', k], faults);
  });
}

function checkPostNames(card: SoundCard, has: Has, faults: CardFaults): void {
  const words = card.steps.filter(({ item }) => item.input.kind !== 'number');
  const known = [...has.choices, ...words.map(({ item }) => `${FOUND}${item.id}`)];
  for (const { item, path } of card.posts) {
    if (item.when !== undefined) mustBe('line', item.when, has.steps, [...path, 'when'], faults);
    for (const [field, name] of Object.entries(item.names))
      mustBe('choice', name, known, [...path, 'names', field], faults);
  }
}
