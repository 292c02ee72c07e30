// The invented outpost Holm: small, with one of every way that water can take, and a density that makes 1 L weigh 1 kg.

/** Whole milligrams in a litre of Holm's water. */
export const MG_PER_L = 1_000_000;

/** 00:00 of Day 1 of Holm. */
export const HOLM_DAY_ONE_MS = Date.UTC(2147, 0, 1);

export const HOLM = `format: waterwright outpost
version: 1
outpost:
  name: Holm
  kind: hut under a dome
  gravity: partial
  clockOffset: '+00:00'
  dayOne: 2147-01-01
  dayLineAt: '21:00'
  people: 2
  cabinVolumeM3: 60
  cabinPressureAbsoluteKPa: 101.3
  cabinTemperatureC: 20
  waterDensityKgPerM3: 1000
  waterDensityAtC: 20
places:
  - { id: hut }
  - { id: yard }
grades:
  - { id: drinking, letter: D, name: drinking water, rank: 1, biocide: silver, mayFlowInto: [drinking, technical, waste] }
  - { id: technical, letter: T, name: technical water, rank: 2, mayFlowInto: [technical, waste] }
  - { id: iodine, letter: I, name: iodine water, rank: 3, biocide: iodine, mayFlowInto: [iodine, waste], emergencyOnly: true }
  - { id: raw, letter: K, name: raw condensate, rank: 4, mayFlowInto: [raw, waste], mayEnterUnits: [purifier] }
  - { id: waste, letter: W, name: waste, rank: 5, mayFlowInto: [waste], terminal: true }
biocides:
  - { id: silver, neverMeets: [iodine] }
  - { id: iodine }
stores:
  - { id: R1, kind: tank, place: yard, capacityL: 180, usableRemainderL: 4, usableRemainderDoubtL: 0.5, holds: drinking, reserve: true,
      gaugedBy: gas injection, gauge: gas-injection, ratingOverCabinKPa: 100,
      gauging: { tankVolumeL: 180, tankVolumeDoubtL: 1.6, shellDoubtL: 0.9, bladderSeatingDoubtL: 1.2, injectionDoubtL: 0.5 } }
  - { ids: [C-01, C-02, C-03, C-04], kind: container, place: hut, capacityL: 22, fillL: 20.5, usableRemainderL: 0.6,
      usableRemainderDoubtL: 0.2, gaugedBy: weighing, gauge: balance, ratingOverCabinKPa: 70 }
  - { ids: [W-01, W-02], kind: wasteContainer, place: yard, capacityL: 22, fullAtL: 20, fullAtDoubtL: 0.3, usableRemainderL: 0.6,
      usableRemainderDoubtL: 0.2, holds: waste, gaugedBy: declared full, ratingOverCabinKPa: 70 }
  - { id: KB, kind: buffer, place: hut, capacityL: 12, usableRemainderL: 0.5, usableRemainderDoubtL: 0.2, holds: raw,
      gaugedBy: sight glass, ratingOverCabinKPa: 60 }
  - { id: PB, kind: buffer, place: hut, capacityL: 10, usableRemainderL: 0.3, usableRemainderDoubtL: 0.1, holds: drinking,
      gaugedBy: sight glass, ratingOverCabinKPa: 60 }
ports:
  - { id: tap feed, takes: drinking }
  - { id: flush feed, takes: technical }
  - { id: waste port, takes: waste, kinds: [wasteContainer] }
instruments:
  - { id: balance, measures: content, unit: L, random: { absolute: 0.17 }, calibration: { absolute: 0.1 }, statedDoubt: 0.2,
      reading: content, logMethod: balance }
  - { id: gas-injection, measures: content, unit: L, doubtFromStore: true, statedDoubt: 1.6, reading: content }
  - { id: condensate, measures: flow, unit: L, random: { absolute: 0.05 }, calibration: { relative: 0.01 }, rollsOverAt: 1000,
      reading: runningTotal, meters: condenser, logField: condensate }
  - { id: product, measures: flow, unit: L, random: { relativePerDay: 0.006 }, calibration: { relative: 0.005 },
      reading: sinceLine, meters: purifier, logField: product }
  - { id: strokes, measures: flow, unit: strokes, litresPerCount: 0.025, random: { absolute: 1 }, calibration: { relative: 0.015 },
      reading: sinceLine, meters: tap, logField: strokes }
  - { id: flushes, measures: flow, unit: flushes, litresPerCount: 0.05, random: { relativePerDay: 0.02 },
      calibration: { relative: 0.05 }, reading: sinceLine, meters: flush, logField: flushes }
  - { id: fill-meter, measures: flow, unit: L, random: { absolute: 0.12 }, calibration: { relative: 0.01 }, reading: amount,
      logMethod: flow meter, onHoses: [H-1] }
  - { id: silver-kit, measures: quality, quantity: silver, unit: mg/L, random: { absolute: 0.01 }, reading: spot }
  - { id: plate-kit, measures: quality, quantity: plate count, unit: CFU/mL, random: { absolute: 1 }, reading: spot }
units:
  - { id: condenser, kind: condenser, place: hut, feeds: { store: KB }, limitLPerDay: 16 }
  - { id: purifier, kind: purifier, place: hut, takes: [{ store: KB, downToRemainder: true }], feeds: { store: PB },
      yieldShare: 0.96, yieldDoubt: 0.01, rejectTo: { port: waste port }, limitLPerDay: 20 }
  - { id: tap, kind: dispenser, place: hut, takes: [{ store: PB, downToRemainder: true }, { port: tap feed }, { store: R1, onlyByEntry: true }],
      feeds: { pool: people }, use: drink, strokeL: 0.025 }
  - { id: flush, kind: flush, place: hut, takes: [{ port: flush feed }], feeds: { port: waste port }, flushL: 0.05 }
norms:
  people: 2
  vapourCollectedLPerPersonDay: 1.7
  tapLPerPersonDay: 2.7
  flushesPerPersonDay: 6
normFlows:
  - { id: urine, from: { pool: people }, to: { port: waste port }, litresPerPersonDay: 1.5, betweenDaysRelative: 0.05 }
hoses:
  - { id: H-1, what: hose, lengthM: 6, boreMm: 8, couplings: [QD-1], ratingOverCabinKPa: 400 }
couplings:
  - { id: QD-1, kvM3PerH: 0.16, ratingOverCabinKPa: 300 }
people:
  - { office: chief, at: aboard }
  - { office: keeper, at: aboard }
  - { office: second, at: aboard }
  - { office: medic, at: aboard, releases: true }
secondPersonActs: [relabel, waiver, treatment]
limits:
  - { id: silver least, quantity: silver, unit: mg/L, atLeast: 0.05, status: policy, basis: outpost policy }
  - { id: silver most, quantity: silver, unit: mg/L, atMost: 0.4, status: policy, basis: outpost policy }
  - { id: plate count most, quantity: plate count, unit: CFU/mL, atMost: 50, status: policy, basis: outpost policy }
  - { id: sample valid, quantity: sample age, unit: days, atMost: 90, status: policy, basis: outpost policy }
treatments:
  - { id: technical to drinking, allowed: true, from: technical, to: drinking, sources: technical water of the hut, neverHeld: [iodine, raw, waste],
      thenHold: true, sampleAfterDays: 0, releasedBy: medic, minutesPerContainer: 30, secondPerson: true }
policy:
  reserve: { floorL: 100, counts: [R1], mayBeDrawnBy: chief }
  planningLPerPersonDay: 2.7
  survivalLPerPersonDay: 2
  deliveredWater: { usableOnLoadersCertificate: true, releasedForReserveOnlyByOwnSample: true }
`;
