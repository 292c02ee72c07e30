// What a prediction of a transfer costs, beside the same in python3-fluids; and a push whose pressure falls on the way.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type Chance, seededChance } from '../src/ground/maths/index.ts';
import { blowDown, type HoseLine, regulatedPush } from '../src/ground/physics/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';

const TRANSFERS = 10_000;
const ROUNDS = 25;
const BLOW_DOWNS = 200;
const SEED = 2147;
const DEBIAN_PYTHON = '/usr/bin/python3';

interface Transfer {
  readonly line: HoseLine;
  readonly water: { readonly densityKgPerM3: number; readonly viscosityPaS: number };
  readonly drivingPa: number;
  readonly volumeM3: number;
}

export function bench(): Promise<readonly BenchRow[]> {
  const chance = seededChance({ seed: SEED });
  const transfers = Array.from({ length: TRANSFERS }, () => anyTransfer(chance)).filter(isKnown);
  if (transfers.length < TRANSFERS / 2) throw new Error('too few transfers lie outside transitional flow');
  const repeated = Array.from({ length: TRANSFERS }, (_, at) => transfers[at % transfers.length] as Transfer);
  const { nsEach, seconds } = timed(repeated);
  const name = `a prediction of a transfer, of ${TRANSFERS}, p50 of ${ROUNDS} rounds`;
  return Promise.resolve([
    row({ name, value: nsEach / 1e6, unit: 'ms' }),
    ...outside(repeated, { nsEach, seconds, name }),
    pushThatFades(repeated),
  ]);
}

/** Hoses of an outpost: wide and narrow, short and long, pushed by a tenth of an atmosphere to one. */
function anyTransfer(chance: Chance): Transfer {
  const between = (low: number, high: number): number => low + (high - low) * chance.uniform();
  return {
    line: {
      lengthM: between(1, 20),
      boreM: between(0.005, 0.016),
      roughnessM: between(1e-6, 2e-5),
      minorLoss: between(1, 12),
      couplingsKv: [between(0.15, 2)],
    },
    water: { densityKgPerM3: between(995, 1000), viscosityPaS: between(8e-4, 1.5e-3) },
    drivingPa: between(1e4, 1e5),
    volumeM3: between(0.005, 0.2),
  };
}

/** Between laminar and turbulent flow the two programs have other joints, and other figures. */
function isKnown(transfer: Transfer): boolean {
  return regulatedPush(transfer).regime !== 'transitional';
}

function timed(transfers: readonly Transfer[]): { nsEach: number; seconds: readonly number[] } {
  const times: number[] = [];
  let seconds: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const started = performance.now();
    seconds = transfers.map((transfer) => regulatedPush(transfer).seconds);
    times.push(((performance.now() - started) * 1e6) / transfers.length);
  }
  return { nsEach: quantileOf(times, 0.5), seconds };
}

/** Nothing but a line on the side where the package is not: what was not measured has no figure. */
function outside(
  transfers: readonly Transfer[],
  own: { readonly nsEach: number; readonly seconds: readonly number[]; readonly name: string },
): BenchRow[] {
  const python = existsSync(DEBIAN_PYTHON) ? DEBIAN_PYTHON : 'python3';
  const input = transfers.map((transfer) => `${JSON.stringify(flat(transfer))}\n`).join('');
  const script = join(import.meta.dirname, 'transfer', 'fluids_transfers.py');
  const options = { input, encoding: 'utf8', maxBuffer: 1 << 28 } as const;
  const ran = spawnSync(python, ['-B', script], options);
  if (ran.status !== 0) {
    if (!/ModuleNotFoundError/.test(ran.stderr ?? '') && ran.error === undefined)
      throw new Error(`${script} ended with ${ran.status}: ${ran.stderr}`);
    console.error('The ratio to python3-fluids was not measured: it was not found.');
    return [];
  }
  const [nsEach = Number.NaN, ...seconds] = ran.stdout.trim().split('\n').map(Number);
  mustBeSame(own.seconds, seconds);
  const name = 'the same in python3-fluids';
  return [
    row({ name, value: nsEach / 1e6, unit: 'ms' }),
    // Above 1 the other takes longer.
    row({ name, value: nsEach / own.nsEach, unit: '×', ratioOf: own.name, goal: { least: 20 } }),
  ];
}

function flat({ line, water, drivingPa, volumeM3 }: Transfer) {
  return {
    driving: drivingPa,
    volume: volumeM3,
    length: line.lengthM,
    bore: line.boreM,
    roughness: line.roughnessM,
    minor: line.minorLoss,
    kv: line.couplingsKv[0],
    density: water.densityKgPerM3,
    viscosity: water.viscosityPaS,
  };
}

/** Two programs that do not come to the same figures do not do the same work. */
function mustBeSame(own: readonly number[], other: readonly number[]): void {
  const furthest = own.reduce(
    (most, value, at) => Math.max(most, Math.abs(value - (other[at] ?? Number.NaN)) / value),
    0,
  );
  if (own.length !== other.length || !(furthest < 1e-9))
    throw new Error(`the yardstick came to other figures: ${furthest}`);
}

/** Both bounds of a push by gas that is shut off, integrated. */
function pushThatFades(transfers: readonly Transfer[]): BenchRow {
  const times: number[] = [];
  for (const { line, water, drivingPa } of transfers.slice(0, BLOW_DOWNS)) {
    const gas = { pressurePa: 101_325 + drivingPa, gasM3: 0.05 };
    const started = performance.now();
    const { slow, sudden } = blowDown({ line, water, gas, againstPa: 101_325 }, 0.002);
    times.push(performance.now() - started);
    if (!slow.arrives || !sudden.arrives || slow.seconds > sudden.seconds)
      throw new Error('a push by gas that is shut off came to figures that cannot be');
  }
  return row({
    name: `a push by gas that is shut off, both bounds integrated, p50 of ${BLOW_DOWNS}`,
    value: quantileOf(times, 0.5),
    unit: 'ms',
  });
}
