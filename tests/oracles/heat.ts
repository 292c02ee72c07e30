// Heating, mixing, boiling and ice, against python3-iapws and scipy.
import {
  boilingMargin,
  heating,
  heatToWarmJ,
  iceDensityKgPerM3,
  iceEnthalpyJPerKg,
  MELTING_HEAT_J_PER_KG,
  mixedTemperatureC,
  temperatureAfterC,
  thermalGrowth,
  waterEnthalpyAt,
} from '../../src/ground/physics/index.ts';
import { between, type Oracle } from './oracle.ts';

const script = 'heat_values.py';
const J_PER_KG_K = 4186;

const heat: Oracle<{ massKg: number; fromC: number; toC: number; pressurePa: number }> = {
  subject: 'heat to warm water',
  against: 'python3-iapws, region 1',
  answers: { script, ask: 'heatToWarmJ' },
  count: 200,
  point: (chance) => {
    const pressurePa = between(chance, 50e3, 110e3);
    const fromC = between(chance, 0.5, 40);
    return { massKg: between(chance, 0.02, 20), fromC, toC: between(chance, fromC + 5, 80), pressurePa };
  },
  ours: (point) => heatToWarmJ({ ...point, enthalpy: waterEnthalpyAt(point.pressurePa), vesselJPerK: 0 }),
  tolerance: { rel: 1e-11 },
  because: 'one formulation; a difference of two enthalpies',
  control: {
    is: 'one heat capacity for all of the way',
    wrong: ({ massKg, fromC, toC }) => massKg * J_PER_KG_K * (toC - fromC),
  },
};

const mixed: Oracle<{ masses: readonly number[]; celsius: readonly number[]; pressurePa: number }> = {
  subject: 'temperature of mixed water',
  against: 'python3-iapws, temperature of an enthalpy',
  answers: { script, ask: 'mixedTemperatureC' },
  count: 150,
  point: (chance) => ({
    masses: [between(chance, 0.1, 5), between(chance, 0.1, 5), between(chance, 0.1, 5)],
    celsius: [between(chance, 1, 80), between(chance, 1, 80), between(chance, 1, 80)],
    pressurePa: between(chance, 55e3, 110e3),
  }),
  ours: ({ masses, celsius, pressurePa }) =>
    mixedTemperatureC({
      parts: masses.map((massKg, at) => ({ massKg, temperatureC: celsius[at] ?? Number.NaN })),
      enthalpy: waterEnthalpyAt(pressurePa),
      vessel: { heatCapacityJPerK: 0, temperatureC: 20 },
    }),
  tolerance: { abs: 1e-6 },
  because: 'both look for the temperature of an enthalpy, and stop when it is near enough',
  control: {
    is: 'the mean without weights',
    wrong: ({ celsius }) => celsius.reduce((sum, each) => sum + each, 0) / celsius.length,
  },
};

const boiling: Oracle<{ pressurePa: number }> = {
  subject: 'boiling point of a cabin',
  against: 'python3-iapws, region 4',
  answers: { script, ask: 'boilsAtC' },
  count: 150,
  point: (chance) => ({ pressurePa: between(chance, 20e3, 200e3) }),
  ours: ({ pressurePa }) => boilingMargin({ temperatureC: 20, pressurePa }).boilsAtC,
  tolerance: { abs: 1e-9 },
  because: 'one equation; the last digits of a quadratic',
  control: { is: 'sea level everywhere', wrong: () => 99.974 },
};

const growth: Oracle<{ fromC: number; toC: number; pressurePa: number }> = {
  subject: 'growth of warmed water',
  against: 'python3-iapws, region 1',
  answers: { script, ask: 'thermalGrowth' },
  count: 150,
  point: (chance) => ({
    fromC: between(chance, 5, 40),
    toC: between(chance, 45, 80),
    pressurePa: between(chance, 55e3, 300e3),
  }),
  ours: thermalGrowth,
  tolerance: { rel: 1e-10 },
  because: 'one formulation; a small difference of two volumes',
  control: {
    is: 'one coefficient for all of the way',
    wrong: ({ fromC, toC }) => 2.6e-4 * (toC - fromC),
  },
};

const cooling: Oracle<{
  capacityJPerK: number;
  gainedW: number;
  lossWPerK: number;
  fromC: number;
  aroundC: number;
  timeS: number;
}> = {
  subject: 'a vessel that warms or cools',
  against: 'scipy, the differential equation',
  answers: { script, ask: 'temperatureAfterC' },
  count: 100,
  point: (chance) => ({
    capacityJPerK: between(chance, 1e3, 1e5),
    gainedW: between(chance, 0, 500),
    lossWPerK: between(chance, 0.1, 10),
    fromC: between(chance, 1, 95),
    aroundC: between(chance, -30, 40),
    timeS: between(chance, 60, 20_000),
  }),
  ours: temperatureAfterC,
  tolerance: { abs: 1e-8 },
  because: 'its integration is asked for eleven digits and may lose some on a long way',
  control: {
    is: 'the heat that comes in forgotten',
    wrong: (point) => temperatureAfterC({ ...point, gainedW: 0 }),
  },
};

const warming: Oracle<{
  massKg: number;
  fromC: number;
  toC: number;
  pressurePa: number;
  powerW: number;
  lossWPerK: number;
  aroundC: number;
}> = {
  subject: 'time to warm with loss',
  against: 'scipy and python3-iapws, with the heat capacity at each temperature',
  answers: { script, ask: 'timeToWarmS' },
  count: 60,
  point: (chance) => ({
    massKg: between(chance, 0.2, 5),
    fromC: between(chance, 5, 30),
    toC: between(chance, 40, 80),
    pressurePa: between(chance, 55e3, 110e3),
    powerW: between(chance, 400, 1500),
    lossWPerK: between(chance, 0.2, 4),
    aroundC: between(chance, 10, 30),
  }),
  ours: (point) => {
    const enthalpy = waterEnthalpyAt(point.pressurePa);
    return heating({ ...point, enthalpy, vesselJPerK: 0, efficiency: 1 }).timeS ?? Number.NaN;
  },
  tolerance: { rel: 4e-4 },
  because: 'ours takes the mean heat capacity of the way, which changes by half a percent on it',
  control: {
    is: 'without the loss',
    wrong: (point) => {
      const enthalpy = waterEnthalpyAt(point.pressurePa);
      return heatToWarmJ({ ...point, enthalpy, vesselJPerK: 0 }) / point.powerW;
    },
  },
};

const iceDensity: Oracle<{ temperatureC: number }> = {
  subject: 'density of ice',
  against: 'python3-iapws, ice Ih',
  answers: { script, ask: 'iceDensityKgPerM3' },
  count: 100,
  point: (chance) => ({ temperatureC: between(chance, -40, 0) }),
  ours: ({ temperatureC }) => iceDensityKgPerM3(temperatureC),
  tolerance: { abs: 0.01 },
  because: 'ours is a parabola through it',
  control: { is: 'one density at all temperatures', wrong: () => 917 },
};

const thawing: Oracle<{ temperatureC: number }> = {
  subject: 'heat that thaws ice',
  against: 'python3-iapws, ice Ih and liquid water',
  answers: { script, ask: 'heatToThawJPerKg' },
  count: 100,
  point: (chance) => ({ temperatureC: between(chance, -40, 0) }),
  ours: ({ temperatureC }) => MELTING_HEAT_J_PER_KG - iceEnthalpyJPerKg(temperatureC),
  tolerance: { rel: 1e-4 },
  because: 'ours is a parabola through the heat of ice, and the heat of melting that the release prints',
  control: {
    is: 'ice with the heat capacity of water',
    wrong: ({ temperatureC }) => 333_427 - 4186 * temperatureC,
  },
};

export const HEAT_ORACLES: readonly Oracle[] = [
  heat,
  mixed,
  boiling,
  growth,
  cooling,
  warming,
  iceDensity,
  thawing,
];
