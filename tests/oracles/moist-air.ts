// Moist air against npm psychrolib (without enhancement factor, as it has none) and against a real-gas equation.
import psychrolib from 'psychrolib';
import type { Chance } from '../../src/ground/maths/index.ts';
import {
  cabinAir,
  dewPointC,
  handbookAir,
  humidityRatio,
  humidityRatioOfWetBulb,
  hylandWexlerPa,
  moistEnthalpyJPerKg,
  moistVolumeM3PerKg,
  vapourPressurePa,
  wetBulbC,
} from '../../src/ground/physics/index.ts';
import { between, type Oracle } from './oracle.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

interface Air {
  readonly temperatureC: number;
  readonly share: number;
  readonly pressurePa: number;
  readonly [name: string]: number;
}

/** Over ice where it is cold enough. */
const anyAir = (chance: Chance): Air => ({
  temperatureC: between(chance, -20, 60),
  share: between(chance, 0.02, 1),
  pressurePa: between(chance, 50_000, 110_000),
});

const saturation: Oracle<{ temperatureC: number }> = {
  subject: 'handbook saturation, over ice and water',
  against: 'psychrolib, GetSatVapPres',
  answers: { of: ({ temperatureC }) => psychrolib.GetSatVapPres(temperatureC) },
  count: 300,
  point: (chance) => ({ temperatureC: between(chance, -100, 200) }),
  ours: ({ temperatureC }) => hylandWexlerPa(temperatureC),
  tolerance: { rel: 1e-11 },
  because: 'the same equation, its powers by another way',
  control: {
    is: 'a ten-thousandth of a degree warmer',
    wrong: ({ temperatureC }) => hylandWexlerPa(Math.min(200, temperatureC + 1e-4)),
  },
};

/** Ratio, enthalpy and volume of one state. */
const stateOf = (
  { temperatureC, share, pressurePa }: Air,
  air = handbookAir(pressurePa),
): readonly number[] => {
  const ratio = humidityRatio(air, temperatureC, share);
  return [ratio, moistEnthalpyJPerKg(air, temperatureC, ratio), moistVolumeM3PerKg(air, temperatureC, ratio)];
};

const state: Oracle<Air> = {
  subject: 'moist air: humidity ratio, enthalpy, volume',
  against: 'psychrolib, GetHumRatioFromRelHum and what follows of it',
  answers: {
    of: ({ temperatureC, share, pressurePa }) => {
      const ratio = psychrolib.GetHumRatioFromRelHum(temperatureC, share, pressurePa);
      return [
        ratio,
        psychrolib.GetMoistAirEnthalpy(temperatureC, ratio),
        psychrolib.GetMoistAirVolume(temperatureC, ratio, pressurePa),
      ];
    },
  },
  count: 500,
  // Near 0 °C the enthalpy of dry air vanishes, and with it every relative measure.
  point: (chance) => ({ ...anyAir(chance), temperatureC: between(chance, 2, 60) }),
  ours: (air) => stateOf(air),
  tolerance: { rel: 3e-6 },
  because: 'its constants 0.621945 and 287.042 are rounded to six digits',
  control: {
    is: 'the enhancement factor left on',
    wrong: (air) => stateOf(air, cabinAir({ pressurePa: air.pressurePa })),
  },
};

const dew: Oracle<Air> = {
  subject: 'dew and frost point',
  against: 'psychrolib, GetTDewPointFromRelHum',
  answers: { of: ({ temperatureC, share }) => psychrolib.GetTDewPointFromRelHum(temperatureC, share) },
  count: 300,
  point: (chance) => ({ ...anyAir(chance), share: between(chance, 0.1, 1) }),
  ours: ({ temperatureC, share, pressurePa }) => {
    const air = handbookAir(pressurePa);
    return dewPointC(air, vapourPressurePa(air, temperatureC, share));
  },
  tolerance: { abs: 1e-4 },
  because: 'it stops its search at a step of 0.001 °C',
  control: {
    is: 'half a per cent more vapour',
    wrong: ({ temperatureC, share, pressurePa }) => {
      const air = handbookAir(pressurePa);
      return dewPointC(air, 1.005 * vapourPressurePa(air, temperatureC, share));
    },
  },
};

const wetBulb: Oracle<Air> = {
  subject: 'wet bulb, from humidity',
  against: 'psychrolib, GetTWetBulbFromRelHum',
  answers: {
    of: ({ temperatureC, share, pressurePa }) =>
      psychrolib.GetTWetBulbFromRelHum(temperatureC, share, pressurePa),
  },
  count: 300,
  point: (chance) => ({
    ...anyAir(chance),
    temperatureC: between(chance, 12, 60),
    share: between(chance, 0.3, 1),
  }),
  ours: ({ temperatureC, share, pressurePa }) => {
    const air = handbookAir(pressurePa);
    return wetBulbC(air, temperatureC, humidityRatio(air, temperatureC, share));
  },
  tolerance: { abs: 0.002 },
  because: 'it stops its search within 0.001 °C',
  control: {
    is: 'the pressure of the sea in place of the cabin’s',
    wrong: ({ temperatureC, share }) => {
      const air = handbookAir(101_325);
      return wetBulbC(air, temperatureC, humidityRatio(air, temperatureC, share));
    },
  },
};

const ofWetBulb: Oracle<Air> = {
  subject: 'humidity ratio, from a wet or iced bulb',
  against: 'psychrolib, GetHumRatioFromTWetBulb',
  answers: {
    of: ({ temperatureC, share, pressurePa }) =>
      psychrolib.GetHumRatioFromTWetBulb(temperatureC, bulbOf(temperatureC, share), pressurePa),
  },
  count: 300,
  point: (chance) => ({ ...anyAir(chance), temperatureC: between(chance, -15, 60) }),
  ours: ({ temperatureC, share, pressurePa }) =>
    humidityRatioOfWetBulb(handbookAir(pressurePa), {
      dryC: temperatureC,
      wetC: bulbOf(temperatureC, share),
    }),
  tolerance: { rel: 2e-4 },
  because:
    'its heat capacity of dry air and its ratio of moles are rounded, and differences of them are taken',
  control: {
    is: 'a tenth of a degree between the two',
    wrong: ({ temperatureC, share, pressurePa }) =>
      humidityRatioOfWetBulb(handbookAir(pressurePa), {
        dryC: temperatureC,
        wetC: bulbOf(temperatureC, share) - 0.05,
      }),
  },
};

/** A bulb up to a degree below the air: at any pressure there is such air. */
function bulbOf(temperatureC: number, share: number): number {
  return temperatureC - share;
}

const realGas: Oracle<{ temperatureK: number; pressurePa: number }> = {
  subject: 'saturated air, real gas, enhancement factor on',
  against: 'python3-iapws, humid air after TEOS-10, 25 to 45 °C',
  answers: { script: 'water_values.py', ask: 'saturatedMoles' },
  count: 40,
  point: (chance) => ({
    temperatureK: between(chance, 298.15, 318.15),
    pressurePa: between(chance, 60_000, 105_000),
  }),
  ours: ({ temperatureK, pressurePa }) => molesOf(temperatureK, pressurePa, true),
  tolerance: { rel: 2e-3 },
  because: 'one factor for all temperatures; without it 0.3 to 0.5 % are missing',
  control: {
    is: 'the enhancement factor left out',
    wrong: ({ temperatureK, pressurePa }) => molesOf(temperatureK, pressurePa, false),
  },
};

function molesOf(temperatureK: number, pressurePa: number, enhanced: boolean): number {
  const air = cabinAir({ pressurePa, enhanced });
  return humidityRatio(air, temperatureK - 273.15, 1) / air.gas.vapourRatio;
}

export const MOIST_AIR_ORACLES: readonly Oracle[] = [saturation, state, dew, wetBulb, ofWetBulb, realGas];
