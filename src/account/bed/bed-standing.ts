// Which bed stands where, change by change: what each had had through it when it came to its place.
import type { BedStanding, PastStanding } from './bed-story.ts';
import { type BedChange, type BedWatch, type FedPoint, type Purifier, positionOf } from './bed-watch.ts';

/** An opening tells a throughput without its doubt: part of it, one standard deviation. Ours, no source. */
const UNTOLD_RELATIVE_U = 0.02;
/** A lag bed's use is known from the lead's by a share that the file calls about so: part of it, one standard deviation. Ours, no source. */
const LAG_RELATIVE_U = 0.25;
/** What a watch has heard that bears on which bed stands where. */
export type Heard = Pick<BedWatch, 'points' | 'changes' | 'toldAtOpening' | 'openingMs'>;

interface Standings {
  readonly standing: BedStanding;
  readonly past: readonly PastStanding[];
}

/** From the opening on, change by change: the first bed goes out, the next ones move up, and the last place gets a new bed. */
export function standingsOf(purifier: Purifier, watch: Heard): Standings {
  const past: PastStanding[] = [];
  let standing = firstStanding(purifier, watch);
  for (const change of watch.changes) {
    if (change.atMs < standing.sinceMs) continue;
    const fedL = fedAt(watch.points, change.atMs) - fedAt(watch.points, standing.sinceMs);
    const leadL = standing.leadStartL + fedL;
    past.push({ endMs: change.atMs, entry: change.entry, leadL, toldL: change.toldL });
    standing = afterChange(purifier, standing, { change, fedL });
  }
  return { standing, past };
}

function firstStanding(purifier: Purifier, heard: Heard): BedStanding {
  const {
    positions = [],
    leadThroughputOnDayOneL = 0,
    lagUseShareAfterChange: share = 0,
  } = purifier.beds ?? {};
  const toldOf = (position: string | undefined) =>
    [...heard.toldAtOpening].find(
      ([item]) => position !== undefined && positionOf(purifier, item) === position,
    )?.[1];
  const [lead, lag] = [toldOf(positions[0]), toldOf(positions[1])];
  const leadStartL = lead?.litres ?? leadThroughputOnDayOneL;
  const lagStartL = lag?.litres ?? share * leadStartL;
  return {
    sinceMs: heard.openingMs ?? 0,
    entry: lead?.entry ?? '',
    begun: lead === undefined ? 'outpost file' : 'opening',
    leadStartL,
    leadStartUL: UNTOLD_RELATIVE_U * leadStartL,
    lagStartL,
    lagStartUL: (lag === undefined ? LAG_RELATIVE_U : UNTOLD_RELATIVE_U) * lagStartL,
  };
}

function afterChange(
  purifier: Purifier,
  before: BedStanding,
  { change, fedL }: { readonly change: BedChange; readonly fedL: number },
): BedStanding {
  const { positions = [], lagUseShareAfterChange: share = 0 } = purifier.beds ?? {};
  const begun = { sinceMs: change.atMs, entry: change.entry, begun: 'change' as const };
  const fresh = { lagStartL: 0, lagStartUL: 0 };
  const lagL = before.lagStartL + share * fedL;
  const lagUL = LAG_RELATIVE_U * lagL;
  if (change.position === positions[0])
    return {
      ...begun,
      leadStartL: positions.length > 1 ? lagL : 0,
      leadStartUL: positions.length > 1 ? lagUL : 0,
      ...fresh,
    };
  return { ...begun, leadStartL: before.leadStartL + fedL, leadStartUL: before.leadStartUL, ...fresh };
}

/** Litres fed by an instant: even between two lines, and after the last one as fast as before it. */
export function fedAt(points: readonly FedPoint[], atMs: number): number {
  const next = points.findIndex((point) => point.atMs >= atMs);
  const at = next < 0 ? points.length - 1 : Math.max(1, next);
  const [from, to] = [points[at - 1], points[at]];
  if (from === undefined || to === undefined || to.atMs === from.atMs) return points[0]?.fedL ?? 0;
  const part = Math.max(0, (atMs - from.atMs) / (to.atMs - from.atMs));
  return from.fedL + part * (to.fedL - from.fedL);
}
