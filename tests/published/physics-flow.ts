// What the tables of hoses and of pushing with gas are held against.
import { sin } from '../../src/ground/maths/index.ts';
import {
  cabinChange,
  chokingDropPa,
  colebrookFriction,
  columnPa,
  compressionWork,
  cvOfKv,
  type FlowInLine,
  haalandFriction,
  kvForFlow,
  laminarFriction,
  lineDrop,
  type Push,
  pushedAfter,
  pushFlow,
  pushTime,
  quadraticBlowDownSeconds,
  type Receiver,
  serghidesFriction,
  thickWallHoopPa,
  thinWallStress,
  twoStageWork,
} from '../../src/ground/physics/index.ts';
import { convert } from '../../src/ground/units/index.ts';
import type { Subject } from './subject.ts';

const FOOT_M = 0.3048;
const POUND_KG = 0.45359237;
/** The gravity that White's and Young's books reckon with. */
const OF_WHITE = 9.81;
const OF_YOUNG = 9.8;
const R_AIR_KJ_PER_KG_K = 0.287;

const numbers = (texts: readonly string[]): number[] => texts.map(Number);
const chosen = (values: Readonly<Record<string, number>>, name: string): number => values[name] ?? Number.NaN;
const pipe = (lengthM: number, boreM: number, relativeRoughness: number) => ({
  lengthM,
  boreM,
  roughnessM: relativeRoughness * boreM,
  minorLoss: 0,
  couplingsKv: [],
});

const pipeAtFlow: Subject = (name = '', ...inputs) => {
  const [density = 0, viscosity = 0, flow = 0, length = 0, bore = 0, rough = 0, slope = 0] = numbers(inputs);
  const water = { densityKgPerM3: density, viscosityPaS: density * viscosity };
  const { reynolds, frictionFactor, totalPa } = lineDrop(pipe(length, bore, rough), water, flow);
  const riseM = length * sin((slope * Math.PI) / 180);
  const up = columnPa({ densityKgPerM3: density, riseM, gravityMPerS2: OF_WHITE });
  return chosen(
    {
      reynolds,
      friction: frictionFactor,
      headM: totalPa / (density * OF_WHITE),
      dropPa: totalPa + up,
    },
    name,
  );
};

function byHead(headM: number, line: ReturnType<typeof pipe>, viscosity: number): FlowInLine {
  const water = { densityKgPerM3: 1000, viscosityPaS: 1000 * viscosity };
  const drivingPa = columnPa({ densityKgPerM3: 1000, riseM: headM, gravityMPerS2: OF_WHITE });
  return pushFlow(line, water, drivingPa);
}

const ofFlow = (flow: FlowInLine, name: string): number =>
  chosen(
    {
      velocity: flow.velocityMPerS,
      friction: flow.frictionFactor,
      reynolds: flow.reynolds,
      flow: flow.flowM3PerS,
    },
    name,
  );

const pipeByHead: Subject = (name = '', ...inputs) => {
  const [head = 0, length = 0, bore = 0, viscosity = 0, rough = 0] = numbers(inputs);
  return ofFlow(byHead(head, pipe(length, bore, rough), viscosity), name);
};

const pipeByHeadInFeet: Subject = (name = '', ...inputs) => {
  const [head = 0, length = 0, bore = 0, viscosity = 0, rough = 0] = numbers(inputs);
  const line = pipe(length * FOOT_M, bore * FOOT_M, rough);
  const flow = byHead(head * FOOT_M, line, viscosity * FOOT_M * FOOT_M);
  return name === 'velocity' ? flow.velocityMPerS / FOOT_M : ofFlow(flow, name);
};

const pipeInPounds: Subject = (name = '', ...inputs) => {
  const [flow = 0, bore = 0, length = 0, rough = 0, density = 0, viscosity = 0] = numbers(inputs);
  const water = {
    densityKgPerM3: (density * POUND_KG) / FOOT_M ** 3,
    viscosityPaS: (viscosity * POUND_KG) / FOOT_M,
  };
  const flowM3PerS = flow * FOOT_M ** 3;
  const found = lineDrop(pipe(length * FOOT_M, (bore * FOOT_M) / 12, rough), water, flowM3PerS);
  const poundsPerSquareFoot = convert(found.totalPa, 'Pa', 'psi') * 144;
  return chosen(
    {
      velocity: found.velocityMPerS / FOOT_M,
      reynolds: found.reynolds,
      friction: found.frictionFactor,
      drop: poundsPerSquareFoot,
      // A pound of mass weighs a pound of force.
      head: poundsPerSquareFoot / density,
      power: found.totalPa * flowM3PerS,
    },
    name,
  );
};

const valveKv: Subject = (...inputs) => {
  const [flow = 0, before = 0, after = 0, density = 0] = numbers(inputs);
  return kvForFlow({
    flowM3PerS: flow / 3600,
    dropPa: (before - after) * 1000,
    densityKgPerM3: density,
  });
};

const chokedValveKv: Subject = (...inputs) => {
  const [flow = 0, before = 0, vapour = 0, critical = 0, recovery = 0, density = 0] = numbers(inputs);
  const dropPa = chokingDropPa({
    inletPa: before * 1000,
    vapourPa: vapour * 1000,
    criticalPa: critical * 1000,
    recovery,
  });
  return kvForFlow({ flowM3PerS: flow / 3600, dropPa, densityKgPerM3: density });
};

/** A hole takes the whole velocity head; the falling level is a pressure that grows with what has left. */
const tankWithHole: Subject = (name = '', ...inputs) => {
  const [across = 0, level = 0, hole = 0, gas = 0] = numbers(inputs);
  const area = (Math.PI * across * across) / 4;
  const push = (overPa: number): Push => ({
    line: { lengthM: 0, boreM: hole, roughnessM: 0, minorLoss: 1, couplingsKv: [] },
    water: { densityKgPerM3: 1000, viscosityPaS: 1e-3 },
    source: { kind: 'regulated', pressurePa: 101_325 + overPa + 1000 * OF_YOUNG * level },
    againstPa: 101_325,
    risePaPerM3: (1000 * OF_YOUNG) / area,
  });
  const velocity = (overPa: number): number => {
    const { line, water } = push(overPa);
    return pushFlow(line, water, overPa + 1000 * OF_YOUNG * level).velocityMPerS;
  };
  const time = (overPa: number): number => {
    // Without gas the last drop has no pressure behind it; a billionth of the tank is left out.
    const outcome = pushTime(push(overPa), area * level * (1 - 1e-9));
    return outcome.arrives ? outcome.seconds : Number.NaN;
  };
  switch (name) {
    case 'velocity':
      return velocity(gas);
    case 'velocityRatio':
      return velocity(gas) / velocity(0);
    case 'time':
      return time(gas);
    default:
      return time(gas) / time(0);
  }
};

/** K of Q = K √Δp, in m³/(s Pa^½). */
const ROOT_FLOW = 1e-4 / Math.sqrt(5e4);

const blowDownVolume: Subject = (...inputs) => {
  const [before = 0, gasM3 = 0, outside = 0, seconds = 0] = numbers(inputs);
  return (
    gasM3 +
    pushedAfter(
      {
        // A coupling alone has that law of flow.
        line: {
          lengthM: 0,
          boreM: 0.01,
          roughnessM: 0,
          minorLoss: 0,
          couplingsKv: [ROOT_FLOW * 3600 * Math.sqrt(1e5)],
        },
        water: { densityKgPerM3: 1000, viscosityPaS: 1e-3 },
        source: { kind: 'blow-down', pressurePa: before * 1000, gasM3, exponent: 1 },
        againstPa: outside * 1000,
      },
      seconds,
    )
  );
};

const blowDownTime: Subject = (...inputs) => {
  const [before = 0, gasM3 = 0, outside = 0] = numbers(inputs);
  const gas = { pressurePa: before * 1000, gasM3, againstPa: outside * 1000, flowPerRootPa: ROOT_FLOW };
  return quadraticBlowDownSeconds(gas, (before * gasM3) / outside);
};

const hoseFlow: Subject = (...inputs) => {
  const [over = 0, lengthM = 0, boreM = 0, roughnessM = 0, minorLoss = 0, ...rest] = numbers(inputs);
  const [first = 0, second = 0, densityKgPerM3 = 0, viscosityPaS = 0] = rest;
  const line = { lengthM, boreM, roughnessM, minorLoss, couplingsKv: [first, second] };
  return pushFlow(line, { densityKgPerM3, viscosityPaS }, over).flowM3PerS * 60_000;
};

const compressorWork: Subject = (stages = '', ...inputs) => {
  const [exponent = 0, before = 0, kelvin = 0, after = 0] = numbers(inputs);
  const compression = { inletPa: before * 1000, outletPa: after * 1000, exponent };
  const work = stages === '2' ? twoStageWork(compression) : compressionWork(compression);
  return R_AIR_KJ_PER_KG_K * kelvin * work;
};

const compressorPower: Subject = (...inputs) => {
  const [exponent = 0, before = 0, freeFlow = 0, after = 0] = numbers(inputs);
  const work = compressionWork({ inletPa: before * 1e5, outletPa: after * 1e5, exponent });
  return (before * 1e5 * (freeFlow / 60) * work) / 1000;
};

const cabinDip: Subject = (receiver = '', ...inputs) => {
  const [cabin = 0, tank = 0, waterM3 = 0, cabinM3 = 0] = numbers(inputs);
  const { whilePushingPa } = cabinChange({
    cabinPa: cabin * 1000,
    tankPa: tank * 1000,
    waterM3,
    cabinM3,
    receiver: receiver as Receiver,
    gasFrom: 'cabin',
  });
  return -whilePushingPa / 1000;
};

const wallPressure: Subject = (shape = '', ...inputs) => {
  const [radiusM = 0, wallM = 0, stress = 0] = numbers(inputs);
  const { hoopPa, spherePa } = thinWallStress({ gaugePa: 1, radiusM, wallM });
  return stress / (shape === 'sphere' ? spherePa : hoopPa);
};

export const HOSE_AND_GAS: Readonly<Record<string, Subject>> = {
  frictionLaminar: (reynolds = '') => laminarFriction(Number(reynolds)),
  frictionColebrook: (reynolds = '', rough = '') => colebrookFriction(Number(reynolds), Number(rough)),
  frictionHaaland: (reynolds = '', rough = '') => haalandFriction(Number(reynolds), Number(rough)),
  frictionSerghides: (reynolds = '', rough = '') => serghidesFriction(Number(reynolds), Number(rough)),
  pipeAtFlow,
  pipeByHead,
  pipeByHeadInFeet,
  pipeInPounds,
  valveKv,
  chokedValveKv,
  cvOfKv: (kv = '') => cvOfKv(Number(kv)),
  tankWithHole,
  blowDownVolume,
  blowDownTime,
  hoseFlow,
  compressorWork,
  compressorPower,
  cabinDip,
  hoopStress: (gauge = '', inner = '', wall = '') =>
    thinWallStress({
      gaugePa: Number(gauge),
      radiusM: Number(inner) + Number(wall) / 2,
      wallM: Number(wall),
    }).hoopPa,
  wallPressure,
  thickWallHoop: (gauge = '', inner = '', outer = '') =>
    thickWallHoopPa({ gaugePa: Number(gauge), innerM: Number(inner), outerM: Number(outer) }),
};
