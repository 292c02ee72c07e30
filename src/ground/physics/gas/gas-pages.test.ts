// Runs every example of docs/methods/pushing-with-gas.md and docs/methods/cabin-pressure.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { blowDown, quadraticBlowDownSeconds } from '../hose/blow-down.ts';
import type { HoseLine } from '../hose/hose-line.ts';
import { type PushOutcome, pushTime } from '../hose/push-course.ts';
import { cabinChange, type Receiver } from './cabin-pressure.ts';
import { compressorRun } from './compressor.ts';
import { freeAir } from './free-air.ts';
import { storedEnergyJ } from './stored-energy.ts';
import { trappedWaterRisePa } from './trapped-water.ts';
import { thinWallStress } from './wall-stress.ts';

const ICE_POINT_K = 273.15;
const water = { densityKgPerM3: 997.05, viscosityPaS: 8.9e-4 };
const litres = (given: Given, name: string): number => given.number(name) / 1000;
const kilopascals = (given: Given, name: string): number => given.number(name) * 1000;
const lineOf = (given: Given): HoseLine => ({
  lengthM: given.number('m'),
  boreM: given.number('mm') / 1000,
  roughnessM: 1.5e-6,
  minorLoss: given.number('k'),
  couplingsKv: given.list('kv'),
});

const said = (outcome: PushOutcome): string =>
  outcome.arrives ? `${outcome.seconds.toFixed(0)} s` : `only ${(outcome.reachableM3 * 1000).toFixed(2)} L`;

runExamplesOf('pushing-with-gas.md', 14, {
  air: (given) => {
    const { totalM3 } = freeAir({
      waterM3: litres(given, 'litres'),
      tankPa: kilopascals(given, 'tankKPa'),
      cabinPa: kilopascals(given, 'cabinKPa'),
      ullageM3: litres(given, 'ullage'),
    });
    return `${(totalM3 * 1000).toFixed(0)} L`;
  },
  compressor: (given) => {
    const run = compressorRun({
      freeAirM3: litres(given, 'litres'),
      freeFlowM3PerS: litres(given, 'perMin') / 60,
      inletPa: kilopascals(given, 'inKPa'),
      outletPa: kilopascals(given, 'outKPa'),
      exponent: given.number('n'),
      inletK: given.number('celsius') + ICE_POINT_K,
      efficiency: given.number('efficiency'),
    });
    const [least, work, heat] = [run.isothermalJ, run.workJ, run.heatJ].map((j) => (j / 1000).toFixed(1));
    const energies = `least ${least} kJ, work ${work} kJ, heat ${heat} kJ, ${run.meanPowerW.toFixed(1)} W`;
    return `${(run.seconds / 60).toFixed(1)} min; ${energies}; outlet ${(run.outletK - ICE_POINT_K).toFixed(0)} °C`;
  },
  'blow-down': (given) => {
    const gas = { pressurePa: kilopascals(given, 'gasKPa'), gasM3: litres(given, 'gasL') };
    const push = { line: lineOf(given), water, gas, againstPa: kilopascals(given, 'cabinKPa') };
    const { slow, sudden } = blowDown(push, litres(given, 'litres'));
    if (slow.arrives && sudden.arrives) return `${slow.seconds.toFixed(0)} to ${said(sudden)}`;
    return `${said(slow)}, or ${said(sudden)}`;
  },
  'closed-form': (given) => {
    const gas = { pressurePa: kilopascals(given, 'gasKPa'), gasM3: litres(given, 'gasL') };
    const push = { ...gas, againstPa: kilopascals(given, 'cabinKPa'), flowPerRootPa: given.number('k') };
    return `${quadraticBlowDownSeconds(push, litres(given, 'endL')).toFixed(4)} s`;
  },
  bag: (given) =>
    said(
      pushTime(
        {
          line: lineOf(given),
          water,
          source: { kind: 'regulated', pressurePa: 101_325 + kilopascals(given, 'overKPa') },
          againstPa: 101_325,
          risePaPerM3: given.number('risePerLitre') * 1e6,
          slackM3: litres(given, 'slack'),
        },
        litres(given, 'litres'),
      ),
    ),
  stored: (given) => {
    const gas = { pressurePa: kilopascals(given, 'kPa'), aroundPa: kilopascals(given, 'aroundKPa') };
    return `${(storedEnergyJ({ ...gas, gasM3: litres(given, 'litres') }) / 1000).toFixed(1)} kJ`;
  },
  wall: (given) => {
    const { hoopPa, axialPa, spherePa } = thinWallStress({
      gaugePa: kilopascals(given, 'kPa'),
      radiusM: given.number('mm') / 1000,
      wallM: given.number('wallMm') / 1000,
    });
    const [hoop, axial, sphere] = [hoopPa, axialPa, spherePa].map((pa) => `${(pa / 1e6).toFixed(1)} MPa`);
    return `around ${hoop}, along ${axial}, sphere ${sphere}`;
  },
  'shut-in': (given) => `${(trappedWaterRisePa(given.number('kelvin')) / 1e6).toFixed(2)} MPa`,
});

runExamplesOf('cabin-pressure.md', 6, {
  change: (given) => {
    const change = cabinChange({
      receiver: given.text('receiver').replace('-', ' ') as Receiver,
      gasFrom: given.text('gas') as 'cabin' | 'vehicle',
      waterM3: litres(given, 'litres'),
      tankPa: kilopascals(given, 'tankKPa'),
      cabinPa: kilopascals(given, 'cabinKPa'),
      cabinM3: given.number('cabinM3'),
    });
    return [change.whilePushingPa, change.afterVentingPa, change.allGasBackPa]
      .map((pa) => (pa / 1000).toFixed(3))
      .join('; ');
  },
});
