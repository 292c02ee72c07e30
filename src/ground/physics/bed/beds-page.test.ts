// Runs every example of docs/methods/beds.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import {
  emptyBedContactS,
  exchangerThroughputM3,
  sorbentThroughputM3,
  stoichiometricTimeS,
} from './capacity.ts';
import { patternThroughput, type Resistance } from './constant-pattern.ts';
import { freundlichKgPerKg, langmuirKgPerKg } from './isotherm.ts';
import { chainAfter, volumeToLimitM3 } from './lead-and-lag.ts';
import { bohartAdams, logisticBreakthrough, logisticOfThomas, logisticTimeS } from './logistic.ts';
import { breakTimeOfLengthS, unusedBed } from './unused-bed.ts';

const DAY_S = 86_400;
const milli = (given: Given, name: string): number => given.number(name) / 1000;
const flowOf = (given: Given): number => milli(given, 'litresPerHour') / 3600;
const bedOf = (given: Given) => ({ ratePerS: given.number('k'), halfTimeS: given.number('tau') });
const sorbentOf = (given: Given) => ({
  capacityKgPerKg: milli(given, 'gPerKg'),
  sorbentKg: given.number('kg'),
  feedKgPerM3: milli(given, 'mgPerL'),
});
const litres = (volumeM3: number): string => `${(volumeM3 * 1000).toFixed(0)} L`;
const share = (value: number): string => `${(value * 100).toFixed(2)} %`;

function rowOf(given: Given) {
  const bed = { capacityKg: milli(given, 'capacityG'), steepness: given.number('steepness'), fedKg: 0 };
  return { chain: { lead: bed, lag: bed }, feedKgPerM3: milli(given, 'mgPerL') };
}

runExamplesOf('beds.md', 18, {
  sorbent: (given) => litres(sorbentThroughputM3({ ...sorbentOf(given), usedShare: given.number('used') })),
  exchanger: (given) => {
    const charges = given.list('charge');
    const ions = given
      .list('mmolPerL')
      .map((molPerM3, at) => ({ molPerM3, charge: charges[at] ?? Number.NaN }));
    const bed = { capacityEqPerM3: given.number('eqPerL') * 1000, bedM3: milli(given, 'bedL') };
    return litres(exchangerThroughputM3({ ...bed, ions }));
  },
  contact: (given) => {
    const contactS = emptyBedContactS({ bedM3: milli(given, 'bedL'), flowM3PerS: flowOf(given) });
    return `${(contactS / 60).toFixed(1)} min`;
  },
  full: (given) => {
    const run = { flowM3PerS: flowOf(given), bedM3: milli(given, 'bedL'), voidShare: given.number('void') };
    return `${(stoichiometricTimeS({ ...sorbentOf(given), ...run }) / DAY_S).toFixed(2)} days`;
  },
  langmuir: (given) => {
    const sorbent = { mostKgPerKg: given.number('most'), affinityM3PerKg: given.number('b') };
    return `${langmuirKgPerKg({ ...sorbent, concentrationKgPerM3: milli(given, 'mgPerL') }).toFixed(3)} kg/kg`;
  },
  freundlich: (given) => {
    const sorbent = { atOneKgPerKg: given.number('K'), exponent: given.number('exponent') };
    return `${freundlichKgPerKg({ ...sorbent, concentrationKgPerM3: milli(given, 'mgPerL') }).toFixed(3)} kg/kg`;
  },
  logistic: (given) => share(logisticBreakthrough(bedOf(given), given.number('s'))),
  limit: (given) => `${logisticTimeS(bedOf(given), given.number('share')).toFixed(1)} s`,
  bohart: (given) => share(bohartAdams(bedOf(given), given.number('s'))),
  thomas: (given) => {
    const run = { capacityKgPerKg: 1, sorbentKg: 1, flowM3PerS: 1, feedKgPerM3: milli(given, 'mgPerL') };
    const { ratePerS } = logisticOfThomas({ ...run, thomasM3PerKgS: given.number('mLPerMinMg') / 60 });
    return `${(ratePerS * 60).toFixed(4)} 1/min`;
  },
  pattern: (given) => {
    const bed = {
      resistance: given.text('of') as Resistance,
      separation: given.number('R'),
      transferUnits: given.number('N'),
    };
    return `at ${patternThroughput(bed, given.number('share')).toFixed(4)} of the stoichiometric throughput`;
  },
  unused: (given) => {
    const shares = given.list('share');
    const curve = given
      .list('minutes')
      .map((minutes, at) => ({ timeS: minutes * 60, share: shares[at] ?? Number.NaN }));
    const found = unusedBed({ curve, limitShare: given.number('limit'), lengthM: given.number('cm') / 100 });
    const [total, passed] = [found.stoichiometricS, found.breakS].map((timeS) => (timeS / 60).toFixed(0));
    return `full after ${total} min, limit after ${passed} min, ${(found.unusedM * 100).toFixed(1)} cm unused`;
  },
  longer: (given) => {
    const timeS = breakTimeOfLengthS({
      stoichiometricS: given.number('tt') * 60,
      lengthM: given.number('cm') / 100,
      unusedM: given.number('unused') / 100,
      newLengthM: given.number('newCm') / 100,
    });
    return `${(timeS / 60).toFixed(0)} min`;
  },
  row: (given) => {
    const { chain, feedKgPerM3 } = rowOf(given);
    const after = chainAfter(chain, { volumeM3: milli(given, 'litres'), feedKgPerM3 });
    const behind = [after.leadKgPerM3, after.lagKgPerM3].map((kgPerM3) => (kgPerM3 * 1000).toFixed(2));
    const held = [after.leadHoldsKg, after.lagHoldsKg].map((kg) => (kg * 1000).toFixed(1));
    return `${behind[0]} then ${behind[1]} mg/L; they hold ${held[0]} and ${held[1]} g`;
  },
  lasts: (given) => {
    const { chain, feedKgPerM3 } = rowOf(given);
    const behind = given.text('behind') === 'lead' ? 'lead' : 'lag';
    return litres(volumeToLimitM3(chain, { behind, feedKgPerM3, limitKgPerM3: milli(given, 'limit') }));
  },
});
