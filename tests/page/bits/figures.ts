// Figures of mathematics and physics as the bits of their doubles, made from seeded inputs: the same on every engine, or not.
import {
  atan,
  cos,
  erfc,
  exp,
  log,
  normalQuantile,
  pow,
  seededChance,
  sin,
  studentQuantile,
  tanh,
} from '../../../src/ground/maths/index.ts';
import {
  cabinAir,
  conductivityOfIons,
  dewPointC,
  foreseenInjection,
  heating,
  latentHeatJPerKg,
  liquidEnthalpyJPerKg,
  pushFlow,
  saturationTemperatureK,
  segmentedCoil,
  vapourPressurePa,
  viscosityPaS,
  waterDensityKgPerM3,
  waterEnthalpyAt,
  wetBulbC,
} from '../../../src/ground/physics/index.ts';

const SEED = 2147;
const ROUNDS = 300;

/** Every figure as `name bits`; a figure that cannot be made for an input says so instead. */
export function figuresAsBits(): readonly string[] {
  const { uniform } = seededChance({ seed: SEED });
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  const said: string[] = [];
  for (let round = 0; round < ROUNDS; round++)
    for (const [name, make] of Object.entries(MAKERS)) said.push(`${name} ${bitsOf(make(between))}`);
  return said;
}

type Between = (low: number, high: number) => number;

const air = cabinAir({ pressurePa: 95_000, oxygenShare: 0.24 });
const line = { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.6, 0.6] };

const MAKERS: Readonly<Record<string, (between: Between) => number>> = {
  exp: (between) => exp(between(-30, 30)),
  log: (between) => log(between(1e-9, 1e9)),
  pow: (between) => pow(between(0, 50), between(-5, 5)),
  sin: (between) => sin(between(-100, 100)),
  cos: (between) => cos(between(-100, 100)),
  tanh: (between) => tanh(between(-4, 4)),
  atan: (between) => atan(between(-50, 50)),
  erfc: (between) => erfc(between(-4, 6)),
  normal: (between) => normalQuantile(between(1e-6, 1 - 1e-6)),
  student: (between) => studentQuantile({ probability: between(0.01, 0.99), degrees: between(1, 40) }),
  density: (between) => waterDensityKgPerM3(between(0, 40)),
  enthalpy: (between) => liquidEnthalpyJPerKg(between(274, 370), 101_325),
  latent: (between) => latentHeatJPerKg(between(274, 400)),
  viscosity: (between) => viscosityPaS(between(274, 370), between(950, 1000)),
  boiling: (between) => saturationTemperatureK(between(1e3, 2e5)),
  dew: (between) => dewPointC(air, vapourPressurePa(air, between(5, 40), between(0.1, 1))),
  wetBulb: (between) => wetBulbC(air, between(20, 40), between(0.002, 0.01)),
  push: (between) =>
    pushFlow(line, { densityKgPerM3: 997, viscosityPaS: 9e-4 }, between(2e3, 2e5)).flowM3PerS,
  coil: (between) =>
    segmentedCoil(
      {
        air,
        airIn: { temperatureC: between(20, 28), humidityRatio: between(0.006, 0.011) },
        airFlowKgPerS: between(0.01, 0.1),
        coolantInC: between(3, 8),
        coolantFlowKgPerS: 0.06,
        outerWPerK: 60,
        innerWPerK: 90,
      },
      { cells: 20 },
    ).condensateKgPerS,
  heating: (between) =>
    heating({
      massKg: 2,
      fromC: 20,
      toC: between(30, 80),
      enthalpy: waterEnthalpyAt(101_325),
      vesselJPerK: 300,
      powerW: 750,
      efficiency: 0.85,
      lossWPerK: 1.5,
      aroundC: 22,
    }).timeS ?? 0,
  gauging: (between) =>
    foreseenInjection({
      tankM3: { value: 0.18, u: 0.0016 },
      bottleM3: { value: 0.01, u: 2e-5 },
      ullageM3: between(0.02, 0.16),
      bottlePa: 4e5,
      tankPa: 101_300,
      gasK: 295,
      u: { bottlePa: 500, tankPa: 500, gasK: 0.5 },
    }).waterM3.u,
  ions: (between) =>
    conductivityOfIons([
      { ion: 'Na', molPerM3: between(0.1, 2) },
      { ion: 'Cl', molPerM3: between(0.1, 2) },
    ]).conductivitySPerM,
};

function bitsOf(value: number): string {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  return view.getBigUint64(0).toString(16).padStart(16, '0');
}
