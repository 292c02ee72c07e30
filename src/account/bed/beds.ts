// The beds of every purifier of a book: one pass, and what it heard put in order.
import type { BookPort } from '../../book/index.ts';
import type { Fold, Watcher } from '../fold.ts';
import { beginPass, type NoPass, type PassOptions } from '../pass.ts';
import { together } from '../watcher.ts';
import { fedAt, standingsOf } from './bed-standing.ts';
import type { BedResult, BedStory, ElsewhereResult } from './bed-story.ts';
import { BedWatch, type FedPoint, type HeardResult, type Purifier } from './bed-watch.ts';
import { type SampleContradiction, SampleFigures } from './sample-figures.ts';
import { bedPart, SpareCount, type Spares } from './spares.ts';

export interface Beds {
  readonly beds: readonly BedStory[];
  /** Null where the outpost file names no part that is a bed. */
  readonly spares: Spares | null;
  readonly contradictions: readonly SampleContradiction[];
}

export type BedsOutcome = { readonly ok: true; readonly beds: Beds } | NoPass;

/** After so many contents of the buffer behind the beds a twentieth of the old water is left: e^−3, perfectly mixed. */
const BUFFERS_UNTIL_OWN = 3;

/**
 * What is told of the beds of every purifier that has some, in the order of the outpost file.
 * @example const outcome = await bedsOf(port, { view }); if (outcome.ok) outcome.beds.beds[0]?.fedL …
 */
export async function bedsOf(port: BookPort, options: PassOptions = {}): Promise<BedsOutcome> {
  const begun = await beginPass(port, {}, { ...options, estimating: false });
  if (!begun.ok) return begun;
  const { fold, batches } = begun.pass;
  const purifiers = fold.index.outpost.units.filter((unit): unit is Purifier => unit.kind === 'purifier');
  const watched = purifiers
    .filter(({ beds }) => beds !== undefined)
    .map((purifier) => ({ purifier, watch: new BedWatch(purifier) }));
  const part = bedPart(fold.index.outpost);
  const spares = part === null ? null : new SpareCount(part);
  const figures = new SampleFigures();
  const listener: Watcher = {
    onEntry: (_fold, entry) => {
      spares?.hear(entry);
      figures.hear(entry);
    },
  };
  // Entries are posted only when they are asked for: the watchers hear the first of them.
  fold.watcher = together([...watched.map(({ watch }) => watch.watcher), listener]);
  for await (const _ of batches);
  for (const { watch } of watched) for (const { atMs, entry } of watch.changes) spares?.changed(atMs, entry);
  const readable = watched.filter(({ watch }) => watch.openingMs !== null);
  return {
    ok: true,
    beds: {
      beds: readable.map(({ purifier, watch }) => storyOfBeds(fold, purifier, watch)),
      spares: spares?.spares ?? null,
      contradictions: figures.contradictions,
    },
  };
}

function storyOfBeds(fold: Fold, purifier: Purifier, watch: BedWatch): BedStory {
  const { standing, past } = standingsOf(purifier, watch);
  const last = watch.points.at(-1) as FedPoint;
  const fedL = Math.max(0, last.fedL - fedAt(watch.points, standing.sinceMs));
  const places = placesOf(fold, purifier);
  const results = watch.results.filter(({ place }) => places.behind.has(place.toLowerCase()));
  return {
    unit: purifier.id,
    positions: purifier.beds?.positions ?? [],
    standing,
    past,
    fedL,
    fedUL: doubtOf(fold, purifier, { fedL, ofAllL: last.fedL, varianceMg: watch.varianceMg }),
    countedToMs: last.atMs,
    fed: watch.fed,
    results: results.map((result) => resultOf(fold, purifier, { result, watch })),
    elsewhere: watch.results
      .filter(({ place }) => !places.behind.has(place.toLowerCase()) && !places.feed.has(place.toLowerCase()))
      .map(bare),
    feedResults: watch.results.filter(({ place }) => places.feed.has(place.toLowerCase())).map(bare),
    cabin: watch.cabin,
  };
}

function bare({ atMs, entry, parameter, value, unit, below, place }: HeardResult): ElsewhereResult {
  return { atMs, entry, parameter, value, unit, below, place };
}

/** Points that speak of the water behind the beds and of the water before them, in small letters. */
function placesOf(fold: Fold, { id, feeds, takes }: Purifier) {
  const counter = fold.counterOfUnit.get(id);
  const behind = [id, counter?.id, counter?.name, nameOfEnd(feeds)];
  const named = (names: readonly (string | undefined)[]) =>
    new Set(names.flatMap((name) => (name === undefined ? [] : [name.toLowerCase()])));
  return { behind: named(behind), feed: named(takes.map(nameOfEnd)) };
}

function nameOfEnd(end: Purifier['feeds']): string | undefined {
  if ('store' in end) return end.store;
  return 'port' in end ? end.port : undefined;
}

function doubtOf(
  fold: Fold,
  purifier: Purifier,
  of: { readonly fedL: number; readonly ofAllL: number; readonly varianceMg: number },
): number {
  const { fedL, ofAllL, varianceMg } = of;
  const calibration = fold.counterOfUnit.get(purifier.id)?.calibration?.relative ?? 0;
  const own = ofAllL === 0 ? 0 : (varianceMg / (fold.mgPerL * fold.mgPerL)) * (fedL / ofAllL);
  const relative = calibration * calibration + purifier.yieldDoubt * purifier.yieldDoubt;
  return Math.sqrt(own + relative * fedL * fedL);
}

function resultOf(
  fold: Fold,
  purifier: Purifier,
  { result, watch }: { readonly result: HeardResult; readonly watch: BedWatch },
): BedResult {
  const { atMs, entry, sample, parameter, value, unit, below } = result;
  const { points, openingMs, toldAtOpening } = watch;
  const changes = watch.changes.filter((change) => change.atMs <= atMs);
  const { standing } = standingsOf(purifier, { points, openingMs, toldAtOpening, changes });
  const fedL = fedAt(points, atMs) - fedAt(points, standing.sinceMs);
  const buffer =
    'store' in purifier.feeds ? fold.index.stores.get(purifier.feeds.store)?.capacityL : undefined;
  return {
    atMs,
    entry,
    sample,
    parameter,
    value,
    unit,
    below,
    throughputL: standing.leadStartL + fedL,
    sinceChangeL: standing.begun === 'change' ? fedL : null,
    isMixed: standing.begun === 'change' && fedL < BUFFERS_UNTIL_OWN * (buffer ?? 0),
  };
}
