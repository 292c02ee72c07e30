// What a book tells of water that stands in stores: stretches in which only the wall takes biocide, results, fillings, flows of lines, tastes.

/** How a stretch of standing water began. */
export type StretchStart = 'opening' | 'came aboard' | 'fill' | 'dose' | 'treatment';

/** A result for the biocide in the water of a store, in mg/L. */
export interface LevelResult {
  /** When the sample was drawn, and not when its result came. */
  readonly atMs: number;
  readonly sample: string;
  /** The entry of the result. */
  readonly entry: string;
  readonly parameter: string;
  readonly valueMgPerL: number;
  /** Under the detection limit, which is the value. */
  readonly below: boolean;
  /** What the wall has had since the stretch began: the sum of its area for the volume, times days; days a metre. */
  readonly exposureDaysPerM: number;
}

/** Water to which nothing was added: between a fill or a dose and the next one. */
export interface Stretch {
  readonly startMs: number;
  readonly start: StretchStart;
  readonly results: readonly LevelResult[];
}

/** Since when the biocide has been in the water. */
export interface BiocideSince {
  readonly atMs: number;
  readonly by: 'dose' | 'fill' | 'opening' | 'delivery';
}

export interface DoseTold {
  readonly atMs: number;
  readonly entry: string;
  readonly biocide: string;
  readonly massMg: number;
  readonly targetMgPerL: number | null;
}

export interface StoreStorage {
  readonly store: string;
  /** The last ones; the present one last. None before anything was told of the store. */
  readonly stretches: readonly Stretch[];
  /** What the wall has had of the present stretch up to the last entry of the book that touched the store, and when that was. */
  readonly exposureDaysPerM: number;
  readonly exposedToMs: number;
  /** Of the present content, up to the next flow. */
  readonly areaPerVolumePerM: number;
  readonly since: BiocideSince | null;
  readonly lastDose: DoseTold | null;
  /** Fillings that began in an emptied store, and how often it was declared empty. */
  readonly fills: number;
  readonly empties: number;
  /** First time that the book speaks of it. */
  readonly firstMs: number;
  readonly disinfected: { readonly atMs: number; readonly entry: string } | null;
}

/** Something tasted or smelled. */
export interface TasteTold {
  readonly atMs: number;
  readonly entry: string;
  /** A store, or a point where water is taken. */
  readonly source: string;
  readonly words: string;
  readonly strength: number | null;
}

/** A port or a hose, and when water last went through it; null: never since the book began. */
export interface LineFlow {
  readonly line: string;
  readonly kind: 'port' | 'hose';
  readonly lastFlowMs: number | null;
}

export interface Storage {
  readonly stores: ReadonlyMap<string, StoreStorage>;
  readonly lines: readonly LineFlow[];
  readonly tastes: readonly TasteTold[];
  readonly openingMs: number | null;
}
