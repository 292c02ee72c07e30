// Rules that the file's own rules must obey: no way up, no meeting of biocides, a floor that can be kept, safe pressures.
import { parseInstantIso } from '../../ground/units/index.ts';
import type { OutpostFile } from '../shape/file-schema.ts';
import type { Path } from '../yaml-tree.ts';
import type { SoundPart } from './sound-part.ts';

type Grade = OutpostFile['grades'][number];
type Store = OutpostFile['stores'][number];

/** Water gets purer only by treatment or in a unit, and nothing comes back from a terminal grade. */
function checkGrades(part: SoundPart): void {
  const grades = new Map(part.each('grades').map(({ item }) => [item.id, item]));
  for (const { item, path } of part.each('grades')) {
    item.mayFlowInto.forEach((id, index) => {
      const into = grades.get(id);
      if (into !== undefined) checkFlow(part, item, into, [...path, 'mayFlowInto', index]);
    });
  }
}

function checkFlow(part: SoundPart, from: Grade, into: Grade, path: Path): void {
  const leavesTerminal = from.terminal && into.id !== from.id;
  if (leavesTerminal || into.rank < from.rank)
    part.add('grade-flow-uphill', path, { from: from.id, into: into.id, terminal: leavesTerminal });
  const biocides = part.each('biocides').map(({ item }) => item);
  const never = (one: string, other: string) =>
    biocides.some(({ id, neverMeets }) => id === one && neverMeets.includes(other));
  if (never(from.biocide, into.biocide) || never(into.biocide, from.biocide)) {
    part.add('biocides-flow-together', path, {
      from: from.id,
      into: into.id,
      biocides: [from.biocide, into.biocide],
    });
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
