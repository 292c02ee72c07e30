// What a verdict is made of: results of samples, the water that they are held to be of, the loader's certificate.

/** One figure of one sample. What is not known is said as null or left out by none of these keys. */
export interface SampleResult {
  readonly id: string;
  readonly sample: string;
  readonly parameter: string;
  readonly value: number;
  /** `<0.05` is the value 0.05, `below`: less than that, nobody knows how much. `above` is beyond the range of the method. */
  readonly censored: 'no' | 'below' | 'above';
  readonly unit: string;
  /** Null where nobody said it: such a figure fits no limit. */
  readonly basis: string | null;
  readonly method: string | null;
  readonly madeAt: 'aboard' | 'laboratory';
  readonly takenAtMs: number;
  readonly verified: boolean;
  readonly validUntilMs: number;
  readonly degassed: boolean | null;
}

/** The moments that part results of this water from those of water that was in the store before. */
export interface WaterSince {
  /** Since when no water came in and nothing was added: an older result proves nothing of this water. */
  readonly unchangedSinceMs: number;
  /** Since when bad news counts: the store was emptied, or its water was treated and released. */
  readonly badNewsCountsSinceMs: number;
}

/** The loader's word for water that was delivered; it ends with the outpost's own result. */
export interface Certificate {
  readonly id: string;
  readonly validUntilMs: number;
  /** Whether the outpost's policy takes delivered water on it. */
  readonly allowedByPolicy: boolean;
  /** Whether all the water in the store came under it. */
  readonly coversAllWater: boolean;
}

/** What speaks against a release whatever else is known. */
export type Blocker =
  | 'above'
  | 'below'
  | 'censored-across-limit'
  | 'unit-or-basis'
  | 'no-figure'
  | 'future'
  | 'contradictory'
  | 'row-off'
  | 'nothing-required';

/** Why there is no evidence, although nothing speaks against the water. */
export type Lack = 'missing' | 'unverified' | 'expired' | 'older-water' | 'not-degassed';

export type ReasonCode = Blocker | Lack;

export interface Reason {
  readonly code: ReasonCode;
  /** Id of the row; '' where the choice requires none. */
  readonly row: string;
  readonly parameter: string;
  /** Ids of the results that it rests on, in their order. */
  readonly results: readonly string[];
}

export type Verdict =
  | {
      readonly released: true;
      readonly by: 'results' | 'certificate';
      /** The first of the evidence to end; a certificate ends before that with the own result. */
      readonly untilMs: number;
      /** Ids of results, or of the certificate. */
      readonly evidence: readonly string[];
    }
  | { readonly released: false; readonly reasons: readonly Reason[] };
