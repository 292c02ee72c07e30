// What of a card's file can be checked although other parts of it are at fault: each item that has its shape, with its place.
import type { Fault, OutpostFindingCode, Path } from '../../outpost-finding.ts';
import type { YamlTree } from '../../yaml-tree.ts';
import type { CardFindingCode } from '../card-finding.ts';
import { type CardFile, cardSchema } from '../card-schema.ts';

export type CardFault = Fault<CardFindingCode | OutpostFindingCode>;

export interface Placed<Item> {
  readonly item: Item;
  readonly path: Path;
}

export interface SoundCard {
  readonly choose: readonly Placed<CardFile['choose'][number]>[];
  readonly values: readonly Placed<CardFile['values'][number]>[];
  readonly hazards: readonly Placed<CardFile['hazards'][number]>[];
  readonly steps: readonly Placed<CardFile['steps'][number]>[];
  readonly posts: readonly Placed<CardFile['posts'][number]>[];
  readonly needs: CardFile['needs'] | null;
  readonly flow: NonNullable<CardFile['flow']> | null;
  /** Every item has its shape: a name that is not found is then a slip, and not one that could not be read. */
  readonly whole: boolean;
}

type Section = 'choose' | 'values' | 'hazards' | 'steps' | 'posts';

const asRaw = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};

export function soundCard(tree: YamlTree, whole: boolean): SoundCard {
  const raw = asRaw(tree.value);
  const { shape } = cardSchema();
  const needs = shape.needs.safeParse(raw['needs'] ?? undefined, { jitless: true });
  const flow = shape.flow.safeParse(raw['flow'] ?? undefined, { jitless: true });
  return {
    choose: placed(raw, 'choose', shape.choose.unwrap().element),
    values: placed(raw, 'values', shape.values.unwrap().element),
    hazards: placed(raw, 'hazards', shape.hazards.unwrap().element),
    steps: placed(raw, 'steps', shape.steps.element),
    posts: placed(raw, 'posts', shape.posts.unwrap().element),
    needs: needs.data ?? null,
    flow: flow.data ?? null,
    whole,
  };
}

interface ItemSchema<Item> {
  readonly safeParse: (value: unknown, rule: { jitless: true }) => { readonly data?: Item | undefined };
}

function placed<Item>(
  raw: Readonly<Record<string, unknown>>,
  section: Section,
  schema: ItemSchema<Item>,
): readonly Placed<Item>[] {
  const list = raw[section];
  if (!Array.isArray(list)) return [];
  return list.flatMap((value: unknown, index) => {
    const { data } = schema.safeParse(value, { jitless: true });
    return data === undefined ? [] : [{ item: data, path: [section, index] }];
  });
}

/** Collects faults with the place of a key or of a column inside a formula. */
export class CardFaults {
  readonly all: CardFault[] = [];
  readonly #tree: YamlTree;
  readonly #text: string;

  constructor(tree: YamlTree, text: string) {
    this.#tree = tree;
    this.#text = text;
  }

  add(code: CardFault['code'], path: Path, data: CardFault['data']): void {
    this.all.push({ code, spot: { offset: this.#tree.spotOf(path), path }, data });
  }

  /** A quote before the formula moves its columns by one. */
  addIn(
    path: Path,
    fault: { readonly code: CardFault['code']; readonly column: number; readonly data: CardFault['data'] },
  ): void {
    const start = this.#tree.spotOf(path);
    const quote = /^['"]/.test(this.#text.slice(start, start + 1)) ? 1 : 0;
    const { code, column, data } = fault;
    const offset = Math.min(start + quote + column - 1, this.#text.length);
    this.all.push({ code, spot: { offset, path }, data: { ...data, column } });
  }
}
