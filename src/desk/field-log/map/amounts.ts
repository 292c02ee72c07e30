// Litres and kilograms of a log as the book keeps them: whole milligrams, with the raw reading and the factor beside it.
import type { Amount } from '../../../book/index.ts';

const MG_PER_KG = 1_000_000;
const ML_PER_L = 1000;

/** All amounts of a log are at cabin temperature; the outpost file states the density there. */
export class Amounts {
  readonly mgPerL: number;

  constructor(waterDensityKgPerM3: number) {
    this.mgPerL = Math.round(waterDensityKgPerM3 * 1000);
  }

  mgOfLitres(litres: number): number {
    return Math.round(litres * this.mgPerL);
  }

  mgOfMillilitres(millilitres: number): number {
    return Math.round((millilitres * this.mgPerL) / ML_PER_L);
  }

  mgOfKilograms(kilograms: number): number {
    return Math.round(kilograms * MG_PER_KG);
  }

  /** `sdL` is one standard deviation; absent or not read: the instrument's own doubt stands. */
  litres(litres: number, sdL?: number | null): Amount {
    const amount = {
      massMg: this.mgOfLitres(litres),
      raw: { value: litres, unit: 'L', mgPerUnit: this.mgPerL },
    };
    return sdL == null ? amount : { ...amount, uMg: this.mgOfLitres(sdL) };
  }

  millilitres(millilitres: number): Amount {
    return {
      massMg: this.mgOfMillilitres(millilitres),
      raw: { value: millilitres, unit: 'mL', mgPerUnit: this.mgPerL / ML_PER_L },
    };
  }
}
