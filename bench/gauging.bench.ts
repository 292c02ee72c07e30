// What a gauging costs with all of its doubt: 1000 of them, beside python3-uncertainties on the same readings; and 100 000 draws.
// In processor time on both sides, so that what else the machine does is in neither.
import { seededChance } from '../src/ground/maths/index.ts';
import { gaugeByInjection, type InjectionTold, injectionByDraws } from '../src/ground/physics/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';
import { gaugedInPython } from './gauging/yardstick.ts';

const GAUGINGS = 1000;
const ROUNDS = 400;
const DRAWS = 100_000;
const DRAWINGS = 9;

export function bench(): Promise<readonly BenchRow[]> {
  return Promise.resolve([...gaugings(), drawing()]);
}

/** Tanks from near full to near empty, read by the same gauges. */
function tanks(): readonly InjectionTold[] {
  const chance = seededChance({ seed: 2147 });
  const between = (low: number, high: number): number => low + (high - low) * chance.uniform();
  return Array.from({ length: GAUGINGS }, () => {
    const [bottle, before, ullage] = [between(500e3, 700e3), between(100e3, 110e3), between(0.01, 0.16)];
    const end = (bottle * 0.01 + before * ullage) / (0.01 + ullage);
    const reading = (value: number, u: number) => ({ value, u });
    const gas = () => reading(between(293, 297), 0.1);
    return {
      ...{ tankM3: reading(0.18, 0.0009), bottleM3: reading(0.01, 2e-5) },
      ...{ bottleBeforePa: reading(bottle, 150), bottleAfterPa: reading(end, 150) },
      ...{ bottleBeforeK: gas(), bottleAfterK: gas() },
      ...{ tankBeforePa: reading(before, 30), tankAfterPa: reading(end, 30) },
      ...{ tankBeforeK: gas(), tankAfterK: gas() },
      ...{ bottleGaugeGain: reading(0, 1e-3), tankGaugeGain: reading(0, 5e-4) },
      ...{ bottleThermometerK: reading(0, 0.2), tankThermometerK: reading(0, 0.2) },
      seatingM3: reading(0, 0.0013),
    };
  });
}

function gaugings(): BenchRow[] {
  const told = tanks();
  const times: number[] = [];
  let figures: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    figures = [];
    const started = processorMs();
    for (const each of told) {
      const { waterM3 } = gaugeByInjection(each);
      figures.push(waterM3.value, waterM3.u);
    }
    times.push(processorMs() - started);
  }
  const ms = quantileOf(times, 0.5);
  const name = `${GAUGINGS} gaugings with budget, processor time, p50`;
  const rows = [row({ name, value: ms, unit: 'ms' })];
  const other = gaugedInPython(told);
  if (other === null) {
    console.error('The ratio to python3-uncertainties was not measured: it was not found.');
    return rows;
  }
  mustBeSame(figures, other.figures);
  return [
    ...rows,
    row({ name: other.name, value: other.ms, unit: 'ms' }),
    row({
      name: `${other.name}, times what it takes here`,
      ...{ value: other.ms / ms, unit: '×', goal: { least: 20 }, ratioOf: name },
    }),
  ];
}

function processorMs(): number {
  return process.cpuUsage().user / 1000;
}

/** Two programs that do not come to the same figures do not do the same work. */
function mustBeSame(own: readonly number[], other: readonly number[]): void {
  const furthest = own.reduce(
    (most, value, at) => Math.max(most, Math.abs(value / (other[at] ?? Number.NaN) - 1)),
    0,
  );
  if (own.length !== other.length || !(furthest < 1e-9))
    throw new Error(`the yardstick came to other figures: ${furthest}`);
}

function drawing(): BenchRow {
  const [told] = tanks();
  if (told === undefined) throw new Error('there is no tank to draw');
  const times: number[] = [];
  for (let round = 0; round < DRAWINGS; round += 1) {
    const started = processorMs();
    const { waterM3 } = injectionByDraws(told, { seed: round, draws: DRAWS });
    times.push(processorMs() - started);
    if (!(waterM3.u > 0)) throw new Error('the draws have no spread');
  }
  return row({
    name: `${DRAWS} draws of a gauging with their intervals, processor time, p50`,
    value: quantileOf(times, 0.5),
    unit: 'ms',
  });
}
