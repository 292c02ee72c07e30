// The water of one store while a book goes by: its stretches, what the wall has had of each, its age and its fillings.
import { msPerDay } from '../../ground/units/index.ts';
import type { BiocideSince, DoseTold, LevelResult, StoreStorage, Stretch, StretchStart } from './storage.ts';

/** Stretches with a result that are kept, the youngest ones; without a result only the present one is. */
const MOST_STRETCHES = 12;
/** Water that makes less than this of the content changes no concentration that anybody could see. Ours, no source. */
const SEEN_PART = 0.01;
const MG_PER_KG = 1e6;

/** What a sample of it will be read against, when its result comes. */
export interface SampledWater {
  readonly stretch: number;
  readonly exposureDaysPerM: number;
  readonly atMs: number;
}

export class StandingWater {
  readonly #store: string;
  readonly #areaM2: number;
  readonly #leastKg: number;
  readonly #kgPerM3: number;
  readonly #stretches = new Map<number, Stretch>();
  #present = -1;
  #exposure = 0;
  #toMs: number;
  #areaPerVolume = 0;
  readonly #firstMs: number;
  since: BiocideSince | null = null;
  lastDose: DoseTold | null = null;
  fills = 0;
  empties = 0;
  disinfected: StoreStorage['disinfected'] = null;
  /** Its last change was a coming in. */
  isFilling = false;

  /** @param facts `leastKg` as little as can be told from nothing: the usable remainder, or a hundredth of the capacity */
  constructor(facts: {
    readonly store: string;
    readonly areaM2: number;
    readonly leastKg: number;
    readonly kgPerM3: number;
    readonly firstMs: number;
  }) {
    this.#store = facts.store;
    this.#areaM2 = facts.areaM2;
    this.#leastKg = facts.leastKg;
    this.#kgPerM3 = facts.kgPerM3;
    this.#firstMs = facts.firstMs;
    this.#toMs = facts.firstMs;
  }

  /** The wall took biocide up to now, from the content that stood there. */
  standTo(atMs: number): void {
    if (atMs <= this.#toMs) return;
    this.#exposure += (this.#areaPerVolume * (atMs - this.#toMs)) / msPerDay;
    this.#toMs = atMs;
  }

  /** From here on with this content. */
  holds(massMg: number): void {
    const kg = Math.max(massMg / MG_PER_KG, this.#leastKg);
    this.#areaPerVolume = (this.#areaM2 * this.#kgPerM3) / kg;
  }

  begin(atMs: number, start: StretchStart): void {
    if (this.#stretches.get(this.#present)?.results.length === 0) this.#stretches.delete(this.#present);
    const [oldest] = this.#stretches.keys();
    if (this.#stretches.size >= MOST_STRETCHES && oldest !== undefined) this.#stretches.delete(oldest);
    this.#present += 1;
    this.#exposure = 0;
    this.#stretches.set(this.#present, { startMs: atMs, start, results: [] });
  }

  /** Other water came in. */
  filled(atMs: number, { massMg, heldMg }: { readonly massMg: number; readonly heldMg: number }): void {
    if (this.#present < 0 || massMg > SEEN_PART * Math.max(0, heldMg)) this.begin(atMs, 'fill');
  }

  sampled(atMs: number): SampledWater {
    return { stretch: this.#present, exposureDaysPerM: this.#exposure, atMs };
  }

  /** A result of a sample; one whose stretch is no longer kept tells nothing any more. */
  tell(water: SampledWater, result: Omit<LevelResult, 'exposureDaysPerM' | 'atMs'>): void {
    const stretch = this.#stretches.get(water.stretch);
    if (stretch === undefined) return;
    const { exposureDaysPerM, atMs } = water;
    const results = [...stretch.results, { ...result, exposureDaysPerM, atMs }].sort(
      (a, b) => a.atMs - b.atMs,
    );
    this.#stretches.set(water.stretch, { ...stretch, results });
  }

  asTold(): StoreStorage {
    const { since, lastDose, fills, empties, disinfected } = this;
    return {
      ...{ store: this.#store, since, lastDose, fills, empties, disinfected },
      stretches: [...this.#stretches.values()],
      exposureDaysPerM: this.#exposure,
      exposedToMs: this.#toMs,
      areaPerVolumePerM: this.#areaPerVolume,
      firstMs: this.#firstMs,
    };
  }
}
