// The examples of docs/methods/family.md are run as they stand there.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type FamilyPart, familyOf } from './family.ts';
import type { Inflow } from './inflows.ts';

const page = readFileSync(join(import.meta.dirname, '../../docs/methods/family.md'), 'utf8');
const lines = (page.split('```examples\n')[1]?.split('```')[0] ?? '').trim().split('\n');
const MG = 1_000_000;

const amounts = (text: string) =>
  text.split(' ').map((pair) => {
    const [store = '', value] = pair.split('=');
    return [store, Number(value)] as const;
  });

function said(parts: readonly FamilyPart[]): string {
  return parts
    .map(({ kind, name, massMg, parts: below }) => {
      const own = `${kind === 'store' ? name : kind} ${massMg / MG}`;
      return below.length === 0 ? own : `${own} [${said(below)}]`;
    })
    .join(', ');
}

/** Stores that are filled and drawn, with the inflows that the account would keep of it. */
class Tanks {
  readonly remainders = new Map<string, number>();
  readonly held = new Map<string, number>();
  readonly inflows: Inflow[] = [];
  readonly #filling = new Set<string>();

  told(store: string, value: number): void {
    this.held.set(store, value);
    this.#filling.add(store);
    this.#keep({ to: `store:${store}`, from: 'outside', told: 'opening', part: 1, begins: true });
  }

  move(from: string, to: string, value: number): void {
    const before = this.held.get(to) ?? 0;
    this.held.set(from, (this.held.get(from) ?? 0) - value);
    this.held.set(to, before + value);
    const begins = !this.#filling.has(to) && before <= (this.remainders.get(to) ?? 0);
    this.#filling.delete(from);
    this.#filling.add(to);
    const part = value / (before + value);
    this.#keep({ to: `store:${to}`, from: `store:${from}`, told: null, part, begins });
  }

  #keep(inflow: Pick<Inflow, 'to' | 'from' | 'told' | 'part' | 'begins'>): void {
    const at = this.inflows.length;
    this.inflows.push({ ...inflow, atMs: at, entry: `${at}`, grade: null });
  }
}

test('the examples of the page', () => {
  const tanks = new Tanks();
  let compared = 0;
  for (const line of lines) {
    const [what = '', rest = ''] = line.split(/\s+(.*)/);
    if (what === 'remainder') for (const [store, value] of amounts(rest)) tanks.remainders.set(store, value);
    else if (what === 'told') for (const [store, value] of amounts(rest)) tanks.told(store, value);
    else if (what === 'move') {
      const [from = '', to = '', value] = rest.split(' ');
      tanks.move(from, to, Number(value));
    } else {
      const [store = '', expected] = rest.split(' => ');
      const massMg = Math.round((tanks.held.get(store) ?? 0) * MG);
      expect(said(familyOf(tanks.inflows, { store, massMg })), line).toBe(expected);
      compared += 1;
    }
  }
  expect(compared).toBe(4);
});
