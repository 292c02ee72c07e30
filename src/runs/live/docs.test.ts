// The examples of docs/methods/live-band.md.
import { type Given, runExamplesOf } from '../../../tests/docs/page-examples.ts';
import { learnedHose } from './learned-hose.ts';
import { type FlowPlan, type LitresRead, live } from './live.ts';
import { cabinStop, flowStop } from './stop-rules.ts';

const MIN = 60_000;
const METER = { randomL: 0.12, relative: 0.01, offsetL: 0 };

function within(given: Given, name: string) {
  const [value = '', u95 = '0'] = given.text(name).split('±');
  return { value: Number(value), u: Number(u95) / 2 };
}

const maybe = (given: Given, name: string): string | null => {
  try {
    return given.text(name);
  } catch {
    return null;
  }
};

function planOf(given: Given): FlowPlan {
  const danger = maybe(given, 'danger') === null ? 'over-fill' : 'left behind';
  return { planned: within(given, 'litres'), minutes: within(given, 'minutes'), danger, pushKPa: 50 };
}

function readingsOf(given: Given): readonly LitresRead[] {
  return (maybe(given, 'readings') ?? '')
    .split(',')
    .filter((word) => word !== '')
    .map((word) => {
      const [minute, litres] = word.split(':').map(Number) as [number, number];
      return { is: 'litres', atMs: minute * MIN, means: 'meter', litres, doubt: METER };
    });
}

runExamplesOf('live-band.md', 12, {
  follow: (given) => {
    const nowMs = given.number('at') * MIN;
    const said = live({
      plan: planOf(given),
      stretches: [{ fromMs: 0, toMs: null }],
      readings: readingsOf(given),
      nowMs,
    });
    const minutes = (ms: number): string => (ms / MIN).toFixed(1);
    const { early, middle, late } = said.wholeMs;
    const soFar = `${said.soFarL.value.toFixed(2)} ± ${(2 * said.soFarL.u).toFixed(2)} L so far`;
    const full = `full after ${minutes(middle)} min (${minutes(early)} to ${minutes(late)})`;
    return `${soFar}; ${full}, limit ${minutes(said.limitAtMs ?? 0)} min`;
  },
  stop: (given) => {
    const stopped = flowStop({
      plan: planOf(given),
      began: { atMs: 0, litres: 0 },
      readings: readingsOf(given),
    });
    return `${stopped.verdict}, ${stopped.ratio?.value.toFixed(2)}`;
  },
  cabin: (given) => {
    const { verdict, offKPa } = cabinStop({
      ...{ beforeKPa: given.number('before'), nowKPa: given.number('now'), readingU: 0.15, pushKPa: 50 },
      ...{ movedL: given.number('litres'), cabinM3: 180, receiver: 'shell inside', gasFrom: 'cabin' },
    });
    return `${verdict}, off by ${offKPa.toFixed(3)} kPa`;
  },
  learn: (given) => {
    const runs = given.list('ratios').map((ratio) => ({
      predictedSeconds: 950,
      takenSeconds: 950 * ratio,
      interrupted: false,
    }));
    const { factor, used } = learnedHose(runs);
    return `factor ${factor.value.toFixed(3)} ± ${(2 * factor.u).toFixed(3)}, from ${used}`;
  },
});
