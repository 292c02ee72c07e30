// Liquid water, its boiling temperature, latent heat, viscosity and ice, against python3-iapws.
import { exp } from '../../src/ground/maths/index.ts';
import {
  ambientViscosityPaS,
  iceVapourPressurePa,
  latentHeatJPerKg,
  liquidEnthalpyJPerKg,
  liquidEntropyJPerKgK,
  liquidHeatCapacityJPerKgK,
  liquidSoundMPerS,
  liquidVolumeM3PerKg,
  saturationPressurePa,
  saturationTemperatureK,
  viscosityPaS,
} from '../../src/ground/physics/index.ts';
import { between, type Oracle } from './oracle.ts';

const script = 'water_values.py';

interface State {
  readonly temperatureK: number;
  readonly pressurePa: number;
  readonly [name: string]: number;
}

const propertiesOf = (temperatureK: number, pressurePa: number): readonly number[] =>
  [
    liquidVolumeM3PerKg,
    liquidEnthalpyJPerKg,
    liquidEntropyJPerKgK,
    liquidHeatCapacityJPerKgK,
    liquidSoundMPerS,
  ].map((property) => property(temperatureK, pressurePa));

const region1: Oracle<State> = {
  subject: 'liquid water: volume, enthalpy, entropy, heat capacity, sound',
  against: 'python3-iapws, region 1',
  answers: { script, ask: 'region1' },
  count: 500,
  point: (chance) => {
    const temperatureK = between(chance, 275, 623.15);
    return { temperatureK, pressurePa: between(chance, saturationPressurePa(temperatureK), 100e6) };
  },
  ours: ({ temperatureK, pressurePa }) => propertiesOf(temperatureK, pressurePa),
  tolerance: { rel: 1e-11 },
  because: 'the same 34 terms summed in another order, some of which cancel',
  control: {
    is: 'water a hundredth of a degree colder',
    wrong: ({ temperatureK, pressurePa }) => propertiesOf(temperatureK - 0.01, pressurePa),
  },
};

const boiling: Oracle<{ pressurePa: number }> = {
  subject: 'boiling temperature',
  against: 'python3-iapws, region 4',
  answers: { script, ask: 'boilingTemperatureK' },
  count: 300,
  point: (chance) => ({ pressurePa: exp(between(chance, 6.42, 16.9)) }),
  ours: ({ pressurePa }) => saturationTemperatureK(pressurePa),
  tolerance: { rel: 1e-12 },
  because: 'one equation, under two square roots',
  control: {
    is: 'a tenth of a per cent more pressure',
    wrong: ({ pressurePa }) => saturationTemperatureK(pressurePa * 1.001),
  },
};

const viscosity: Oracle<{ temperatureK: number; densityKgPerM3: number }> = {
  subject: 'viscosity',
  against: 'python3-iapws, formulation 2008 without its critical term',
  answers: { script, ask: 'viscosityPaS' },
  count: 400,
  point: (chance) => ({
    temperatureK: between(chance, 273.15, 1173.15),
    densityKgPerM3: between(chance, 0, 1200),
  }),
  ours: ({ temperatureK, densityKgPerM3 }) => viscosityPaS(temperatureK, densityKgPerM3),
  tolerance: { rel: 1e-11 },
  because: 'the same terms summed in another order inside an exponential',
  control: {
    is: 'one part in ten thousand more density',
    wrong: ({ temperatureK, densityKgPerM3 }) => viscosityPaS(temperatureK, densityKgPerM3 * 0.9999),
  },
};

const ambientViscosity: Oracle<{ temperatureK: number }> = {
  subject: 'viscosity at 0.1 MPa',
  against: 'python3-iapws, liquid water at 0.1 MPa',
  answers: { script, ask: 'ambientViscosityPaS' },
  count: 200,
  point: (chance) => ({ temperatureK: between(chance, 253.15, 383.15) }),
  ours: ({ temperatureK }) => ambientViscosityPaS(temperatureK),
  tolerance: { rel: 1e-12 },
  because: 'the same four powers',
  control: {
    is: 'a thousandth of a degree',
    wrong: ({ temperatureK }) =>
      ambientViscosityPaS(temperatureK < 300 ? temperatureK + 1e-3 : temperatureK - 1e-3),
  },
};

const latent: Oracle<{ temperatureK: number }> = {
  subject: 'latent heat',
  against: 'python3-iapws, equation of state of 1995',
  answers: { script, ask: 'latentHeatJPerKg' },
  count: 60,
  point: (chance) => ({ temperatureK: between(chance, 273.2, 600) }),
  ours: ({ temperatureK }) => latentHeatJPerKg(temperatureK),
  tolerance: { rel: 6e-4 },
  because: 'auxiliary equations against the equation of state itself',
  control: {
    is: 'water a degree warmer',
    wrong: ({ temperatureK }) => latentHeatJPerKg(temperatureK + 1),
  },
};

const ice: Oracle<{ temperatureK: number }> = {
  subject: 'vapour over ice',
  against: 'python3-iapws, sublimation line',
  answers: { script, ask: 'iceVapourPressurePa' },
  count: 200,
  point: (chance) => ({ temperatureK: between(chance, 223.15, 273.16) }),
  ours: ({ temperatureK }) => iceVapourPressurePa(temperatureK),
  tolerance: { rel: 1e-12 },
  because: 'the same three powers inside an exponential',
  control: {
    is: 'a thousandth of a degree warmer',
    wrong: ({ temperatureK }) => iceVapourPressurePa(Math.min(273.16, temperatureK + 1e-3)),
  },
};

export const LIQUID_ORACLES: readonly Oracle[] = [region1, boiling, viscosity, ambientViscosity, latent, ice];
