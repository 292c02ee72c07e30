// What a property of water costs: a million calls of each, beside python3-iapws in the same run, and what they leave on the heap.
import { seededChance } from '../src/ground/maths/index.ts';
import {
  cabinAir,
  dewPointC,
  humidityRatio,
  latentHeatJPerKg,
  liquidEnthalpyJPerKg,
  saturationPressurePa,
  vapourPressurePa,
  viscosityPaS,
} from '../src/ground/physics/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';
import { measuredInPython, type States } from './properties/yardstick.ts';

const CALLS = 1_000_000;
/** Python is asked so many times; its figure is a call's, so that the ratio is one of calls. */
const PYTHON_CALLS = 5_000;
const ROUNDS = 3;
const HEAP_CALLS = 5_000;
const DENSITY_KG_PER_M3 = 998;
const AIR = cabinAir({ pressurePa: 101_200 });

interface Points {
  readonly temperatures: Float64Array;
  readonly pressures: Float64Array;
}

/** The sum of so many calls. Each property has a loop of its own: in one for all of them no call would ever be inlined. */
type Loop = (points: Points, calls: number) => number;

const loops: Readonly<Record<string, Loop>> = {
  enthalpy: ({ temperatures, pressures }, calls) => {
    let sum = 0;
    for (let call = 0; call < calls; call += 1) {
      const at = call % temperatures.length;
      sum += liquidEnthalpyJPerKg(temperatures[at] as number, pressures[at] as number);
    }
    return sum;
  },
  saturation: ({ temperatures }, calls) => {
    let sum = 0;
    for (let call = 0; call < calls; call += 1)
      sum += saturationPressurePa(temperatures[call % temperatures.length] as number);
    return sum;
  },
  viscosity: ({ temperatures }, calls) => {
    let sum = 0;
    for (let call = 0; call < calls; call += 1)
      sum += viscosityPaS(temperatures[call % temperatures.length] as number, DENSITY_KG_PER_M3);
    return sum;
  },
  'latent heat': ({ temperatures }, calls) => {
    let sum = 0;
    for (let call = 0; call < calls; call += 1)
      sum += latentHeatJPerKg(temperatures[call % temperatures.length] as number);
    return sum;
  },
  'humidity ratio': ({ temperatures }, calls) => {
    let sum = 0;
    for (let call = 0; call < calls; call += 1)
      sum += humidityRatio(AIR, (temperatures[call % temperatures.length] as number) - 273.15, 0.5);
    return sum;
  },
  'dew point': ({ temperatures }, calls) => {
    let sum = 0;
    for (let call = 0; call < calls; call += 1) {
      const temperatureC = (temperatures[call % temperatures.length] as number) - 273.15;
      sum += dewPointC(AIR, vapourPressurePa(AIR, temperatureC, 0.5));
    }
    return sum;
  },
};

/** A number that is handed back by a call which the engine does not inline takes 16 bytes; so many of them, and no object. */
const MOST_BYTES: Readonly<Record<string, number>> = {
  enthalpy: 1,
  saturation: 1,
  viscosity: 48,
  'latent heat': 96,
  'humidity ratio': 48,
  'dew point': 96,
};

export function bench(): Promise<readonly BenchRow[]> {
  const work = statesFor(PYTHON_CALLS);
  const points = {
    temperatures: Float64Array.from(work.states, ([temperatureK]) => temperatureK),
    pressures: Float64Array.from(work.states, ([, pressurePa]) => pressurePa),
  };
  const python = measuredInPython(work);
  if (python === null) console.error('The ratio to python3-iapws was not measured: it was not found.');
  const rows: BenchRow[] = [];
  const sums = { own: 0, python: 0 };
  for (const [name, loop] of Object.entries(loops)) {
    warmUp(loop, points);
    const nsPerCall = timed(loop, points);
    const most = MOST_BYTES[name] ?? 0;
    rows.push(row({ name: `${name}, ${CALLS} calls`, value: nsPerCall, unit: 'ns/call' }));
    rows.push(
      row({ name: `${name}, heap`, value: heapOf(loop, points), unit: 'bytes/call', goal: { most } }),
    );
    const other = python?.[name];
    if (other === undefined) continue;
    mustBeSame(name, { loop, points, values: other.values });
    const reference = `${name} in python3-iapws, ${PYTHON_CALLS} calls`;
    rows.push(row({ name: reference, value: other.nsPerCall, unit: 'ns/call' }));
    const ratio = {
      name: `${name}, a call`,
      value: other.nsPerCall / nsPerCall,
      unit: '×',
      ratioOf: reference,
    };
    rows.push(row(ratio));
    sums.own += nsPerCall;
    sums.python += other.nsPerCall;
  }
  if (sums.python > 0) {
    const all = { name: 'all three, a call', value: sums.python / sums.own, unit: '×' };
    rows.push(row({ ...all, ratioOf: 'the same in python3-iapws', goal: { least: 20 } }));
  }
  return Promise.resolve(rows);
}

/** Liquid, and air, at temperatures of a cabin. */
function statesFor(count: number): States {
  const chance = seededChance({ seed: 2147 });
  const states = Array.from(
    { length: count },
    () => [285 + 45 * chance.uniform(), 1e5 + 4e5 * chance.uniform()] as const,
  );
  return { states, densityKgPerM3: DENSITY_KG_PER_M3 };
}

/** Two programs that do not come to the same figures do not do the same work. */
function mustBeSame(
  name: string,
  {
    loop,
    points,
    values,
  }: { readonly loop: Loop; readonly points: Points; readonly values: readonly number[] },
): void {
  let furthest = 0;
  for (const [at, value] of values.entries()) {
    const one = {
      temperatures: points.temperatures.slice(at, at + 1),
      pressures: points.pressures.slice(at, at + 1),
    };
    furthest = Math.max(furthest, Math.abs(loop(one, 1) / value - 1));
  }
  if (!(furthest < 1e-9)) throw new Error(`${name}: python3-iapws came to other figures, by ${furthest}`);
}

/** Many short runs: only code that is entered often is optimised from its beginning. */
function warmUp(loop: Loop, points: Points): void {
  for (let round = 0; round < 3000; round += 1) loop(points, 300);
}

function timed(loop: Loop, points: Points): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const started = performance.now();
    const sum = loop(points, CALLS);
    const ms = performance.now() - started;
    if (!Number.isFinite(sum)) throw new Error('a property gave no number');
    return (ms * 1e6) / CALLS;
  });
  return quantileOf(times, 0.5);
}

/** So few calls that the heap is not cleared meanwhile, or seldom: the median says what a call leaves on it. */
function heapOf(loop: Loop, points: Points): number {
  const grown = Array.from({ length: 21 }, () => {
    const before = process.memoryUsage().heapUsed;
    loop(points, HEAP_CALLS);
    return (process.memoryUsage().heapUsed - before) / HEAP_CALLS;
  });
  return quantileOf(grown, 0.5);
}
