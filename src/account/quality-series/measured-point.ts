// One figure of one sample, as it was told, with where and when the water was drawn.

export type Censored = 'no' | 'below' | 'above';

export interface MeasuredPoint {
  /** When the sample was drawn: the water was so then. Without an entry of the sample, when it was read. */
  readonly atMs: number;
  /** When the result came. */
  readonly knownAtMs: number;
  readonly store: string | null;
  readonly point: string | null;
  /** Grade of the store when the sample was drawn; null of a point, and where it is not known. */
  readonly grade: string | null;
  readonly parameter: string;
  /** As it was told; a basis that nobody gave and that goes without saying is filled in. */
  readonly told: { readonly value: number; readonly unit: string; readonly basis: string | null };
  readonly censored: Censored;
  readonly method: string | null;
  readonly madeAt: 'aboard' | 'laboratory' | null;
  readonly sample: string;
  readonly entry: string;
  /** A second figure of the same water: it is shown, and counts for nothing. */
  readonly duplicate: boolean;
  /** On the way into the store, not from its contents. */
  readonly drawnFrom: string | null;
}

/** Something that was done to the water's way, such as a bed that was changed. */
export interface WaterMark {
  readonly atMs: number;
  readonly what: string;
  readonly entry: string;
}

export interface Measured {
  /** In the order of drawing, then of the book. */
  readonly points: readonly MeasuredPoint[];
  readonly marks: readonly WaterMark[];
}

/** Where water is looked at: a store, a sampling point, all stores of a grade, or everywhere. */
export type SeriesPlace =
  | { readonly kind: 'store' | 'point' | 'grade'; readonly name: string }
  | { readonly kind: 'everywhere' };

export function isAt(place: SeriesPlace, { store, point, grade }: MeasuredPoint): boolean {
  if (place.kind === 'everywhere') return true;
  if (place.kind === 'store') return store === place.name;
  return place.kind === 'point' ? point === place.name : grade === place.name;
}
