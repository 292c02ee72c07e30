// Runs every example of docs/methods/conductivity.md.
import { runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { conductivityOfIons, onsagerSM2PerMol, pureWaterConductivitySPerM } from './conductivity.ts';
import { conductivityAt25SPerM, dissolvedSolidsKgPerM3, readingAgainstIons } from './conductivity-reading.ts';
import { type IonName, ionMolPerM3 } from './ions.ts';

const S_PER_M = 1e-4;
const uSPerCm = (sPerM: number, digits = 1): string => `${(sPerM / S_PER_M).toFixed(digits)} uS/cm`;

runExamplesOf('conductivity.md', 12, {
  onsager: (given) => {
    const limitingSM2PerMol = given.number('limiting') * 1e-4;
    const equivalent = onsagerSM2PerMol({ limitingSM2PerMol, molPerM3: given.number('mmolPerL') });
    return `${(equivalent * 1e4).toFixed(1)} S cm2/mol`;
  },
  ions: (given) => {
    const amounts = given.list('mgPerL');
    const names = given.text('of').split(',') as IonName[];
    const ions = names.map((ion, at) => ({
      ion,
      molPerM3: ionMolPerM3({ ion, kgPerM3: (amounts[at] ?? Number.NaN) / 1000 }),
    }));
    const { conductivitySPerM, uSPerM, chargeImbalance } = conductivityOfIons(ions);
    const imbalance = `${(chargeImbalance * 100).toFixed(1).replace('-0.0', '0.0')} %`;
    return `${uSPerCm(conductivitySPerM)} (u ${uSPerCm(uSPerM)}), charges off by ${imbalance}`;
  },
  'at-25': (given) =>
    uSPerCm(
      conductivityAt25SPerM({
        conductivitySPerM: given.number('uSPerCm') * S_PER_M,
        temperatureC: given.number('celsius'),
      }),
    ),
  solids: (given) => {
    const { lowKgPerM3, highKgPerM3 } = dissolvedSolidsKgPerM3(given.number('uSPerCm') * S_PER_M);
    return `${(lowKgPerM3 * 1000).toFixed(0)} to ${(highKgPerM3 * 1000).toFixed(0)} mg/L`;
  },
  pure: () => uSPerCm(pureWaterConductivitySPerM(), 3),
  against: (given) => {
    const { inU, differ } = readingAgainstIons({
      reading: { value: given.number('uSPerCm') * S_PER_M, u: given.number('u') * S_PER_M },
      ions: { value: given.number('ions') * S_PER_M, u: given.number('uIons') * S_PER_M },
    });
    return `${inU.toFixed(1)} u: ${differ ? 'they differ' : 'they agree'}`;
  },
});
