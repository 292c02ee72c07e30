// The biocide that the water of a store has in it as a dose is reckoned from: its level now, or as it was read last.
import type { BiocideState } from '../../account/index.ts';
import { exp } from '../../ground/maths/index.ts';
import type { OutpostIndex } from '../../outpost/index.ts';

export interface PresentLevel {
  readonly mgPerL: number;
  /** One standard deviation. */
  readonly u: number;
  /** `below`: somewhere under the limit of the last result. */
  readonly is: 'now' | 'as read' | 'below';
  readonly entries: readonly string[];
}

/** Null where no result speaks of this water. */
export function presentLevel({ outpost }: OutpostIndex, state: BiocideState): PresentLevel | null {
  const last = state.results.at(-1);
  if (last === undefined) return null;
  const entries = state.results.map(({ entry }) => entry);
  if (state.level === null) {
    if (!last.below) return null;
    // Anywhere from nought to the limit, as likely here as there.
    const mgPerL = last.valueMgPerL / 2;
    return { mgPerL, u: last.valueMgPerL / Math.sqrt(12), is: 'below', entries };
  }
  const instrument = outpost.instruments.find(({ quantity }) => quantity === state.biocide);
  const shared = instrument?.calibration?.relative ?? 0;
  const { logMgPerL, uLog, rate } = state.level;
  const mgPerL = exp(logMgPerL);
  const u = mgPerL * Math.sqrt(uLog * uLog + shared * shared);
  return { mgPerL, u, is: rate === null ? 'as read' : 'now', entries };
}
