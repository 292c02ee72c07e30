// Rules that the file's own rules must obey: no way up, no meeting of biocides, a floor that can be kept, safe pressures.
import { parseInstantIso } from '../../ground/units/index.ts';
import type { Path } from '../outpost-finding.ts';
import type { OutpostFile } from '../shape/file-schema.ts';
import type { SoundPart } from './sound-part.ts';

type Grade = OutpostFile['grades'][number];
type Store = OutpostFile['stores'][number];

type Meet = (one: Grade, other: Grade) => boolean;

/** Biocides that never meet, whichever of the two says so. */
function whoNeverMeets(part: SoundPart): Meet {
  const pairs = new Set<string>();
  for (const { item } of part.each('biocides')) {
    for (const other of item.neverMeets) pairs.add(`${item.id}\n${other}`).add(`${other}\n${item.id}`);
  }
  return (one, other) => pairs.has(`${one.biocide}\n${other.biocide}`);
}

/** Water gets purer only by treatment or in a unit, and nothing comes back from a terminal grade. */
function checkGrades(part: SoundPart): void {
  const grades = new Map(part.each('grades').map(({ item }) => [item.id, item]));
  const neverMeet = whoNeverMeets(part);
  for (const { item: from, path } of part.each('grades')) {
    for (const [index, id] of from.mayFlowInto.entries()) {
      const into = grades.get(id);
      if (into === undefined) continue;
      const at = [...path, 'mayFlowInto', index];
      const terminal = from.terminal && into.id !== from.id;
      if (terminal || into.rank < from.rank)
        part.add('grade-flow-uphill', at, { from: from.id, into: id, terminal });
      if (!neverMeet(from, into)) continue;
      part.add('biocides-flow-together', at, {
        from: from.id,
        into: id,
        biocides: [from.biocide, into.biocide],
      });
    }
  }
}

function checkReserve(part: SoundPart): void {
  const reserve = part.file.policy?.reserve;
  if (reserve === undefined) return;
  const stores = part
    .each('stores')
    .flatMap(({ item, path }) => idsOf(item).map((id) => ({ item, path, id })));
  const counted = stores.filter(({ id }) => reserve.counts.includes(id));
  for (const { item, path, id } of stores) {
    if (item.reserve && !reserve.counts.includes(id))
      part.add('reserve-not-counted', [...path, 'reserve'], { store: id });
  }
  for (const { item, id } of counted) {
    const path = ['policy', 'reserve', 'counts', reserve.counts.indexOf(id)];
    if (!item.reserve) part.add('reserve-not-marked', path, { store: id });
  }
  // An id that names nothing, or a store with a fault of its own, is reported elsewhere; the sum would only mislead.
  if (counted.length < reserve.counts.length) return;
  const { floorL, counts } = reserve;
  const usableL = counted.reduce(
    (sum, { item }) => sum + (item.fillL ?? item.capacityL) - item.usableRemainderL,
    0,
  );
  if (floorL > usableL)
    part.add('floor-over-reserve', ['policy', 'reserve', 'floorL'], { floorL, usableL, counts });
}

const idsOf = ({ id, ids }: Store): readonly string[] => (id === undefined ? (ids ?? []) : [id]);

function checkLimits(part: SoundPart): void {
  for (const { item, path } of part.each('limits')) {
    if (item.atLeast === undefined && item.atMost === undefined)
      part.add('limit-without-figure', path, { limit: item.id });
    if (item.basis === 'memory' && item.status !== 'off')
      part.add('limit-from-memory-on', [...path, 'status'], { limit: item.id });
  }
}

/** What the push can reach must bear the pressure at which its relief opens. */
function checkRatings(part: SoundPart): void {
  const reliefKPa = part.file.push?.reliefOverCabinKPa;
  if (reliefKPa === undefined) return;
  const bear = (what: string, id: string, ratingKPa: number, path: Path) => {
    if (ratingKPa < reliefKPa)
      part.add('rating-order', [...path, 'ratingOverCabinKPa'], { what, id, ratingKPa, reliefKPa });
  };
  for (const { item, path } of part.each('stores')) {
    const id = item.id ?? item.ids?.join(', ') ?? '';
    if (item.kind === 'container' || item.kind === 'vehicleTank')
      bear('store', id, item.ratingOverCabinKPa, path);
  }
  for (const { item, path } of part.each('hoses')) bear('hose', item.id, item.ratingOverCabinKPa, path);
  for (const { item, path } of part.each('couplings'))
    bear('coupling', item.id, item.ratingOverCabinKPa, path);
}

function checkDate(part: SoundPart, date: string | undefined, path: Path): void {
  if (date !== undefined && !parseInstantIso(`${date}T00:00Z`).ok)
    part.add('date-not-real', path, { received: date });
}

export function checkRulesOfWater(part: SoundPart): void {
  checkGrades(part);
  checkReserve(part);
  checkLimits(part);
  checkRatings(part);
  checkDate(part, part.file.outpost?.dayOne, ['outpost', 'dayOne']);
  for (const { item, path } of part.each('instruments'))
    checkDate(part, item.calibratedOn, [...path, 'calibratedOn']);
}
