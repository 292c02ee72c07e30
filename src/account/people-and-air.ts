// People and the cabin air as places of water: what goes in and out of them past every meter, and which of them can be read.
import type { FlowEnd, Instrument, NormFlow, Outpost } from '../outpost/index.ts';
import type { Estimator } from './estimator.ts';

export const PEOPLE = 'people';
export const CABIN_AIR = 'cabin air';

/** Vapour in the air of a cabin at 22 °C and half its saturation, kg/m³. @source ground/physics, moist air; see docs/methods/account.md */
const TYPICAL_VAPOUR_KG_PER_M3 = 0.0097;
/** Before the first reading of the humidity it may be off by half. Ours, no source. */
const UNREAD_RELATIVE_U = 0.5;

/** Flows by the outpost's norms: those that the file names, and those that its norms of people imply. */
export function normFlowsOf(outpost: Outpost): readonly NormFlow[] {
  return [...outpost.normFlows, ...vapourOf(outpost), ...foodOf(outpost)];
}

/** What people give off into the air; and the part of it that no condenser ever collects, where the file tells that part. */
function vapourOf(outpost: Outpost): NormFlow[] {
  const { vapourCollectedLPerPersonDay: collectedL, vapourBetweenDaysRelative: betweenDays } = outpost.norms;
  if (!readsAir(outpost) || collectedL === undefined) return [];
  const vapour: NormFlow = {
    id: 'vapour',
    from: { pool: PEOPLE },
    to: { pool: CABIN_AIR },
    litresPerPersonDay: collectedL,
    ...(betweenDays !== undefined && { betweenDaysRelative: betweenDays }),
  };
  const share = outpost.evaporation?.collectedByCondenserShare ?? 1;
  if (share <= 0 || share >= 1) return [vapour];
  const litresPerPersonDay = collectedL / share - collectedL;
  return [
    vapour,
    { id: 'vapour not collected', from: { pool: PEOPLE }, to: { pool: 'outside' }, litresPerPersonDay },
  ];
}

/** Water in food and water that the body makes. */
function foodOf(outpost: Outpost): NormFlow[] {
  const { waterInFoodLPerPersonDay: inFood, metabolicWaterLPerPersonDay: made } = outpost.norms;
  if (!closesPeople(outpost) || inFood === undefined || made === undefined) return [];
  return [
    {
      id: 'water in food and made by the body',
      from: { pool: 'outside' },
      to: { pool: PEOPLE },
      litresPerPersonDay: inFood + made,
    },
  ];
}

/** Pools with a place in the estimator; none of which nothing is ever read, since their doubt would only grow. */
export function poolsOf(estimator: Estimator, outpost: Outpost): ReadonlyMap<string, number> {
  const pools = new Map<string, number>();
  if (readsAir(outpost)) {
    const typicalKg = TYPICAL_VAPOUR_KG_PER_M3 * (outpost.outpost.cabinVolumeM3 ?? 0);
    const uKg = UNREAD_RELATIVE_U * typicalKg;
    pools.set(CABIN_AIR, estimator.add(typicalKg, uKg * uKg));
  }
  // What people carry is reckoned from what is normal: 0 is a normal day.
  if (closesPeople(outpost)) pools.set(PEOPLE, estimator.add(0, 0));
  return pools;
}

/** The air balances where its humidity is read, what comes out of it is counted, and the norm of vapour is told. */
function readsAir({ outpost, norms, instruments }: Outpost): boolean {
  return (
    outpost.cabinVolumeM3 !== undefined &&
    norms.vapourCollectedLPerPersonDay !== undefined &&
    instruments.some(({ measures }) => measures === 'humidity') &&
    instruments.some(({ measures }) => measures === 'temperature') &&
    instruments.some((instrument) => takesFrom(instrument, CABIN_AIR))
  );
}

/** People balance where everything that goes in and out of them is counted or has a norm. */
export function closesPeople(outpost: Outpost): boolean {
  const { norms, normFlows, instruments } = outpost;
  return (
    readsAir(outpost) &&
    norms.waterInFoodLPerPersonDay !== undefined &&
    norms.metabolicWaterLPerPersonDay !== undefined &&
    normFlows.some(({ from }) => poolOf(from) === PEOPLE) &&
    instruments.some((instrument) => givesTo(instrument, PEOPLE))
  );
}

export function takesFrom({ route }: Instrument, pool: string): boolean {
  return route?.from.some((end) => poolOf(end) === pool) === true;
}

export function givesTo({ route }: Instrument, pool: string): boolean {
  return route !== undefined && poolOf(route.to) === pool;
}

function poolOf(end: FlowEnd): string | null {
  return 'pool' in end ? end.pool : null;
}
