// Hears samples and results while entries are posted, and writes down what was measured.
import type { AnyEntry, Body, Entry } from '../../book/index.ts';
import { basisUnlessSaid } from '../../outpost/index.ts';
import type { Fold, Watcher } from '../fold.ts';
import type { Measured, MeasuredPoint, WaterMark } from './measured-point.ts';

/** What the kinds say of a sample and a result; a key that a kind does not have is not said. */
interface ToldSample {
  readonly sample: string;
  readonly store?: string;
  readonly point?: string;
  readonly drawnFrom?: string;
  readonly duplicateOf?: string;
}
interface ToldResult {
  readonly sample: string;
  readonly store?: string;
  readonly point?: string;
  readonly method?: string;
  readonly madeAt?: 'aboard' | 'laboratory';
  readonly takenAtMs?: number;
  readonly values: readonly ToldValue[];
}
interface ToldValue {
  readonly parameter: string;
  readonly value: number;
  readonly unit: string;
  readonly basis?: string;
  readonly below?: boolean;
  readonly above?: boolean;
}

interface Drawn {
  readonly body: ToldSample;
  readonly atMs: number;
  readonly grade: string | null;
}

/** What is done to a bed changes what comes out behind it. */
const BED = /\bbed\b/i;

export class MeasuredWatch {
  readonly #points: MeasuredPoint[] = [];
  readonly #marks: WaterMark[] = [];
  readonly #samples = new Map<string, Drawn>();
  /** Sample and parameter of what has a figure already. */
  readonly #known = new Set<string>();

  readonly watcher: Watcher = { onEntry: (fold, entry) => this.hear(fold, entry) };

  get measured(): Measured {
    const points = this.#points.sort((one, other) => one.atMs - other.atMs);
    return { points, marks: this.#marks };
  }

  hear(fold: Pick<Fold, 'stores'>, entry: AnyEntry): void {
    if (entry.kind === 'sample') this.#drawn(fold, entry);
    else if (entry.kind === 'result') this.#result(fold, entry);
    else if (entry.kind === 'service' && BED.test(entry.body.item)) this.#mark(entry);
  }

  #drawn(fold: Pick<Fold, 'stores'>, { body: told, happenedAtMs: atMs }: Entry<'sample'>): void {
    const body: ToldSample & Body<'sample'> = told;
    this.#samples.set(body.sample, { body, atMs, grade: gradeOf(fold, body.store) });
  }

  #mark({ id: entry, happenedAtMs: atMs, body }: Entry<'service'>): void {
    this.#marks.push({ atMs, what: `${body.item}: ${body.what}`, entry });
  }

  #result(fold: Pick<Fold, 'stores'>, entry: Entry<'result'>): void {
    const body: ToldResult & Body<'result'> = entry.body;
    const drawn = this.#samples.get(body.sample);
    const store = body.store ?? drawn?.body.store ?? null;
    const common = {
      atMs: drawn?.atMs ?? body.takenAtMs ?? entry.happenedAtMs,
      knownAtMs: entry.happenedAtMs,
      store,
      point: body.point ?? drawn?.body.point ?? null,
      grade: drawn?.grade ?? gradeOf(fold, store ?? undefined),
      method: body.method ?? null,
      madeAt: body.madeAt ?? null,
      sample: body.sample,
      entry: entry.id,
      drawnFrom: drawn?.body.drawnFrom ?? null,
    };
    const isSecond = drawn?.body.duplicateOf !== undefined;
    for (const value of body.values as readonly ToldValue[])
      this.#points.push({ ...common, ...this.#figure(body.sample, value, isSecond) });
  }

  #figure(sample: string, told: ToldValue, isSecond: boolean) {
    const { parameter, value, unit, basis, below, above } = told;
    const name = JSON.stringify([sample, parameter]);
    const duplicate = isSecond || this.#known.has(name);
    this.#known.add(name);
    const censored =
      below === true ? ('below' as const) : above === true ? ('above' as const) : ('no' as const);
    return {
      parameter,
      told: { value, unit, basis: basis ?? basisUnlessSaid(parameter) ?? null },
      censored,
      duplicate,
    };
  }
}

function gradeOf({ stores }: Pick<Fold, 'stores'>, store: string | undefined): string | null {
  return store === undefined ? null : (stores.get(store)?.grade ?? null);
}
