// Hoses, valves and compressors, against python3-fluids.

import type { Chance } from '../../src/ground/maths/index.ts';
import { exp, log } from '../../src/ground/maths/index.ts';
import {
  chokingDropPa,
  coilCriticalReynolds,
  colebrookFriction,
  compressionWork,
  cvOfKv,
  frictionFactor,
  type HoseLine,
  haalandFriction,
  kvForFlow,
  laminarFriction,
  lineDrop,
  outletTemperatureK,
  pushFlow,
  serghidesFriction,
} from '../../src/ground/physics/index.ts';
import { between, type Oracle } from './oracle.ts';

const SCRIPT = 'flow_values.py';

/** Uniform in the logarithm between two ends. */
const spread = (chance: Chance, low: number, high: number): number =>
  Math.min(high, Math.max(low, exp(between(chance, log(low), log(high)))));

/** Smooth walls one time in ten, else any roughness of Moody's chart. */
const roughness = (chance: Chance): number => (chance.uniform() < 0.1 ? 0 : spread(chance, 1e-6, 0.05));

const turbulent: Oracle<{ reynolds: number; roughness: number }> = {
  subject: 'friction of turbulent flow',
  against: 'python3-fluids, Colebrook',
  answers: { script: SCRIPT, ask: 'turbulentFriction' },
  count: 400,
  point: (chance) => ({ reynolds: spread(chance, 4000, 1e8), roughness: roughness(chance) }),
  ours: ({ reynolds, roughness }) => frictionFactor(reynolds, { relativeRoughness: roughness }).factor,
  tolerance: { rel: 1e-13 },
  because: 'the package stops after two rounds of a faster form, at about 4e-14',
  control: {
    is: "Serghides' explicit form, without Newton's steps",
    wrong: ({ reynolds, roughness }) => serghidesFriction(reynolds, roughness),
  },
};

const explicit: Oracle<{ reynolds: number; roughness: number }> = {
  subject: 'friction by Haaland and Serghides',
  against: 'python3-fluids, Haaland and Serghides_1',
  answers: { script: SCRIPT, ask: 'explicitFriction' },
  count: 200,
  point: (chance) => ({ reynolds: spread(chance, 4000, 1e8), roughness: roughness(chance) }),
  ours: ({ reynolds, roughness }) => [
    haalandFriction(reynolds, roughness),
    serghidesFriction(reynolds, roughness),
  ],
  tolerance: { rel: 1e-11 },
  because: "Serghides' form divides by a small difference of three logarithms",
  control: {
    is: 'each in the place of the other',
    wrong: ({ reynolds, roughness }) => [
      serghidesFriction(reynolds, roughness),
      haalandFriction(reynolds, roughness),
    ],
  },
};

const laminar: Oracle<{ reynolds: number }> = {
  subject: 'friction of laminar flow',
  against: 'python3-fluids, friction_laminar',
  answers: { script: SCRIPT, ask: 'laminarFriction' },
  count: 50,
  point: (chance) => ({ reynolds: spread(chance, 0.01, 2000) }),
  ours: ({ reynolds }) => laminarFriction(reynolds),
  tolerance: { rel: 1e-15 },
  because: 'one division',
  control: {
    is: "Fanning's factor, a quarter",
    wrong: ({ reynolds }) => laminarFriction(reynolds) / 4,
  },
};

/** Between Re 2000 and 4000 no law is known: only the ends of our joint are held, from a hair inside of it. */
const joint: Oracle<{ roughness: number; near: number }> = {
  subject: 'ends of transitional flow',
  against: 'python3-fluids, the laws on both sides',
  answers: { script: SCRIPT, ask: 'jointEnds' },
  count: 50,
  point: (chance) => ({ roughness: roughness(chance), near: spread(chance, 1e-12, 1e-9) }),
  ours: ({ roughness, near }) => {
    const wall = { relativeRoughness: roughness };
    const ends = [frictionFactor(2000 * (1 + near), wall), frictionFactor(4000 * (1 - near), wall)];
    if (ends.some(({ regime }) => regime !== 'transitional')) return Number.NaN;
    return ends.map(({ factor }) => factor);
  },
  tolerance: { rel: 2e-9 },
  because: 'the points lie up to a billionth inside the ends',
  control: {
    is: 'the turbulent law carried down to Re 2000',
    wrong: ({ roughness }) => {
      const factor = colebrookFriction(4000, roughness);
      return [factor, factor];
    },
  },
};

const coil: Oracle<{ reynolds: number; ratio: number; roughness: number }> = {
  subject: 'friction in a coil',
  against: 'python3-fluids, the forms of Schmidt',
  answers: { script: SCRIPT, ask: 'coilFriction' },
  count: 250,
  point: (chance) => {
    const ratio = spread(chance, 0.001, 0.14);
    const critical = coilCriticalReynolds(ratio);
    // Outside the joint: laminar below 2000/2300 of the critical number, turbulent above 4000/2300 of it.
    const reynolds =
      chance.uniform() < 0.5
        ? spread(chance, 100, (critical * 2000) / 2300)
        : spread(chance, (critical * 4000) / 2300, 1.5e5);
    return { reynolds, ratio, roughness: roughness(chance) };
  },
  ours: ({ reynolds, ratio, roughness }) =>
    frictionFactor(reynolds, { relativeRoughness: roughness, coilRatio: ratio }).factor,
  tolerance: { rel: 1e-12 },
  because: 'powers of powers by two libraries',
  control: {
    is: 'a straight hose',
    wrong: ({ reynolds, roughness }) => frictionFactor(reynolds, { relativeRoughness: roughness }).factor,
  },
};

type LinePoint = {
  driving: number;
  length: number;
  bore: number;
  roughness: number;
  minor: number;
  kv: number;
  density: number;
  viscosity: number;
};

const lineOf = ({ length, bore, roughness, minor, kv }: LinePoint): HoseLine => ({
  lengthM: length,
  boreM: bore,
  roughnessM: roughness,
  minorLoss: minor,
  couplingsKv: [kv],
});
const waterOf = ({ density, viscosity }: LinePoint) => ({ densityKgPerM3: density, viscosityPaS: viscosity });

/** A line, and the pressure of a flow that is laminar or turbulent in it: between them the two have different joints. */
function linePoint(chance: Chance): LinePoint {
  const bore = spread(chance, 0.003, 0.03);
  const line = {
    driving: 1,
    length: spread(chance, 0.2, 60),
    bore,
    roughness: bore * roughness(chance),
    minor: between(chance, 0, 12),
    kv: spread(chance, 0.05, 5),
    density: between(chance, 992, 1000),
    viscosity: spread(chance, 5e-4, 1.8e-3),
  };
  const reynolds = chance.uniform() < 0.25 ? spread(chance, 20, 1990) : spread(chance, 4010, 2e5);
  const flow = (reynolds * Math.PI * bore * line.viscosity) / (4 * line.density);
  return { ...line, driving: lineDrop(lineOf(line), waterOf(line), flow).totalPa };
}

const lineFlow: Oracle<LinePoint> = {
  subject: 'flow of a pushed line',
  against: 'python3-fluids, Colebrook and dP_from_K, solved by its brenth',
  answers: { script: SCRIPT, ask: 'lineFlow' },
  count: 300,
  point: linePoint,
  ours: (point) => pushFlow(lineOf(point), waterOf(point), point.driving).flowM3PerS,
  tolerance: { rel: 1e-12 },
  because: 'its friction factor is known to about 4e-14, and its search ends at 1e-15',
  control: {
    is: 'a line without its bends',
    wrong: (point) => pushFlow({ ...lineOf(point), minorLoss: 0 }, waterOf(point), point.driving).flowM3PerS,
  },
};

type ValvePoint = {
  flow: number;
  before: number;
  after: number;
  vapour: number;
  recovery: number;
  density: number;
};

const valve: Oracle<ValvePoint> = {
  subject: 'valves and couplings',
  against: 'python3-fluids, IEC 60534',
  answers: { script: SCRIPT, ask: 'valve' },
  count: 150,
  point: (chance) => {
    const before = between(chance, 80e3, 700e3);
    return {
      flow: spread(chance, 1e-6, 1e-2),
      before,
      after: before * between(chance, 0.2, 0.95),
      vapour: between(chance, 600, 20e3),
      recovery: between(chance, 0.5, 0.95),
      density: between(chance, 960, 1000),
    };
  },
  ours: ({ flow, before, after, vapour, recovery, density }) => {
    const choking = chokingDropPa({ inletPa: before, vapourPa: vapour, recovery });
    const dropPa = Math.min(before - after, choking);
    const kv = kvForFlow({ flowM3PerS: flow, dropPa, densityKgPerM3: density });
    return [kv, cvOfKv(kv), choking];
  },
  tolerance: { rel: 1e-12 },
  because: 'a difference of two pressures, and a choking pressure taken from another',
  control: {
    is: 'a valve that never chokes',
    wrong: ({ flow, before, after, density }) => {
      const kv = kvForFlow({ flowM3PerS: flow, dropPa: before - after, densityKgPerM3: density });
      return [kv, cvOfKv(kv), before - after];
    },
  },
};

const compression: Oracle<{ before: number; after: number; kelvin: number; exponent: number }> = {
  subject: 'compression of gas',
  against: 'python3-fluids, isentropic and isothermal work',
  answers: { script: SCRIPT, ask: 'compression' },
  count: 150,
  point: (chance) => {
    const before = between(chance, 50e3, 110e3);
    return {
      before,
      after: before * between(chance, 1.05, 10),
      kelvin: between(chance, 275, 320),
      exponent: between(chance, 1.05, 1.66),
    };
  },
  ours: ({ before, after, kelvin, exponent }) => {
    const gas = { inletPa: before, outletPa: after, exponent };
    return [compressionWork(gas), compressionWork({ ...gas, exponent: 1 }), outletTemperatureK(gas, kelvin)];
  },
  tolerance: { rel: 1e-12 },
  because: 'the package takes a power less 1, we take it without the difference',
  control: {
    is: 'an exponent a hundredth too low',
    wrong: ({ before, after, kelvin, exponent }) => {
      const gas = { inletPa: before, outletPa: after, exponent: exponent - 0.01 };
      return [
        compressionWork(gas),
        compressionWork({ ...gas, exponent: 1 }),
        outletTemperatureK(gas, kelvin),
      ];
    },
  },
};

export const FLOW_ORACLES: readonly Oracle[] = [
  turbulent,
  explicit,
  laminar,
  joint,
  coil,
  lineFlow,
  valve,
  compression,
];
