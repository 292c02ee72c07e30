// The examples of docs/methods/contact-tracing.md are run as they stand there.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { traceContacts } from './contacts.ts';
import { originsOf } from './origins.ts';
import type { Step, WaterHistory } from './step.ts';
import { suspicionOfSample } from './suspicion.ts';

const page = readFileSync(join(import.meta.dirname, '../../../docs/methods/contact-tracing.md'), 'utf8');
const lines = (page.split('```examples\n')[1]?.split('```')[0] ?? '').trim().split('\n');
const MG = 1_000_000;
const NAMES = ['A', 'B', 'C'];

class Page {
  readonly #steps: Step[] = [];
  readonly #held = NAMES.map(() => 0);

  #moment() {
    return { atMs: this.#steps.length, entry: `E${this.#steps.length}` };
  }

  told(amounts: readonly string[]): void {
    for (const pair of amounts) {
      const [name = '', value] = pair.split('=');
      const account = NAMES.indexOf(name);
      const massMg = Number(value) * MG;
      const told = { account, heldMg: 0, massMg, kind: 'opening', visit: null } as const;
      this.#steps.push({ what: 'told', ...told, ...this.#moment() });
      this.#held[account] = massMg;
    }
  }

  move([giver = '', taker = '', value]: readonly string[]): void {
    const [from, to, massMg] = [NAMES.indexOf(giver), NAMES.indexOf(taker), Number(value) * MG];
    const [fromHeldMg = 0, toHeldMg = 0] = [this.#held[from], this.#held[to]];
    const flow = { from, to, massMg, fromHeldMg, toHeldMg, begins: toHeldMg === 0, hose: null, person: null };
    this.#steps.push({ what: 'flow', kind: 'movement', ...flow, ...this.#moment() });
    this.#held[from] = fromHeldMg - massMg;
    this.#held[to] = toHeldMg + massMg;
  }

  sample([name = '', sample = '']: readonly string[]): void {
    const account = NAMES.indexOf(name);
    this.#steps.push({ what: 'sample', account, sample, fromContents: true, ...this.#moment() });
  }

  release([name = '']: readonly string[]): void {
    this.#steps.push({ what: 'release', accounts: [NAMES.indexOf(name)], ...this.#moment() });
  }

  history(): WaterHistory {
    const accounts = NAMES.map((name) => ({ kind: 'store' as const, name }));
    return {
      steps: [...this.#steps],
      accounts,
      heldMg: [...this.#held],
      stores: new Map(),
      units: new Map(),
    };
  }

  trace(sample: string): string {
    const history = this.history();
    const suspicion = suspicionOfSample(history, sample);
    if (suspicion === null) throw new Error(`no sample ${sample}`);
    const { contacts } = traceContacts(history, suspicion).trace;
    const said = contacts.map(
      ({ name, suspectMg, heldMg }) => `${name} ${suspectMg / MG} of ${(heldMg ?? 0) / MG}`,
    );
    return said.join(', ');
  }

  origins(store: string): string {
    const found = originsOf(this.history(), store)?.origins ?? [];
    return found.map(({ name, massMg }) => `${name} ${massMg / MG}`).join(', ');
  }
}

test('the examples of the page', () => {
  const told = new Page();
  let compared = 0;
  for (const line of lines) {
    const [what = '', ...rest] = line.split(/\s+/);
    if (what === 'told') told.told(rest);
    else if (what === 'move') told.move(rest);
    else if (what === 'sample') told.sample(rest);
    else if (what === 'release') told.release(rest);
    else {
      const [of = ''] = rest;
      expect(what === 'trace' ? told.trace(of) : told.origins(of), line).toBe(line.split(' => ')[1]);
      compared += 1;
    }
  }
  expect(compared).toBe(3);
});
