// Runs every example of docs/methods/solutions.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { massShare, toldAs } from './bases.ts';
import {
  type Dosed,
  type DosedWithStock,
  resultOfStock,
  saltForTarget,
  slipOfTen,
  stockForTarget,
  waterToDiluteM3,
} from './dose.ts';
import { hardnessKgPerM3 } from './hardness.ts';
import { mixedSolution, volumesToWashOut, washedOutKgPerM3 } from './mixing.ts';
import { chargeForSilverC, timeForBiocideS, wallLossFromSamples } from './silver.ts';

const DAY_S = 86_400;
const milli = (given: Given, name: string): number => given.number(name) / 1000;
const mgPerL = (kgPerM3: number, digits = 2): string => `${(kgPerM3 * 1000).toFixed(digits)} mg/L`;

const waterOf = (given: Given) => ({
  volumeM3: milli(given, 'litres'),
  concentrationKgPerM3: milli(given, 'mgPerL'),
});
const greatestOf = (given: Given) => {
  const greatest = given.text('maximum');
  return { greatestKgPerM3: greatest === 'none' ? null : Number(greatest) / 1000 };
};
const tellStock = ({ stockVolumeM3, ...dosed }: DosedWithStock): string =>
  `${(stockVolumeM3 * 1e6).toFixed(1)} mL, ${tell(dosed)}`;
const tell = ({ resultKgPerM3, verdict }: Omit<Dosed, 'doseMassKg'>): string =>
  `makes ${mgPerL(resultKgPerM3)}: ${verdict}`;

runExamplesOf('solutions.md', 20, {
  mix: (given) => {
    const amounts = given.list('mgPerL');
    const parts = given.list('litres').map((litres, at) => ({
      volumeM3: litres / 1000,
      concentrationKgPerM3: (amounts[at] ?? Number.NaN) / 1000,
    }));
    const { volumeM3, concentrationKgPerM3 } = mixedSolution(parts);
    return `${(volumeM3 * 1000).toFixed(1)} L of ${mgPerL(concentrationKgPerM3, 3)}`;
  },
  'stock-for': (given) =>
    tellStock(
      stockForTarget({
        water: waterOf(given),
        wantedKgPerM3: milli(given, 'wanted'),
        stockKgPerM3: milli(given, 'stock'),
        ...greatestOf(given),
      }),
    ),
  'result-of': (given) =>
    tell(
      resultOfStock({
        water: waterOf(given),
        stockVolumeM3: given.number('mL') * 1e-6,
        stockKgPerM3: milli(given, 'stock'),
        ...greatestOf(given),
      }),
    ),
  powder: (given) => {
    const dosed = saltForTarget({
      water: waterOf(given),
      wantedKgPerM3: milli(given, 'wanted'),
      purity: given.number('purity'),
      ...greatestOf(given),
    });
    return `${(dosed.doseMassKg * 1000).toFixed(3)} g, ${tell(dosed)}`;
  },
  dilute: (given) => {
    const volumeM3 = waterToDiluteM3({
      water: waterOf(given),
      wantedKgPerM3: milli(given, 'wanted'),
      thinnerKgPerM3: milli(given, 'thinner'),
    });
    return `${(volumeM3 * 1000).toFixed(1)} L`;
  },
  slip: (given) => {
    const power = slipOfTen({ needed: given.number('needed'), given: given.number('given') });
    return power === null ? 'no power of ten' : `10 to the ${power}`;
  },
  'washed-out': (given) =>
    mgPerL(
      washedOutKgPerM3({
        atFirstKgPerM3: milli(given, 'mgPerL'),
        inflowKgPerM3: milli(given, 'inflow'),
        volumesThrough: given.number('volumes'),
      }),
    ),
  'wash-out': (given) => {
    const volumes = volumesToWashOut({
      atFirstKgPerM3: milli(given, 'mgPerL'),
      inflowKgPerM3: milli(given, 'inflow'),
      wantedKgPerM3: milli(given, 'wanted'),
    });
    return `${volumes.toFixed(1)} volumes`;
  },
  hardness: (given) =>
    mgPerL(hardnessKgPerM3({ calciumKgPerM3: milli(given, 'Ca'), magnesiumKgPerM3: milli(given, 'Mg') }), 1),
  'told-as': (given) =>
    mgPerL(
      toldAs({
        value: milli(given, 'mgPerL'),
        from: given.text('from'),
        to: given.text('to'),
        element: given.text('element'),
      }),
    ),
  share: (given) => massShare(given.text('compound'), given.text('element')).toFixed(4),
  silver: (given) => {
    const silverKg = milli(given, 'litres') * milli(given, 'mgPerL');
    const chargeC = chargeForSilverC({ silverKg, currentEfficiency: given.number('efficiency') });
    return `${(chargeC / given.number('milliamperes') / 0.06).toFixed(1)} min`;
  },
  lasts: (given) => {
    const timeS = timeForBiocideS({
      fromKgPerM3: milli(given, 'from'),
      toKgPerM3: milli(given, 'to'),
      lossMPerS: given.number('perDay') / DAY_S / given.number('areaPerVolume'),
      areaPerVolumePerM: given.number('areaPerVolume'),
    });
    return `${(timeS / DAY_S).toFixed(0)} days`;
  },
  'loss-from': (given) => {
    const [first = Number.NaN, second = Number.NaN] = given.list('mgPerL');
    const [firstU = Number.NaN, secondU = Number.NaN] = given.list('u');
    const areaPerVolumePerM = given.number('areaPerVolume');
    const { lossMPerS, uMPerS } = wallLossFromSamples({
      first: { value: first / 1000, u: firstU / 1000 },
      second: { value: second / 1000, u: secondU / 1000 },
      timeS: given.number('days') * DAY_S,
      areaPerVolumePerM,
    });
    const share = (mPerS: number) => (mPerS * areaPerVolumePerM * DAY_S * 100).toFixed(1);
    return `${share(lossMPerS)} ± ${share(2 * uMPerS)} % a day`;
  },
});
