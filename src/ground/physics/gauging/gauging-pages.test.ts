// Runs every example of the pages on gauging: by gas, by strokes, by oscillation.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import type { Doubted } from '../../maths/index.ts';
import { gaugeByBlowDown } from './blow-down-gauging.ts';
import { chargeVerdict, type Rating, tankAfterFallPa } from './charge.ts';
import { combineGaugings } from './combine-gaugings.ts';
import { foreseenInjection } from './foreseen-injection.ts';
import { gaugeByInjection } from './gas-injection.ts';
import { judgeGauging, worthOfGaugings } from './gauging-worth.ts';
import { springStiffnessNPerM, swingPeriodS } from './oscillation.ts';
import { calibratedBalance, weighByOscillation } from './oscillation-weighing.ts';
import { volumeByStrokes } from './stroke-count.ts';
import { gaugeByDisplacement } from './volume-displacement.ts';

const doubted = (value: number | undefined, u: number | undefined, scale = 1): Doubted => ({
  value: (value ?? Number.NaN) * scale,
  u: (u ?? Number.NaN) * scale,
});
const celsius = (value: number | undefined, u: number | undefined): Doubted => {
  const { value: degrees, u: doubt } = doubted(value, u);
  return { value: degrees + 273.15, u: doubt };
};
const LITRE = 1e-3;
const KPA = 1e3;
const kPa = (pressurePa: number): string => (pressurePa / KPA).toFixed(0);

/** A word that some lines have and others not. */
function maybe(given: Given, name: string): number | undefined {
  try {
    return given.number(name);
  } catch {
    return undefined;
  }
}

function ending(given: Given): string {
  const [bottleL, bottleKPa] = given.list('bottle');
  const [ullageL, tankKPa] = given.list('tank');
  const rated = given.text('rated');
  const rating: Rating = { what: 'tank', id: 'R2', overCabinPa: rated === '' ? null : Number(rated) * KPA };
  const charge = chargeVerdict({
    bottleM3: bottleL! * LITRE,
    bottlePa: bottleKPa! * KPA,
    ullageM3: doubted(ullageL, 0, LITRE),
    tankPa: tankKPa! * KPA,
    cabinPa: given.number('cabin') * KPA,
    ratings: [rating],
  });
  if (charge.verdict === 'blocked')
    return `blocked: no rating of the ${charge.missing.map(({ what }) => what).join()}`;
  if (charge.verdict === 'allowed')
    return `allowed: ends at ${kPa(charge.endPa)} kPa, ${kPa(charge.marginPa)} kPa below the lowest rating`;
  if (charge.verdict !== 'refused') return charge.verdict;
  const { stopTankAtPa, bottleFallPa } = charge.partCharge!;
  const part = `close it at ${kPa(stopTankAtPa)} kPa, ${kPa(bottleFallPa)} kPa down`;
  return `refused: would end at ${kPa(charge.endPa)} kPa, above ${kPa(charge.limitPa)} kPa; a bottle of ${kPa(charge.largestBottlePa!)} kPa at most, or ${part}`;
}

function injected(given: Given): string {
  const [tankL, tankU] = given.list('tank');
  const [bottleL, b1, b2, tb1, tb2] = given.list('bottle');
  const [p1, p2, t1, t2] = given.list('gas');
  const [uBottle, uTank, uK] = given.list('u');
  const { waterM3, budget } = gaugeByInjection({
    tankM3: doubted(tankL, tankU, LITRE),
    bottleM3: doubted(bottleL, 0, LITRE),
    bottleBeforePa: doubted(b1, uBottle, KPA),
    bottleAfterPa: doubted(b2, uBottle, KPA),
    tankBeforePa: doubted(p1, uTank, KPA),
    tankAfterPa: doubted(p2, uTank, KPA),
    ...{ bottleBeforeK: celsius(tb1, uK), bottleAfterK: celsius(tb2, uK) },
    ...{ tankBeforeK: celsius(t1, uK), tankAfterK: celsius(t2, uK) },
  });
  const { of, share } = budget[0]!;
  const figure = `${(waterM3.value / LITRE).toFixed(1)} L, u ${(waterM3.u / LITRE).toFixed(1)}`;
  return `${figure}, of it ${of} ${(100 * share).toFixed(0)} %`;
}

function foreseen(given: Given): string {
  const [tankL, tankU] = given.list('tank');
  const [bottleL, bottleKPa] = given.list('bottle');
  const [uKPa, uK] = given.list('u');
  const { waterM3 } = foreseenInjection({
    tankM3: doubted(tankL, tankU, LITRE),
    bottleM3: doubted(bottleL, 0, LITRE),
    ullageM3: given.number('ullage') * LITRE,
    ...{ bottlePa: bottleKPa! * KPA, tankPa: 101.3e3, gasK: 295 },
    u: { bottlePa: uKPa! * KPA, tankPa: uKPa! * KPA, gasK: uK! },
  });
  return `u ${(waterM3.u / LITRE).toFixed(2)} L`;
}

const waterOf = ({ value, u }: Pick<Doubted, 'value' | 'u'>): string =>
  `${(value / LITRE).toFixed(1)} L, u ${(u / LITRE).toFixed(1)}`;

function blownDown(given: Given): string {
  const [tankL, tankU] = given.list('tank');
  const [drawnL, drawnU] = given.list('drawn');
  const [p1, p2] = given.list('gas');
  const [uKPa, uK] = given.list('u');
  const gas = celsius(22, uK);
  const { waterM3 } = gaugeByBlowDown({
    ...{ tankM3: doubted(tankL, tankU, LITRE), drawnM3: doubted(drawnL, drawnU, LITRE) },
    ...{ tankBeforePa: doubted(p1, uKPa, KPA), tankAfterPa: doubted(p2, uKPa, KPA) },
    ...{ tankBeforeK: gas, tankAfterK: gas },
  });
  return waterOf(waterM3);
}

function displaced(given: Given): string {
  const [tankL, tankU] = given.list('tank');
  const [p1, p2] = given.list('gas');
  const { waterM3 } = gaugeByDisplacement({
    ...{ tankM3: doubted(tankL, tankU, LITRE), displacedM3: doubted(given.number('pressed'), 0, LITRE) },
    ...{ beforePa: doubted(p1, 0, KPA), afterPa: doubted(p2, 0, KPA) },
    exponent: given.text('exponent') === 'settled' ? 'settled' : 'not settled',
  });
  return waterOf(waterM3);
}

runExamplesOf('gas-gauging.md', 15, {
  end: ending,
  part: (given) => {
    const [ullageL, tankKPa] = given.list('tank');
    const pressurePa = tankAfterFallPa({
      bottleM3: given.number('bottle') * LITRE,
      bottleFallPa: given.number('fall') * KPA,
      ...{ ullageM3: ullageL! * LITRE, tankPa: tankKPa! * KPA },
    });
    return `${(pressurePa / KPA).toFixed(1)} kPa`;
  },
  injection: injected,
  foreseen,
  judge: (given) => {
    const presentU = given.number('known');
    const content = given.number('content');
    const { verdict, because, afterU } = judgeGauging({ u: given.number('u') }, { presentU, content });
    const reasons = because.map((each) =>
      each.code === 'no-better-than-known'
        ? `u ${each.u.toFixed(1)} beside ${each.presentU.toFixed(1)} that is known`
        : `± ${each.u95.toFixed(1)} on a content of ${each.content.toFixed(1)}`,
    );
    return verdict === 'useless'
      ? `useless: ${reasons.join('; ')}`
      : `useful: u ${presentU.toFixed(2)} to ${afterU.toFixed(2)}`;
  },
  'blow-down': blownDown,
  displacement: displaced,
  worth: (given) => {
    const way = { way: 'gas injection', u: given.number('u'), minutes: given.number('minutes') };
    const [worth] = worthOfGaugings({ presentU: given.number('known') }, [way]);
    return `${worth!.drop!.toFixed(2)} L less, ${worth!.dropPerMinute!.toFixed(3)} L a minute`;
  },
  combine: (given) => {
    const shared = { shell: given.number('shell') };
    const gaugings = ['gaugings', 'gaugings2'].map((name) => {
      const [value, u] = given.list(name);
      return { of: name, value: value!, u: u!, shared };
    });
    const { value, u, verdict, probability } = combineGaugings(gaugings);
    return `${value.toFixed(1)} u ${u.toFixed(1)}, ${verdict} (p ${probability.toFixed(2)})`;
  },
});

runExamplesOf('counting-strokes.md', 5, {
  strokes: (given) => {
    const { drawnM3, systematicUM3, randomUM3 } = volumeByStrokes({
      count: { value: given.number('count'), u: maybe(given, 'tally') ?? 0 },
      strokeM3: given.number('stroke') * 1e-6,
      calibration: { value: maybe(given, 'bias') ?? 0, u: given.number('u') },
      strokeScatter: given.number('scatter'),
    });
    const [volume, u] = [drawnM3.value, drawnM3.u].map((each) => (each / LITRE).toFixed(2));
    const [shared, fresh] = [systematicUM3, randomUM3].map((each) => (each / LITRE).toFixed(3));
    return `${volume} L, u ${u}: shared ${shared}, new ${fresh}`;
  },
});

runExamplesOf('weighing-by-oscillation.md', 8, {
  swing: (given) => `${swingPeriodS(given.number('mass'), given.number('stiffness')).toFixed(3)} s`,
  stiffness: (given) =>
    `${springStiffnessNPerM(given.number('mass'), given.number('period')).toFixed(2)} N/m`,
  weigh: (given) => {
    const [stiffness, uStiffness] = given.list('stiffness');
    const [period, uPeriod] = given.list('period');
    const frame = maybe(given, 'frame');
    const { contentKg } = weighByOscillation({
      stiffnessNPerM: doubted(stiffness, uStiffness),
      periodS: doubted(period, uPeriod),
      carriageKg: { value: given.number('tray'), u: 0 },
      slosh: { value: 0, u: maybe(given, 'slosh') ?? 0 },
      ...(frame === undefined ? {} : { frameKg: { value: frame, u: 0 } }),
    });
    return `${contentKg.value.toFixed(2)} kg, u ${contentKg.u.toFixed(3)}`;
  },
  calibrate: (given) => {
    const swing = (massKg: number, periodS: number) => ({
      massKg: { value: massKg, u: 0.005 },
      periodS: { value: periodS, u: 0.0005 },
    });
    const { stiffnessNPerM, carriageKg } = calibratedBalance({
      lighter: swing(0, given.number('bare')),
      heavier: swing(given.number('mass'), given.number('loaded')),
    });
    return `${stiffnessNPerM.value.toFixed(1)} N/m, tray ${carriageKg.value.toFixed(2)} kg`;
  },
});
