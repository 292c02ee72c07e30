// What the tables of minerals, conductivity and silver are held against.
import {
  conductivityAt25SPerM,
  conductivityOfIons,
  hardnessKgPerM3,
  IONS,
  type IonName,
  onsagerSM2PerMol,
  pureWaterConductivitySPerM,
  silverDissolvedKg,
} from '../../src/ground/physics/index.ts';
import type { Subject } from './subject.ts';

const KG_PER_M3 = 1e-3;
const S_M2_PER_MOL = 1e-4;
const S_PER_M = 1e-4;
const MOL_PER_M3 = 1e3;

const onsager = (limiting: string, molPerL: string): number =>
  onsagerSM2PerMol({
    limitingSM2PerMol: Number(limiting) * S_M2_PER_MOL,
    molPerM3: Number(molPerL) * MOL_PER_M3,
  });

export const SOLUTION: Readonly<Record<string, Subject>> = {
  hardness: (calcium = '', magnesium = '') =>
    hardnessKgPerM3({
      calciumKgPerM3: Number(calcium) * KG_PER_M3,
      magnesiumKgPerM3: Number(magnesium) * KG_PER_M3,
    }) / KG_PER_M3,
  onsagerConductivity: (limiting = '', molPerL = '') => onsager(limiting, molPerL) / S_M2_PER_MOL,
  onsagerSolution: (limiting = '', molPerL = '') =>
    (onsager(limiting, molPerL) * Number(molPerL) * MOL_PER_M3) / S_PER_M,
  saltConductivity: (cation = '', anion = '', equivalentsPerL = '') => {
    const equivalents = Number(equivalentsPerL) * MOL_PER_M3;
    const amount = (ion: IonName) => ({ ion, molPerM3: equivalents / Math.abs(IONS[ion].charge) });
    const ions = [amount(cation as IonName), amount(anion as IonName)];
    return conductivityOfIons(ions).conductivitySPerM / equivalents / S_M2_PER_MOL;
  },
  conductivityAt25: (conductivity = '', temperatureC = '') =>
    conductivityAt25SPerM({
      conductivitySPerM: Number(conductivity) * S_PER_M,
      temperatureC: Number(temperatureC),
    }) / S_PER_M,
  pureWaterConductivity: () => pureWaterConductivitySPerM() / S_PER_M,
  silverDissolved: (ampereHours = '') =>
    silverDissolvedKg({ chargeC: Number(ampereHours) * 3600, currentEfficiency: 1 }) * 1000,
};
