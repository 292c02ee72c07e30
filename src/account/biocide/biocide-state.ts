// What is known of the biocide of each store: level, rate of its wall, and since when it has been in the water.
import { msPerDay } from '../../ground/units/index.ts';
import type { OutpostIndex, StoreKind } from '../../outpost/index.ts';
import { instrumentFor, type LogRow } from './result-doubt.ts';
import type { BiocideSince, DoseTold, LevelResult, Storage, StoreStorage } from './storage.ts';
import {
  type FallingLevel,
  fallingLevel,
  kindRate,
  logResults,
  ownRate,
  rateWithoutLevel,
  type WallRate,
} from './wall-rate.ts';
import { type WettedArea, wettedArea } from './wetted-area.ts';

/** Why there is no rate. */
export type NoRate = 'no results' | 'one result' | 'limits alone' | 'no instrument' | 'undetermined';

export interface BiocideState {
  readonly store: string;
  readonly biocide: string;
  readonly since: BiocideSince | null;
  readonly lastDose: DoseTold | null;
  /** Results of the present water, the youngest last. */
  readonly results: readonly LevelResult[];
  /** With a rate, the level now; without one, the level when it was read. Null where limits alone, or nothing, are known. */
  readonly level: FallingLevel | null;
  readonly rate: WallRate | null;
  readonly noRate: NoRate | null;
  readonly area: WettedArea;
  /** Of the present content, 1/m. */
  readonly areaPerVolumePerM: number;
  readonly atMs: number;
}

/** A store as this has to know it. */
export interface StoreWithWater {
  readonly id: string;
  readonly kind: StoreKind;
  readonly capacityL: number;
  /** Of its grade; a store whose grade has none is judged by what was dosed into it. */
  readonly biocide: string | null;
}

/**
 * The biocide of every store that has one, at an instant not before the last entry of the book.
 * @param storage what the book tells; @param stores those that are aboard and hold water
 */
export function biocideStates(
  storage: Storage,
  stores: readonly StoreWithWater[],
  at: { readonly index: OutpostIndex; readonly atMs: number },
): readonly BiocideState[] {
  const told = stores.flatMap((store) => {
    const water = storage.stores.get(store.id);
    const biocide = store.biocide ?? water?.lastDose?.biocide ?? null;
    if (water === undefined || biocide === null) return [];
    return [{ store, biocide, water: stoodUntil(water, at.atMs) }];
  });
  const logged = told.map((each) => ({ ...each, stretches: stretchesOf(each, at.index) }));
  const rates = logged.map(({ stretches }) => ownRate(stretches));
  return logged.map(({ store, biocide, water, stretches }, k): BiocideState => {
    const others = logged.flatMap((other, j) => {
      const rate = rates[j] ?? null;
      const isLike = j !== k && other.store.kind === store.kind && other.biocide === biocide;
      return isLike && rate !== null ? [rate] : [];
    });
    const ofKind = kindRate(others);
    const level = fallingLevel(water, stretches, ofKind);
    const rate = level === null ? rateWithoutLevel(rates[k] ?? null, ofKind) : level.rate;
    const present = water.stretches.at(-1)?.results.filter(({ parameter }) => parameter === biocide) ?? [];
    const hasInstrument = instrumentFor(at.index, biocide) !== null;
    const inFile = at.index.stores.get(store.id)?.wettedAreaCm2;
    return {
      store: store.id,
      biocide,
      since: water.since,
      lastDose: water.lastDose,
      results: present,
      level,
      rate,
      noRate: rate === null ? whyNoRate(stretches.at(-1) ?? [], { present, hasInstrument }) : null,
      area: wettedArea({ ...store, ...(inFile !== undefined && { wettedAreaCm2: inFile }) }),
      areaPerVolumePerM: water.areaPerVolumePerM,
      atMs: at.atMs,
    };
  });
}

/** The wall goes on between the last entry that touched the store and the instant asked for. */
function stoodUntil(water: StoreStorage, atMs: number): StoreStorage {
  const days = Math.max(0, atMs - water.exposedToMs) / msPerDay;
  return { ...water, exposureDaysPerM: water.exposureDaysPerM + days * water.areaPerVolumePerM };
}

function stretchesOf(
  { water, biocide }: { readonly water: StoreStorage; readonly biocide: string },
  index: OutpostIndex,
): readonly (readonly LogRow[])[] {
  const instrument = instrumentFor(index, biocide);
  return water.stretches.map(({ results }) => logResults(results, { biocide, instrument }));
}

function whyNoRate(
  logged: readonly LogRow[],
  { present, hasInstrument }: { readonly present: readonly LevelResult[]; readonly hasInstrument: boolean },
): NoRate {
  if (present.length === 0) return 'no results';
  if (!hasInstrument) return 'no instrument';
  if (logged.every(({ below }) => below)) return 'limits alone';
  return present.length === 1 ? 'one result' : 'undetermined';
}
