// Bases, hardness, conductivity and silver: relations, limits and what is refused; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { massShare, toldAs, toldAsCalciumCarbonate } from './bases.ts';
import { conductivityOfIons, onsagerSM2PerMol, pureWaterConductivitySPerM } from './conductivity.ts';
import { conductivityAt25SPerM, dissolvedSolidsKgPerM3, readingAgainstIons } from './conductivity-reading.ts';
import { hardnessKgPerM3 } from './hardness.ts';
import { IONS, type IonName, ionMolPerM3 } from './ions.ts';
import {
  biocideLeftKgPerM3,
  chargeForSilverC,
  silverDissolvedKg,
  timeForBiocideS,
  wallLossFromSamples,
} from './silver.ts';

describe('one result in other words', () => {
  it('there and back is the same, and all shares of a compound make the whole', () => {
    const told = toldAs({ value: 12.5, from: 'NO3', to: 'N', element: 'N' });
    expect(told).toBeCloseTo(2.824, 3);
    expect(toldAs({ value: told, from: 'N', to: 'NO3', element: 'N' })).toBeCloseTo(12.5, 12);
    const whole = ['C', 'H', 'O', 'N'].reduce((sum, element) => sum + massShare('CH4N2O', element), 0);
    expect(whole).toBeCloseTo(1, 14);
  });

  it('the carbon of what one may find in condensate', () => {
    expect(massShare('C2H6O', 'C')).toBeCloseTo(0.5214, 4);
    expect(massShare('CH4N2O', 'C')).toBeCloseTo(0.2, 3);
    expect(massShare('C3H8O2', 'C')).toBeCloseTo(0.4735, 4);
  });

  it('refuses an element that is not there, and a charge that is none', () => {
    expect(() => massShare('NO3', 'C')).toThrow(RangeError);
    for (const charge of [0, 5, 1.5, Number.NaN])
      expect(() => toldAsCalciumCarbonate({ value: 1, ion: 'Ca', charge })).toThrow(OutsideRange);
  });

  it('a millimole of hardness in a litre is 100.09 mg/L', () => {
    const calciumKgPerM3 = 0.040078;
    expect(hardnessKgPerM3({ calciumKgPerM3, magnesiumKgPerM3: 0 }) * 1000).toBeCloseTo(100.09, 1);
    for (const value of [-1, Number.NaN]) {
      expect(() => hardnessKgPerM3({ calciumKgPerM3: value, magnesiumKgPerM3: 0 })).toThrow(OutsideRange);
      expect(() => hardnessKgPerM3({ calciumKgPerM3: 0, magnesiumKgPerM3: value })).toThrow(OutsideRange);
    }
  });
});

const names = Object.keys(IONS) as IonName[];
const cations = names.filter((name) => IONS[name].charge > 0);
const anions = names.filter((name) => IONS[name].charge < 0);

/** So many equivalents of one salt. */
const salt = (cation: IonName, anion: IonName, equivalents: number) =>
  [cation, anion].map((ion) => ({ ion, molPerM3: equivalents / Math.abs(IONS[ion].charge) }));

describe('conductivity of ions', () => {
  it('each salt starts at the sum of its ions and falls below it with √I', () => {
    for (const cation of cations)
      for (const anion of anions) {
        const limiting = IONS[cation].limitingSM2PerMol + IONS[anion].limitingSM2PerMol;
        const at = (equivalents: number) =>
          conductivityOfIons(salt(cation, anion, equivalents)).conductivitySPerM / equivalents;
        expect(at(1e-10) / limiting).toBeCloseTo(1, 5);
        const [fallen, fallenMore] = [limiting - at(0.1), limiting - at(0.4)];
        expect(fallen).toBeGreaterThan(0);
        expect(fallenMore / fallen).toBeCloseTo(2, 9);
      }
  });

  it('agrees with the law of one charge to one within a part in a thousand', () => {
    for (const [cation, anion] of [
      ['K', 'Cl'],
      ['Na', 'Cl'],
      ['Ag', 'NO3'],
    ] as const) {
      const limitingSM2PerMol = IONS[cation].limitingSM2PerMol + IONS[anion].limitingSM2PerMol;
      const law = onsagerSM2PerMol({ limitingSM2PerMol, molPerM3: 1 });
      expect(conductivityOfIons(salt(cation, anion, 1)).conductivitySPerM / law).toBeCloseTo(1, 3);
    }
  });

  it('a salt told as two parts of itself is the same water; an analysis that does not close says so', () => {
    const whole = conductivityOfIons(salt('Ca', 'Cl', 1));
    const halves = conductivityOfIons([...salt('Ca', 'Cl', 0.4), ...salt('Ca', 'Cl', 0.6)]);
    expect(halves.conductivitySPerM).toBeCloseTo(whole.conductivitySPerM, 15);
    expect(whole.chargeImbalance).toBeCloseTo(0, 15);
    const open = conductivityOfIons([
      { ion: 'Na', molPerM3: 1.2 },
      { ion: 'Cl', molPerM3: 0.8 },
    ]);
    expect(open.chargeImbalance).toBeCloseTo(0.2, 12);
  });

  it('a drinking water: calcium, magnesium and hydrogen carbonate', () => {
    const of = (ion: IonName, mgPerL: number) => ({
      ion,
      molPerM3: ionMolPerM3({ ion, kgPerM3: mgPerL / 1000 }),
    });
    const water = conductivityOfIons([of('Ca', 40), of('Mg', 8), of('HCO3', 162)]);
    expect(Math.abs(water.chargeImbalance)).toBeLessThan(0.01);
    expect(water.ionicStrengthMolPerM3).toBeCloseTo(3.98, 1);
    expect(water.conductivitySPerM).toBeLessThan(water.apartSPerM);
    expect(water.uSPerM / water.conductivitySPerM).toBeCloseTo(0.02, 12);
  });

  it.each([
    [[]],
    [[{ ion: 'Na', molPerM3: 1 }]],
    [[{ ion: 'Cl', molPerM3: 1 }]],
    [salt('Na', 'Cl', 10.1)],
    [salt('Mg', 'SO4', 6)],
    [
      [
        { ion: 'Na', molPerM3: -1 },
        { ion: 'Cl', molPerM3: 1 },
      ],
    ],
    [salt('Na', 'Cl', Number.NaN)],
  ] as const)('refuses %j', (ions) => {
    expect(() => conductivityOfIons(ions)).toThrow(OutsideRange);
  });

  it.each([-0.1, 10.1, Number.NaN])('the law of one to one is not known at %d mol/m³', (molPerM3) => {
    expect(() => onsagerSM2PerMol({ limitingSM2PerMol: 0.015, molPerM3 })).toThrow(OutsideRange);
    expect(() => onsagerSM2PerMol({ limitingSM2PerMol: 0, molPerM3: 1 })).toThrow(OutsideRange);
  });

  it('pure water conducts least of all', () => {
    expect((pureWaterConductivitySPerM() * 1e4).toFixed(3)).toBe('0.055');
  });
});

describe('a reading of conductivity', () => {
  it('at 25 °C is itself; colder water is told higher', () => {
    const at = (temperatureC: number) => conductivityAt25SPerM({ conductivitySPerM: 0.02, temperatureC });
    expect(at(25)).toBe(0.02);
    expect(at(20)).toBeGreaterThan(at(21));
    for (const temperatureC of [14.9, 30.1, Number.NaN]) expect(() => at(temperatureC)).toThrow(OutsideRange);
    expect(() => conductivityAt25SPerM({ conductivitySPerM: -1, temperatureC: 25 })).toThrow(OutsideRange);
  });

  it('solids are a range: 200 µS/cm is 100 to 140 mg/L', () => {
    const { lowKgPerM3, highKgPerM3 } = dissolvedSolidsKgPerM3(200e-4);
    expect([lowKgPerM3, highKgPerM3]).toEqual([expect.closeTo(0.1, 12), expect.closeTo(0.14, 12)]);
    expect(() => dissolvedSolidsKgPerM3(Number.NaN)).toThrow(OutsideRange);
  });

  it('differs from an analysis at more than three u, on either side', () => {
    const against = (value: number) =>
      readingAgainstIons({ reading: { value, u: 3e-4 }, ions: { value: 0.02, u: 4e-4 } });
    expect(against(0.0214)).toMatchObject({ uSPerM: expect.closeTo(5e-4, 12), differ: false });
    expect(against(0.0216).differ).toBe(true);
    expect(against(0.0184)).toMatchObject({ inU: expect.closeTo(-3.2, 9), differ: true });
    expect(() => readingAgainstIons({ reading: { value: 1, u: 0 }, ions: { value: 1, u: 0 } })).toThrow(
      OutsideRange,
    );
    expect(() => against(Number.NaN)).toThrow(OutsideRange);
  });
});

describe('silver', () => {
  it('charge and silver lead back to each other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-9, max: 1e-3, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (silverKg, currentEfficiency) => {
          const chargeC = chargeForSilverC({ silverKg, currentEfficiency });
          expect(silverDissolvedKg({ chargeC, currentEfficiency }) / silverKg).toBeCloseTo(1, 13);
        },
      ),
    );
  });

  const wall = { lossMPerS: 0.03 / 86_400 / 14, areaPerVolumePerM: 14 };

  it('0.2 to 0.05 mg/L takes 46 days at 3 % a day and 139 at 1 %', () => {
    const days = (perDay: number) =>
      timeForBiocideS({
        fromKgPerM3: 2e-4,
        toKgPerM3: 5e-5,
        lossMPerS: perDay / 86_400 / 14,
        areaPerVolumePerM: 14,
      }) / 86_400;
    expect(days(0.03).toFixed(0)).toBe('46');
    expect(days(0.01).toFixed(0)).toBe('139');
  });

  it('what is left, how long it takes and how fast it goes are one law', () => {
    const timeS = 40 * 86_400;
    const left = biocideLeftKgPerM3({ ...wall, fromKgPerM3: 2e-4, timeS });
    expect(timeForBiocideS({ ...wall, fromKgPerM3: 2e-4, toKgPerM3: left }) / timeS).toBeCloseTo(1, 12);
    const fitted = wallLossFromSamples({
      first: { value: 2e-4, u: 1e-5 },
      second: { value: left, u: 0 },
      timeS,
      areaPerVolumePerM: 14,
    });
    expect(fitted.lossMPerS / wall.lossMPerS).toBeCloseTo(1, 12);
    expect(fitted.uMPerS * 14 * timeS).toBeCloseTo(0.05, 12);
  });

  it('without a loss it stays for ever, and rising samples give a loss below zero', () => {
    const none = { lossMPerS: 0, areaPerVolumePerM: 14, fromKgPerM3: 2e-4 };
    expect(biocideLeftKgPerM3({ ...none, timeS: 1e9 })).toBe(2e-4);
    expect(timeForBiocideS({ ...none, toKgPerM3: 1e-4 })).toBe(Number.POSITIVE_INFINITY);
    expect(timeForBiocideS({ ...none, toKgPerM3: 2e-4 })).toBe(0);
    const rising = { first: { value: 1e-4, u: 1e-5 }, second: { value: 1.2e-4, u: 1e-5 } };
    expect(wallLossFromSamples({ ...rising, timeS: 86_400, areaPerVolumePerM: 14 }).lossMPerS).toBeLessThan(
      0,
    );
  });

  it('refuses what is not a loss', () => {
    const stood = { ...wall, fromKgPerM3: 2e-4 };
    expect(() => timeForBiocideS({ ...stood, toKgPerM3: 3e-4 })).toThrow(OutsideRange);
    expect(() => timeForBiocideS({ ...stood, toKgPerM3: 0 })).toThrow(OutsideRange);
    expect(() => biocideLeftKgPerM3({ ...stood, timeS: -1 })).toThrow(OutsideRange);
    expect(() => biocideLeftKgPerM3({ ...stood, lossMPerS: Number.NaN, timeS: 1 })).toThrow(OutsideRange);
    expect(() => biocideLeftKgPerM3({ ...stood, areaPerVolumePerM: 0, timeS: 1 })).toThrow(OutsideRange);
    expect(() => silverDissolvedKg({ chargeC: 1, currentEfficiency: 1.1 })).toThrow(OutsideRange);
    expect(() => chargeForSilverC({ silverKg: -1, currentEfficiency: 1 })).toThrow(OutsideRange);
  });
});
