// The network that coverage is simulated on: stores, daily flows, instruments and what is assumed of them, all in kilograms.

/** A store that is read every day. */
export interface ReadStore {
  readonly name: string;
  /** What stands in it at the start. */
  readonly startKg: number;
  readonly uReadingKg: number;
  /** The error that every gauging of this tank repeats, one standard deviation; 0 for none. */
  readonly uRepeatedKg: number;
}

/** What measures a flow: part of its error is new each time, part is the same each time. */
export interface FlowInstrument {
  readonly name: string;
  /** New each time, of the amount. */
  readonly randomRelative: number;
  /** New each time, whatever the amount. */
  readonly randomKg: number;
  readonly calibrationRelative: number;
}

export interface DailyFlow {
  /** Null: outside. */
  readonly from: string | null;
  readonly to: string | null;
  readonly meanKg: number;
  readonly instrument: string;
}

/** Tanks gauged by pressure: 1 % of the volume is new each time, 2.3 % the same each time. */
export const readStores: readonly ReadStore[] = [
  { name: 'reserve', startKg: 380, uReadingKg: 4, uRepeatedKg: 9.2 },
  { name: 'cargo tank', startKg: 190, uReadingKg: 2.1, uRepeatedKg: 4.83 },
  { name: 'containers', startKg: 120, uReadingKg: 0.1, uRepeatedKg: 0 },
  { name: 'potable tank', startKg: 60, uReadingKg: 0.2, uRepeatedKg: 0 },
  { name: 'condensate tank', startKg: 30, uReadingKg: 0.2, uRepeatedKg: 0 },
  { name: 'cabin air', startKg: 3, uReadingKg: 0.15, uRepeatedKg: 0 },
  { name: 'electrolyser feed', startKg: 10, uReadingKg: 0.1, uRepeatedKg: 0 },
];

export const instruments: readonly FlowInstrument[] = [
  { name: 'dispenser', randomRelative: 0.005, randomKg: 0, calibrationRelative: 0.015 },
  { name: 'condensate transfer', randomRelative: 0.007, randomKg: 0, calibrationRelative: 0.015 },
  { name: 'condensing count', randomRelative: 0.01, randomKg: 0, calibrationRelative: 0.02 },
  { name: 'urine', randomRelative: 0.03, randomKg: 0, calibrationRelative: 0.02 },
  { name: 'food', randomRelative: 0.05, randomKg: 0, calibrationRelative: 0.05 },
  { name: 'feed', randomRelative: 0.03, randomKg: 0, calibrationRelative: 0.02 },
  { name: 'current', randomRelative: 0.01, randomKg: 0, calibrationRelative: 0.01 },
  { name: 'weighed transfer', randomRelative: 0, randomKg: 0.14, calibrationRelative: 0 },
  // The lab note says nothing of how the vent is known: ours.
  { name: 'vent', randomRelative: 0.1, randomKg: 0, calibrationRelative: 0 },
];

/** Five people. What they drink and eat leaves them as urine and as vapour; the vapour is condensed or vented. */
export const dailyFlows: readonly DailyFlow[] = [
  { from: 'potable tank', to: 'people', meanKg: 11.5, instrument: 'dispenser' },
  { from: 'potable tank', to: 'cabin air', meanKg: 1, instrument: 'dispenser' },
  { from: null, to: 'people', meanKg: 6, instrument: 'food' },
  { from: 'people', to: null, meanKg: 8.1, instrument: 'urine' },
  { from: 'cabin air', to: 'condensate tank', meanKg: 10.2, instrument: 'condensing count' },
  { from: 'cabin air', to: null, meanKg: 0.2, instrument: 'vent' },
  { from: 'condensate tank', to: 'potable tank', meanKg: 10.2, instrument: 'condensate transfer' },
  { from: 'potable tank', to: 'electrolyser feed', meanKg: 4.7, instrument: 'feed' },
  { from: 'electrolyser feed', to: null, meanKg: 4.7, instrument: 'current' },
  { from: null, to: 'containers', meanKg: 7, instrument: 'weighed transfer' },
  { from: 'containers', to: 'potable tank', meanKg: 7, instrument: 'weighed transfer' },
];

/** A calibration error walks by this share of its own doubt in a day, and by the root of the days in more. */
export const driftPerRootDay = 0.02;

/** Body water of five people about its norm: sd 0.8 kg, and what is left of a difference after a day. The share is ours. */
export const bodyWater = { uKg: 0.8, keptPerDay: 0.7 };

/** Flows differ from day to day by this share; the estimator is told nothing of it. Ours. */
export const dayToDayRelative = 0.1;
