// What is told of the beds of a purifier: what went through them, what was read behind them, and when one was changed.

/** A reading of the water behind the beds. */
export interface BedResult {
  readonly atMs: number;
  readonly entry: string;
  readonly sample: string;
  /** As the outpost file calls it: TOC, conductivity. */
  readonly parameter: string;
  readonly value: number;
  readonly unit: string;
  /** Nothing was found; the value is the detection limit. */
  readonly below: boolean;
  /** What the lead bed had had through it by then, litres, as the counters between two lines tell. */
  readonly throughputL: number;
  /** Litres since the last change, and null before the first one. */
  readonly sinceChangeL: number | null;
  /** Water from before a change was still in the buffer: shown, and no reading of these beds. */
  readonly isMixed: boolean;
}

/** Feed between two lines: what daily use is learned from. */
export interface FedInterval {
  readonly day: number;
  readonly endMs: number;
  readonly days: number;
  readonly peopleAboard: number;
  readonly massMg: number;
  readonly entry: string;
}

/** One standing of the beds, from a change (or from the opening) to the next. */
export interface BedStanding {
  readonly sinceMs: number;
  readonly entry: string;
  readonly begun: 'opening' | 'outpost file' | 'change';
  /** What the lead had had through it at its beginning, and one standard deviation of it, litres. */
  readonly leadStartL: number;
  readonly leadStartUL: number;
  readonly lagStartL: number;
  readonly lagStartUL: number;
}

/** A standing that a change has ended. */
export interface PastStanding {
  readonly endMs: number;
  readonly entry: string;
  readonly leadL: number;
  /** What the person wrote down at the change; null where it was not. */
  readonly toldL: number | null;
}

/** The beds of one purifier by the end of a view. */
export interface BedStory {
  readonly unit: string;
  /** Name of the first bed and of those behind it. */
  readonly positions: readonly string[];
  readonly standing: BedStanding;
  readonly past: readonly PastStanding[];
  /** Litres through the beds since this standing began, and one standard deviation. */
  readonly fedL: number;
  readonly fedUL: number;
  /** The last line up to which that is counted. */
  readonly countedToMs: number;
  readonly fed: readonly FedInterval[];
  /** Readings behind the beds, of all standings, in the order of time. */
  readonly results: readonly BedResult[];
  /** Readings of the same quantities elsewhere: what an instrument says of other water. */
  readonly elsewhere: readonly ElsewhereResult[];
  /** Readings of the feed itself. */
  readonly feedResults: readonly ElsewhereResult[];
  /** Cabin temperatures of the lines, for what they may do to a reading. */
  readonly cabin: readonly { readonly atMs: number; readonly temperatureC: number }[];
}

export interface ElsewhereResult {
  readonly atMs: number;
  readonly entry: string;
  readonly parameter: string;
  readonly value: number;
  readonly unit: string;
  readonly below: boolean;
  readonly place: string;
}

/** The lead bed now: what it has had through it. */
export function leadUsedL({ standing, fedL, fedUL }: BedStory): {
  readonly valueL: number;
  readonly uL: number;
} {
  const { leadStartL, leadStartUL } = standing;
  return { valueL: leadStartL + fedL, uL: Math.sqrt(leadStartUL * leadStartUL + fedUL * fedUL) };
}
