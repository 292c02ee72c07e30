// Runs every example of docs/methods/hose-flow.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { chokingDropPa, cvOfKv, kvInSeries } from './coupling.ts';
import { flowVerdict } from './flow-verdict.ts';
import { frictionFactor } from './friction-law.ts';
import { type HoseCoefficient, hoseCoefficient } from './hose-coefficient.ts';
import { type HoseLine, lineVolumeM3 } from './hose-line.ts';
import { limitSeconds, type PushDanger, pushBand } from './limit-times.ts';
import { columnPa } from './pressure-drop.ts';
import { type RegulatedPush, regulatedPush } from './regulated-push.ts';
import { neverPushedOut } from './remainder.ts';

const lineOf = (given: Given): HoseLine => ({
  lengthM: given.number('m'),
  boreM: given.number('mm') / 1000,
  roughnessM: given.number('um') * 1e-6,
  minorLoss: given.number('k'),
  couplingsKv: given.list('kv'),
});

function pushed(given: Given, coil: { readonly coilDiameterM?: number } = {}): RegulatedPush {
  return regulatedPush({
    line: { ...lineOf(given), ...coil },
    water: { densityKgPerM3: given.number('density'), viscosityPaS: given.number('viscosity') },
    drivingPa: given.number('kPa') * 1000,
    volumeM3: given.number('litres') / 1000,
  });
}

function learned(given: Given): HoseCoefficient {
  const predicted = given.list('predicted');
  return hoseCoefficient(
    given
      .list('taken')
      .map((takenSeconds, at) => ({ takenSeconds, predictedSeconds: predicted[at] ?? Number.NaN })),
  );
}

runExamplesOf('hose-flow.md', 18, {
  transfer: (given) => {
    const push = pushed(given);
    const share = (partPa: number): string => `${((100 * partPa) / push.totalPa).toFixed(0)} %`;
    const flow = `${push.seconds.toFixed(1)} s, ${(push.flowM3PerS * 60_000).toFixed(4)} L/min`;
    const parts = `hose ${share(push.frictionPa)}, bends ${share(push.minorPa)}, couplings ${share(push.couplingsPa)}`;
    return `${flow}, Re ${push.reynolds.toFixed(0)}, ${push.regime}; ${parts}`;
  },
  coiled: (given) => `${pushed(given, { coilDiameterM: given.number('coilM') }).seconds.toFixed(1)} s`,
  friction: (given) => {
    const { factor, regime } = frictionFactor(given.number('re'), {
      relativeRoughness: given.number('rough'),
    });
    return `${factor.toFixed(6)}, ${regime}`;
  },
  series: (given) => {
    const kv = kvInSeries(given.list('kv'));
    return `Kv ${kv.toFixed(4)}, Cv ${cvOfKv(kv).toFixed(4)}`;
  },
  chokes: (given) => {
    const dropPa = chokingDropPa({
      inletPa: given.number('beforeKPa') * 1000,
      vapourPa: given.number('vapourKPa') * 1000,
      criticalPa: given.number('criticalKPa') * 1000,
      recovery: given.number('recovery'),
    });
    return `${(dropPa / 1000).toFixed(1)} kPa`;
  },
  column: (given) => {
    const column = { riseM: given.number('rise'), gravityMPerS2: given.number('g') };
    return `${(columnPa({ densityKgPerM3: given.number('density'), ...column }) / 1000).toFixed(2)} kPa`;
  },
  learned: (given) => {
    const { factor, u, nextRun } = learned(given);
    const band = `${nextRun.lowFactor.toFixed(3)} to ${nextRun.highFactor.toFixed(3)}`;
    return `factor ${factor.toFixed(3)}, u ${u.toFixed(3)}; next run ${band}`;
  },
  limit: (given) => {
    const push = { predictedSeconds: given.number('next'), volumeUShare: given.number('volumeU') };
    const danger = given.text('danger') as PushDanger;
    return `${limitSeconds(pushBand(push, learned(given)), danger).toFixed(0)} s`;
  },
  verdict: (given) =>
    flowVerdict({ seenM3PerS: given.number('seen'), predictedM3PerS: given.number('predicted') }),
  left: (given) => {
    const { totalM3, uM3, inStoreM3, inLineM3 } = neverPushedOut({
      waterM3: given.number('water') / 1000,
      remainderM3: given.number('remainder') / 1000,
      remainderUM3: given.number('u') / 1000,
      lineM3: lineVolumeM3({ lengthM: given.number('m'), boreM: given.number('mm') / 1000 }),
      reachableM3: Number.POSITIVE_INFINITY,
    });
    const [total, u, store, hose] = [totalM3, uM3, inStoreM3, inLineM3].map((v) => (v * 1000).toFixed(2));
    return `${total} L, u ${u} L: store ${store}, hose ${hose}`;
  },
});
