// Saturation and density of water, against python3-iapws and against the equation of the air-conditioning trade.
import psychrolib from 'psychrolib';
import { exp } from '../../src/ground/maths/index.ts';
import { saturationPressurePa, waterDensityKgPerM3 } from '../../src/ground/physics/index.ts';
import { between, type Oracle } from './oracle.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const saturation: Oracle<{ temperatureK: number }> = {
  subject: 'saturation pressure',
  against: 'python3-iapws, region 4',
  answers: { script: 'property_values.py', ask: 'saturationPressurePa' },
  count: 700,
  point: (chance) => ({ temperatureK: between(chance, 273.15, 647.096) }),
  ours: ({ temperatureK }) => saturationPressurePa(temperatureK),
  tolerance: { rel: 1e-12 },
  because: 'one equation, summed in another order, under a square root and to the fourth power',
  control: {
    is: 'the formula of Magnus in place of the equation',
    wrong: ({ temperatureK: t }) => 611.2 * exp((17.62 * (t - 273.15)) / (t - 30.03)),
  },
};

const saturationOfTrade: Oracle<{ temperatureC: number }> = {
  subject: 'saturation pressure, other equation',
  against: 'psychrolib, GetSatVapPres',
  answers: { of: ({ temperatureC }) => psychrolib.GetSatVapPres(temperatureC) },
  count: 700,
  point: (chance) => ({ temperatureC: between(chance, 0.02, 100) }),
  ours: ({ temperatureC }) => saturationPressurePa(temperatureC + 273.15),
  tolerance: { rel: 3e-4 },
  because: 'two equations for one property; that of the trade keeps within 300 millionths',
  control: {
    is: 'a temperature that is a tenth of a degree too high',
    wrong: ({ temperatureC }) => saturationPressurePa(temperatureC + 273.25),
  },
};

const density: Oracle<{ temperatureC: number }> = {
  subject: 'density of water',
  against: 'python3-iapws, liquid water at 0.1 MPa',
  answers: { script: 'property_values.py', ask: 'densityKgPerM3' },
  count: 700,
  point: (chance) => ({ temperatureC: between(chance, 0, 40) }),
  ours: ({ temperatureC }) => waterDensityKgPerM3(temperatureC),
  tolerance: { abs: 0.002 },
  because: 'two equations, each to about 0.001 kg/m3',
  control: {
    is: 'water a tenth of a degree warmer',
    wrong: ({ temperatureC }) =>
      waterDensityKgPerM3(temperatureC < 20 ? temperatureC + 0.1 : temperatureC - 0.1),
  },
};

export const WATER_ORACLES: readonly Oracle[] = [saturation, saturationOfTrade, density];
