// What the examples of moist air and of condensers start from: an air, a coil, a cabin, a reading.
import {
  type CabinHumidity,
  type Coil,
  type CoilReading,
  cabinAir,
  humidityRatio,
} from '../../src/ground/physics/index.ts';

const air = cabinAir({ pressurePa: 101_325 });
const airIn = { temperatureC: 22, humidityRatio: humidityRatio(air, 22, 0.5) };

const coil: Coil = {
  ...{ air, airIn },
  airFlowKgPerS: 0.04,
  coolantInC: 4,
  coolantFlowKgPerS: 0.08,
  outerWPerK: 90,
  innerWPerK: 160,
};

const cabin: CabinHumidity = {
  dryGasKg: 212,
  humidityRatio: 0.0079,
  gainKgPerS: 7.2 / 86_400,
  coilFlowKgPerS: 0.04,
  coilRatio: 0.0058,
  leakKgPerS: 0,
};

const reading: CoilReading = {
  air,
  temperatureC: { value: 22, u: 0.25 },
  relativeHumidity: { value: 0.5, u: 0.015 },
  coilC: { value: 6, u: 0.3 },
  airFlowKgPerS: { value: 0.04, u: 0.0012 },
  condensateKgPerS: { value: 7.8e-5, u: 1e-6 },
};

export const EXAMPLE_THINGS = { air, airIn, coil, cabin, reading };
