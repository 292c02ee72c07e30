// What the outpost file tells of a name of a formula: the rating of a store, the bore of a hose, the set pressure of the push.
import { log } from '../../../ground/maths/index.ts';
import { type HoseRun, hoseCoefficient, kvInSeries } from '../../../ground/physics/index.ts';
import type { OutpostIndex } from '../../index-outpost.ts';
import type { Hose, Store, Unit } from '../../outpost.ts';
import { type CardUnit, spanToSi, toSi } from '../card-units.ts';
import type { Leaf } from '../formula/evaluate.ts';
import { type ChoiceOf, nameLine } from '../names.ts';

/** A value as the file has it, in the unit of its name. */
interface Told {
  readonly value: number | undefined;
  readonly u?: number | undefined;
}

type Told0 = Readonly<Record<string, Told>>;

/** Smooth plastic; an entrance and an exit. Common practice where the file says nothing. */
const SMOOTH_UM = 1.5;
const IN_AND_OUT = 1.5;
/** So wide that it holds nothing back: a line without couplings. */
const NO_COUPLING_KV = 1000;

/**
 * @param name as formulas have it: `to.rating`, `push.set`
 * @param thing id of what was chosen, where the name begins with a choice
 * @returns null where the file does not tell it
 */
export function fileLeaf(
  name: string,
  given: {
    readonly thing: string | null;
    readonly choices: ReadonlyMap<string, ChoiceOf>;
    readonly index: OutpostIndex;
  },
): Leaf | null {
  const { thing, choices, index } = given;
  const line = nameLine(name, choices);
  if (line === null) return null;
  const key = name.slice(name.indexOf('.') + 1);
  const of = thing === null ? null : choices.get(name.split('.')[0] ?? '');
  const told =
    of === null || of === undefined ? outpostTold(index)[name] : thingTold(of, thing ?? '', index)[key];
  return told === undefined ? null : leafOf(told, line.unit);
}

function leafOf({ value, u = 0 }: Told, unit: CardUnit): Leaf | null {
  if (value === undefined || !Number.isFinite(value)) return null;
  return { value: toSi(value, unit), u: spanToSi(u, unit) };
}

function thingTold(of: ChoiceOf, id: string, index: OutpostIndex): Told0 {
  const store = of === 'store' ? index.stores.get(id) : undefined;
  if (store !== undefined) return storeTold(store, index);
  const hose = of === 'hose' ? index.hoses.get(id) : undefined;
  if (hose !== undefined) return hoseTold(hose, index);
  const unit = of === 'unit' ? index.units.get(id) : undefined;
  return unit === undefined ? {} : unitTold(unit);
}

function storeTold(store: Store, index: OutpostIndex): Told0 {
  const gauge = store.gauge === undefined ? undefined : index.instruments.get(store.gauge);
  return {
    capacity: { value: store.capacityL },
    fill: { value: store.fillL ?? store.fullAtL },
    full_at: { value: store.fullAtL },
    remainder: { value: store.usableRemainderL, u: store.usableRemainderDoubtL },
    waste_limit: { value: store.wasteLimitL ?? store.fullAtL },
    rating: { value: store.ratingOverCabinKPa },
    tank_volume: { value: store.gauging?.tankVolumeL, u: store.gauging?.tankVolumeDoubtL },
    gauge_doubt: { value: gauge?.statedDoubt },
  };
}

function hoseTold(hose: Hose, index: OutpostIndex): Told0 {
  const couplings = hose.couplings.map((id) => index.couplings.get(id));
  const ratings = [hose.ratingOverCabinKPa, ...couplings.map((each) => each?.ratingOverCabinKPa)];
  const kvs = couplings.flatMap((each) => each?.kvM3PerH ?? []);
  const meter = index.outpost.instruments.find(({ onHoses }) => onHoses?.includes(hose.id) === true);
  return {
    factor: hoseFactor([]),
    length: { value: hose.lengthM },
    bore: { value: hose.boreMm },
    roughness: { value: hose.roughnessUm ?? SMOOTH_UM },
    loss: { value: hose.minorLossK ?? IN_AND_OUT },
    kv: { value: kvs.length === 0 ? NO_COUPLING_KV : kvInSeries(kvs) },
    content: { value: hose.contentL },
    flow: { value: hose.flowLPerMin, u: (hose.flowLPerMin ?? 0) * (hose.flowDoubtRelative ?? 0) },
    // One part of the line that nobody rated leaves the whole without a rating.
    rating: { value: ratings.some((each) => each === undefined) ? undefined : lowest(ratings) },
    meter_doubt: { value: meter?.random?.absolute },
    meter_calibration: { value: meter?.calibration?.relative },
  };
}

/**
 * Taken over predicted time of the next run through a hose, as a value of a card: half of its band of 95 % counts as its doubt.
 * @param runs timed runs that went as they should, in seconds; none: what is believed of any hose
 * @example hoseFactor([{ predictedSeconds: 950, takenSeconds: 1190 }]).value // 1.25
 */
export function hoseFactor(runs: readonly HoseRun[]): { readonly value: number; readonly u: number } {
  const { factor, nextRun } = hoseCoefficient(runs);
  return { value: factor, u: (factor * log(nextRun.highFactor / factor)) / 2 };
}

function lowest(values: readonly (number | undefined)[]): number {
  return Math.min(...values.filter((value) => value !== undefined));
}

function unitTold(unit: Unit): Told0 {
  if (unit.kind === 'dispenser')
    return {
      stroke: { value: unit.strokeL === undefined ? undefined : 1000 * unit.strokeL },
      hot: { value: unit.hotC },
      heater: { value: unit.heaterW },
      hot_tank: { value: unit.hotTankL },
    };
  if (unit.kind !== 'purifier') return {};
  return {
    bed_life: { value: unit.beds?.nominalL, u: unit.beds?.capacityDoubtL },
    bed_life_doubt: { value: unit.beds?.capacityDoubtL },
  };
}

function outpostTold(index: OutpostIndex): Told0 {
  const { outpost, push, gaugingBottle, hazardFigures, limits, policy } = index.outpost;
  const dose = limits.find(({ quantity, status }) => quantity.endsWith(' dose') && status === 'policy');
  const figure = (key: Exclude<keyof NonNullable<typeof hazardFigures>, 'basis'>): Told => ({
    value: hazardFigures?.[key],
  });
  return {
    'cabin.pressure': { value: outpost.cabinPressureAbsoluteKPa },
    'cabin.warmth': { value: outpost.cabinTemperatureC },
    'cabin.volume': { value: outpost.cabinVolumeM3 },
    'water.density': { value: outpost.waterDensityKgPerM3 },
    'push.set': { value: push?.setOverCabinKPa, u: push?.setDoubtKPa },
    'push.relief': { value: push?.reliefOverCabinKPa },
    'push.leak_pressure': { value: push?.leakCheck.absoluteKPa },
    'push.leak_hold': { value: push?.leakCheck.holdMin },
    'push.leak_drop': { value: push?.leakCheck.dropLimitKPa },
    'push.free_flow': { value: push?.compressorFreeFlowLPerMin },
    'bottle.volume': { value: gaugingBottle?.volumeL, u: gaugingBottle?.volumeDoubtL },
    'bottle.full': { value: gaugingBottle?.fullAbsoluteKPa },
    'bottle.rating': { value: gaugingBottle?.ratingAbsoluteKPa },
    'bottle.wait': { value: gaugingBottle?.waitMin },
    'balance.doubt': { value: index.instruments.get('balance')?.statedDoubt },
    'dose.most': { value: dose?.atMost },
    'reserve.floor': { value: policy.reserve?.floorL },
    'hazard.hot_water': figure('hotWaterC'),
    'hazard.hot_surface': figure('hotSurfaceC'),
    'hazard.oxygen_most': figure('oxygenMostPercent'),
    'hazard.hydrogen_most': figure('hydrogenMostPercent'),
    'hazard.push_most': figure('pushMostOverCabinKPa'),
    'hazard.bottle_most': figure('bottleMostAbsoluteKPa'),
  };
}
