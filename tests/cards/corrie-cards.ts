// The cards that ship, read; and what the practice book of Corrie knows at a time, as the values that a card is filled with.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Position } from '../../src/account/index.ts';
import {
  type Card,
  type CardValue,
  type FillAsked,
  type FilledCard,
  fillCard,
  indexOutpost,
  type OutpostIndex,
  readCard,
  readOutpost,
} from '../../src/outpost/index.ts';

const ROOT = join(import.meta.dirname, '../..');
export const CARD_FOLDER = join(ROOT, 'cards');
export const CARD_FILES = readdirSync(CARD_FOLDER).filter((name) => name.endsWith('.yaml'));
export const cardText = (name: string): string => readFileSync(join(CARD_FOLDER, name), 'utf8');

export const CARDS: readonly Card[] = CARD_FILES.map((file) => {
  const read = readCard(cardText(file), { file });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.card;
});

export function cardNamed(id: string): Card {
  const card = CARDS.find((each) => each.id === id);
  if (card === undefined) throw new Error(`no card is called ${id}`);
  return card;
}

export function outpostIndex(name: string): OutpostIndex {
  const read = readOutpost(readFileSync(join(ROOT, 'examples', name, 'outpost.yaml'), 'utf8'), {
    file: name,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return indexOutpost(read.outpost);
}

export const CORRIE = outpostIndex('corrie');
export const value = (number: number, unit: CardValue['unit'], u = 0): CardValue => ({
  value: number,
  u,
  unit,
});

/** What somebody would choose on a day on which FA is aboard. */
export const CHOSEN: Readonly<Record<string, FillAsked['chosen']>> = {
  'fill a container from a tank': { from: 'FA', to: 'C-11', hose: 'H-1' },
  'tank to tank': { from: 'C-01', to: 'R2', hose: 'H-2', amount: value(5, 'L') },
  'gauge a tank by gas': { tank: 'R2' },
  'weigh in': { store: 'C-08' },
  'swap container at a port': { old: 'C-04', new: 'C-01', port: 'dispenser feed' },
  'purge a line': { from: 'FA', into: 'C-13', hose: 'H-1' },
  'sample a point': { store: 'C-08', bottle: 'SMP-40', tests: 'silver, plate count' },
  'change a bed': { unit: 'purifier', bed: 'bed 3' },
  're-dose': {
    store: 'C-08',
    biocide: 'silver',
    stock: value(400, 'mg/L'),
    holds: value(0.03, 'mg/L', 0.01),
    wanted: value(0.2, 'mg/L'),
  },
  'push waste into an emptied tank': { from: 'W-01', to: 'FA', hose: 'H-3', amount: value(2, 'L') },
  'prepare hot water': { unit: 'dispenser' },
  'stroke check': { unit: 'dispenser' },
  'stock count': { count: 'CNT-1', store: 'C-08' },
  'dormancy and restart': {
    purifier: 'purifier',
    electrolyser: 'electrolyser',
    line: 'H-1',
    around: value(-5, '°C'),
  },
};

/** The contents of the stores, as the account has them. */
export function valuesOf(position: Position): ReadonlyMap<string, CardValue> {
  const litres = (massMg: number): number => massMg / position.mgPerL;
  return new Map(
    position.stores.map(({ facts, massMg, uMg }): [string, CardValue] => [
      `${facts.id}.content`,
      value(litres(massMg), 'L', litres(uMg)),
    ]),
  );
}

export function storesOf(index: OutpostIndex): FillAsked['stores'] {
  return [...index.stores.values()].map(({ id, kind }) => ({ id, kind }));
}

export function filled(id: string, more: Partial<FillAsked> = {}): FilledCard {
  return fillCard(cardNamed(id), {
    index: CORRIE,
    values: new Map(),
    chosen: CHOSEN[id] ?? {},
    stores: storesOf(more.index ?? CORRIE),
    rules: () => [],
    ...more,
  });
}
