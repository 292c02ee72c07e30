// Writes down what a book tells of standing water while its entries are posted.
import type { AnyEntry, Body } from '../../book/index.ts';
import { toldIn } from '../../outpost/index.ts';
import { contentOf } from '../flow.ts';
import { type Flow, type Fold, MG_PER_KG, type Watcher } from '../fold.ts';
import type { StoreState } from '../store-state.ts';
import { LineFlows } from './line-flows.ts';
import { type SampledWater, StandingWater } from './standing-water.ts';
import type { BiocideSince, Storage, StretchStart, TasteTold } from './storage.ts';
import { wettedArea } from './wetted-area.ts';

/** A part of the capacity below which a content is told from nothing no more. */
const LEAST_PART = 0.01;
const MOST_TASTES = 200;
const MG_PER_L = { unit: 'mg/L', basis: 'as itself' } as const;
/** How a service of a store has to be called to count as a new beginning of its life. */
const DISINFECTED = /disinfect/i;

export class StorageRecorder {
  readonly #waters = new Map<string, StandingWater>();
  /** Since when the biocide is in what a hose or another account holds. */
  readonly #sinceOf = new Map<string, BiocideSince>();
  readonly #samples = new Map<string, { readonly store: string; readonly water: SampledWater | null }>();
  readonly #lines = new LineFlows();
  #tastes: TasteTold[] = [];
  readonly #touched = new Set<StoreState>();

  readonly watcher: Watcher = {
    onEntry: (fold, entry) => {
      this.#lines.heard(entry);
      if (entry.kind === 'dose' || entry.kind === 'treatment') this.#dosed(fold, entry);
    },
    onFlow: (fold, entry, what) => {
      this.#flow(fold, entry, what);
      return undefined;
    },
    onTold: (fold, entry, state, { massMg }) => this.#told(fold, entry, state, massMg),
    onRead: (fold, entry, state) => {
      this.#waterOf(fold, state, entry.happenedAtMs).standTo(entry.happenedAtMs);
      this.#touched.add(state);
    },
    onApplied: (fold, entry) => {
      for (const state of this.#touched)
        this.#waterOf(fold, state, entry.happenedAtMs).holds(contentOf(fold, state).massMg);
      this.#touched.clear();
      this.#afterwards(fold, entry);
    },
  };

  storage(fold: Fold): Storage {
    return {
      stores: new Map([...this.#waters].map(([id, water]) => [id, water.asTold()])),
      lines: this.#lines.all(fold.index),
      tastes: [...this.#tastes],
      openingMs: fold.openingMs,
    };
  }

  #waterOf(fold: Fold, { facts }: StoreState, atMs: number): StandingWater {
    let water = this.#waters.get(facts.id);
    if (water === undefined) {
      const kgPerM3 = (fold.mgPerL * 1000) / MG_PER_KG;
      const capacityL = facts.capacityMg / fold.mgPerL;
      const inFile = fold.index.stores.get(facts.id)?.wettedAreaCm2;
      const known = { kind: facts.kind, capacityL, ...(inFile !== undefined && { wettedAreaCm2: inFile }) };
      const leastMg = Math.max(facts.remainderMg, LEAST_PART * facts.capacityMg);
      const { areaM2 } = wettedArea(known);
      water = new StandingWater({
        ...{ store: facts.id, areaM2, kgPerM3, firstMs: atMs },
        leastKg: leastMg / MG_PER_KG,
      });
      this.#waters.set(facts.id, water);
    }
    return water;
  }

  #told(fold: Fold, entry: AnyEntry, state: StoreState, massMg: number): void {
    const { happenedAtMs: atMs, kind } = entry;
    const water = this.#waterOf(fold, state, atMs);
    water.standTo(atMs);
    const start: StretchStart = kind === 'opening' ? 'opening' : 'came aboard';
    if (massMg > state.facts.remainderMg) {
      water.begin(atMs, start);
      water.fills += 1;
      water.isFilling = true;
      this.#setSince(state.account, water, { atMs, by: kind === 'opening' ? 'opening' : 'delivery' });
    }
    this.#touched.add(state);
  }

  #flow(fold: Fold, entry: AnyEntry, { from, to, massMg, plumbing }: Flow): void {
    if (massMg === 0 || from.account === to.account) return;
    const { happenedAtMs: atMs, kind } = entry;
    const isDose = kind === 'dose' || kind === 'treatment';
    if (!isDose && kind !== 'sample') this.#lines.flowed(fold, entry, [from.store, to.store]);
    for (const { store } of [from, to]) if (store !== null) this.#stood(fold, store, atMs);
    if (massMg < 0 || isDose) return;
    if (from.store !== null) this.#waterOf(fold, from.store, atMs).isFilling = false;
    const comes = this.#sinceOf.get(from.account) ?? { atMs, by: 'fill' as const };
    if (to.store === null) {
      // What stands in a hose is as old as the oldest that went in; a pool gives nothing back.
      if (to.account.startsWith('line:')) this.#sinceOf.set(to.account, comes);
      return;
    }
    this.#cameIn(fold, to.store, { comes, massMg, atMs, plumbing: plumbing === true });
  }

  #stood(fold: Fold, state: StoreState, atMs: number): void {
    this.#waterOf(fold, state, atMs).standTo(atMs);
    this.#touched.add(state);
  }

  #cameIn(
    fold: Fold,
    state: StoreState,
    what: {
      readonly comes: BiocideSince;
      readonly massMg: number;
      readonly atMs: number;
      readonly plumbing: boolean;
    },
  ): void {
    const { comes, massMg, atMs } = what;
    const water = this.#waterOf(fold, state, atMs);
    const heldMg = contentOf(fold, state).massMg;
    const isEmpty = heldMg <= state.facts.remainderMg + 2 * state.facts.remainderUMg;
    const begins = isEmpty && !water.isFilling;
    if (begins) {
      water.fills += 1;
      // What was dosed went out with the water before.
      water.lastDose = null;
    }
    water.filled(atMs, { massMg, heldMg });
    water.isFilling = true;
    // Water runs through a buffer: what is in it is as old as what came last.
    const isRenewed = begins || water.since === null || state.facts.kind === 'buffer';
    const since = isRenewed || (water.since?.atMs ?? atMs) > comes.atMs ? comes : water.since;
    if (since !== null) this.#setSince(state.account, water, since);
  }

  #setSince(account: string, water: StandingWater, since: BiocideSince): void {
    water.since = since;
    this.#sinceOf.set(account, since);
  }

  #dosed(fold: Fold, entry: AnyEntry & { readonly kind: 'dose' | 'treatment' }): void {
    const { happenedAtMs: atMs } = entry;
    const stores = entry.kind === 'dose' ? entry.body.stores : [entry.body.store];
    for (const id of stores) {
      const state = fold.stores.get(id);
      if (state === undefined) continue;
      this.#stood(fold, state, atMs);
      const water = this.#waterOf(fold, state, atMs);
      water.begin(atMs, entry.kind);
      this.#setSince(state.account, water, { atMs, by: 'dose' });
      if (entry.kind === 'dose') {
        const { biocide, doseEach, targetMgPerL } = entry.body;
        const target = targetMgPerL ?? null;
        water.lastDose = { atMs, entry: entry.id, biocide, massMg: doseEach.massMg, targetMgPerL: target };
      }
    }
  }

  #afterwards(fold: Fold, entry: AnyEntry): void {
    const { kind, happenedAtMs: atMs, id } = entry;
    if (kind === 'sample') this.#sampled(fold, entry.body, atMs);
    else if (kind === 'result') this.#result(fold, entry.body, { atMs, id });
    else if (kind === 'declared-empty') {
      const state = fold.stores.get(entry.body.store);
      if (state !== undefined) this.#waterOf(fold, state, atMs).empties += 1;
    } else if (kind === 'service') {
      const state = fold.stores.get(entry.body.item);
      if (state !== undefined && DISINFECTED.test(entry.body.what))
        this.#waterOf(fold, state, atMs).disinfected = { atMs, entry: id };
    } else if (kind === 'taste') this.#tasted(entry.body, { atMs, id });
  }

  #sampled(fold: Fold, { sample, store, drawnFrom }: Body<'sample'>, atMs: number): void {
    const state = store === undefined ? undefined : fold.stores.get(store);
    if (store === undefined || state === undefined) return;
    const water = this.#waterOf(fold, state, atMs);
    water.standTo(atMs);
    // Drawn on its way in: it speaks of what came, and not of what stands there.
    const isOfContents = drawnFrom === undefined;
    this.#samples.set(sample, { store, water: isOfContents ? water.sampled(atMs) : null });
  }

  #result(fold: Fold, body: Body<'result'>, { atMs, id }: { atMs: number; id: string }): void {
    const known = this.#samples.get(body.sample);
    const store = known?.store ?? body.store;
    const state = store === undefined ? undefined : fold.stores.get(store);
    if (state === undefined || known?.water === null) return;
    const water = this.#waterOf(fold, state, atMs);
    water.standTo(atMs);
    for (const { parameter, value, unit, below } of body.values) {
      if (!fold.index.biocides.has(parameter)) continue;
      const valueMgPerL = toldIn({ value, unit, basis: MG_PER_L.basis }, MG_PER_L);
      if (valueMgPerL === undefined) continue;
      const result = { sample: body.sample, entry: id, parameter, valueMgPerL, below: below === true };
      water.tell(known?.water ?? water.sampled(atMs), result);
    }
  }

  #tasted(
    { store, point, words, strength }: Body<'taste'>,
    { atMs, id }: { atMs: number; id: string },
  ): void {
    const source = store ?? point;
    if (source === undefined) return;
    this.#tastes = [
      ...this.#tastes.slice(1 - MOST_TASTES),
      { atMs, entry: id, source, words, strength: strength ?? null },
    ];
  }
}
