// The smallest outpost that has one of everything that a check looks at; tests change one thing in it.

/** Invented; a hut by the sea with one tank, one can and one waste can. */
export const SMALL_OUTPOST = `format: waterwright outpost
version: 1
outpost:
  name: Skerry
  kind: hut
  gravity: full
  clockOffset: '+00:00'
  dayOne: 2147-03-01
  dayLineAt: '21:00'
  people: 2
  cabinVolumeM3: 60
  cabinPressureAbsoluteKPa: 101.3
  cabinTemperatureC: 20
  waterDensityKgPerM3: 998.2
  waterDensityAtC: 20
places:
  - { id: hut }
grades:
  - { id: drinking, letter: D, name: drinking, rank: 1, biocide: silver, mayFlowInto: [drinking, waste] }
  - { id: iodine, letter: I, name: iodine water, rank: 2, biocide: iodine, mayFlowInto: [iodine, waste] }
  - { id: waste, letter: W, name: waste, rank: 3, mayFlowInto: [waste], terminal: true }
biocides:
  - { id: silver, neverMeets: [iodine] }
  - { id: iodine }
stores:
  - id: R1
    kind: tank
    place: hut
    capacityL: 100
    fillL: 90
    usableRemainderL: 2
    usableRemainderDoubtL: 0.5
    reserve: true
    gaugedBy: dip stick
    gauge: stick
    gaugeTable: [{ depthMm: 0, volumeL: 0 }, { depthMm: 100, volumeL: 40 }, { depthMm: 200, volumeL: 100 }]
    ratingOverCabinKPa: 100
  - id: C-01
    kind: container
    place: hut
    capacityL: 22
    fillL: 20.5
    usableRemainderL: 0.6
    usableRemainderDoubtL: 0.2
    gaugedBy: weighing
    gauge: balance
    ratingOverCabinKPa: 70
  - id: W-01
    kind: wasteContainer
    place: hut
    capacityL: 22
    fullAtL: 20.3
    fullAtDoubtL: 0.3
    usableRemainderL: 0.6
    usableRemainderDoubtL: 0.2
    gaugedBy: declared full
    ratingOverCabinKPa: 70
ports:
  - { id: tap, takes: drinking }
instruments:
  - { id: stick, measures: content, unit: mm, random: { absolute: 2 }, reading: content }
  - { id: balance, measures: content, unit: L, random: { absolute: 0.17 }, calibration: { absolute: 0.1 }, statedDoubt: 0.2, reading: content }
  - { id: strokes, measures: flow, unit: strokes, litresPerCount: 0.025, random: { absolute: 1 }, reading: sinceLine, logField: strokes, meters: tap pump }
  - { id: gauge, measures: pressure, unit: kPa, pressureIs: absolute, random: { absolute: 0.1 }, reading: spot }
units:
  - { id: tap pump, kind: dispenser, place: hut, takes: [{ port: tap }], feeds: { pool: people }, strokeL: 0.025 }
norms:
  people: 2
  tapLPerPersonDay: 3
  tapParts: { drinkAndFoodLPerPersonDay: 2.5, hygieneLPerPersonDay: 0.5 }
hoses:
  - { id: H-1, what: hose, lengthM: 3, boreMm: 8, couplings: [QD-1], ratingOverCabinKPa: 200 }
couplings:
  - { id: QD-1, kvM3PerH: 0.2, ratingOverCabinKPa: 200 }
push:
  gas: cabin air
  setOverCabinKPa: 40
  setDoubtKPa: 0.5
  reliefOverCabinKPa: 60
  leakCheck: { absoluteKPa: 150, holdMin: 10, dropLimitKPa: 1 }
people:
  - { office: keeper, at: aboard }
visits:
  - { vehicle: Skiff, kind: freighter, knownSinceDay: 1, plannedArrivalDay: 5 }
limits:
  - { id: silver most, quantity: silver, unit: mg/L, atMost: 0.4, status: policy, basis: outpost policy }
policy:
  reserve: { floorL: 60, counts: [R1], basis: { days: 10, people: 2, litresPerPersonDay: 3 }, mayBeDrawnBy: keeper }
  planningLPerPersonDay: 3
  survivalLPerPersonDay: 2
`;

/** One change, which must find what it changes: a sample that changes nothing would prove nothing. */
export function changed(from: string, to: string, text = SMALL_OUTPOST): string {
  if (!text.includes(from)) throw new Error(`the small outpost has no "${from}"`);
  return text.replace(from, () => to);
}
