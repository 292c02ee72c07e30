// Amounts of one thing that must stand in an order: what a store is filled to is not more than what it takes.
import type { Path } from '../outpost-finding.ts';
import type { Placed, SoundPart } from './sound-part.ts';

type Figures = Readonly<Record<string, unknown>>;

interface Order {
  readonly smaller: string;
  readonly larger: string;
  /** Equal is at fault too. */
  readonly strict?: true;
}

const STORE_ORDERS: readonly Order[] = [
  { smaller: 'fillL', larger: 'capacityL' },
  { smaller: 'fullAtL', larger: 'capacityL' },
  { smaller: 'wasteLimitL', larger: 'capacityL' },
  { smaller: 'usableRemainderL', larger: 'capacityL', strict: true },
  { smaller: 'usableRemainderL', larger: 'fillL', strict: true },
  { smaller: 'usableRemainderL', larger: 'fullAtL', strict: true },
];
const HEATER_ORDERS: readonly Order[] = [
  { smaller: 'alarmBelowC', larger: 'setPointC', strict: true },
  { smaller: 'contentFromC', larger: 'contentToC' },
];
const INSTRUMENT_ORDERS: readonly Order[] = [{ smaller: 'resolution', larger: 'rollsOverAt', strict: true }];
const VISIT_ORDERS: readonly Order[] = [
  { smaller: 'plannedArrivalDay', larger: 'plannedDepartureDay' },
  { smaller: 'knownSinceDay', larger: 'plannedDepartureDay' },
];
const SLIP_ORDERS: readonly Order[] = [
  { smaller: 'fromDays', larger: 'toDays' },
  { smaller: 'medianOfRestDays', larger: 'toDays' },
];
const LIMIT_ORDERS: readonly Order[] = [{ smaller: 'atLeast', larger: 'atMost' }];
const BOTTLE_ORDERS: readonly Order[] = [{ smaller: 'fullAbsoluteKPa', larger: 'ratingAbsoluteKPa' }];
const PUSH_ORDERS: readonly Order[] = [{ smaller: 'setOverCabinKPa', larger: 'reliefOverCabinKPa' }];
const POLICY_ORDERS: readonly Order[] = [
  { smaller: 'survivalLPerPersonDay', larger: 'planningLPerPersonDay' },
];
const ELECTROLYSER_ORDERS: readonly Order[] = [{ smaller: 'leastLPerDay', larger: 'limitLPerDay' }];

function checkOrders(
  part: SoundPart,
  figures: object | undefined,
  orders: readonly Order[],
  path: Path,
): void {
  for (const { smaller, larger, strict } of orders) {
    const low = (figures as Figures | undefined)?.[smaller];
    const high = (figures as Figures | undefined)?.[larger];
    if (
      typeof low !== 'number' ||
      typeof high !== 'number' ||
      low < high ||
      (low === high && strict !== true)
    )
      continue;
    part.add('amount-order', [...path, smaller], { smaller, low, larger, high, strict: strict === true });
  }
}

/** A table leads from depth to volume only if both rise. */
function checkTable(
  part: SoundPart,
  { item, path }: Placed<{ gaugeTable?: { depthMm: number; volumeL: number }[]; capacityL: number }>,
): void {
  const rows = item.gaugeTable ?? [];
  rows.forEach((row, index) => {
    const before = rows[index - 1];
    if (before !== undefined && (row.depthMm <= before.depthMm || row.volumeL <= before.volumeL)) {
      part.add('table-not-rising', [...path, 'gaugeTable', index], {
        ...row,
        depthBeforeMm: before.depthMm,
        volumeBeforeL: before.volumeL,
      });
    }
    if (row.volumeL > item.capacityL) {
      const data = {
        smaller: 'volumeL',
        low: row.volumeL,
        larger: 'capacityL',
        high: item.capacityL,
        strict: false,
      };
      part.add('amount-order', [...path, 'gaugeTable', index, 'volumeL'], data);
    }
  });
}

export function checkOrderOfAmounts(part: SoundPart): void {
  for (const placed of part.each('stores')) {
    checkOrders(part, placed.item, STORE_ORDERS, placed.path);
    checkOrders(part, placed.item.heater, HEATER_ORDERS, [...placed.path, 'heater']);
    checkTable(part, placed);
  }
  for (const { item, path } of part.each('instruments')) checkOrders(part, item, INSTRUMENT_ORDERS, path);
  for (const { item, path } of part.each('units')) checkOrders(part, item, ELECTROLYSER_ORDERS, path);
  for (const { item, path } of part.each('visits')) {
    checkOrders(part, item, VISIT_ORDERS, path);
    checkOrders(part, item.slip, SLIP_ORDERS, [...path, 'slip']);
  }
  for (const { item, path } of part.each('limits')) checkOrders(part, item, LIMIT_ORDERS, path);
  checkOrders(part, part.file.gaugingBottle, BOTTLE_ORDERS, ['gaugingBottle']);
  checkOrders(part, part.file.push, PUSH_ORDERS, ['push']);
  checkOrders(part, part.file.policy, POLICY_ORDERS, ['policy']);
}
