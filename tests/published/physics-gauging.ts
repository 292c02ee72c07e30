// What the tables of gauging are held against; a row has its inputs in the units of its source.
import {
  frameMassKg,
  gasVolumeByInjectionM3,
  gaugeByInjection,
  massBesideFrameKg,
  springStiffnessNPerM,
  swingingMassKg,
  weighByOscillation,
} from '../../src/ground/physics/index.ts';
import type { Subject } from './subject.ts';

const sure = (value: number) => ({ value, u: 0 });

/** A chair whose swing is timed on a fast and on a floating frame, then with a man in it: stiffness N/m, then three periods in s. */
const floatingChair: Subject = (quantity = '', ...inputs) => {
  const [stiffness = Number.NaN, fast = Number.NaN, free = Number.NaN, loaded = Number.NaN] =
    inputs.map(Number);
  const chair = swingingMassKg(stiffness, fast);
  const craft = frameMassKg({ reducedKg: swingingMassKg(stiffness, free), massKg: chair });
  const reduced = swingingMassKg(stiffness, loaded);
  const whole = massBesideFrameKg({ reducedKg: reduced, frameKg: craft });
  const { contentKg } = weighByOscillation({
    periodS: sure(loaded),
    stiffnessNPerM: sure(stiffness),
    carriageKg: sure(chair),
    frameKg: sure(craft),
  });
  const found: Readonly<Record<string, number>> = { chair, craft, reduced, whole, man: contentKg.value };
  return found[quantity] ?? Number.NaN;
};

/** A chair of known mass, its period bare and loaded. */
const fastChair: Subject = (chair = '', bare = '', loaded = '') =>
  weighByOscillation({
    periodS: sure(Number(loaded)),
    stiffnessNPerM: sure(springStiffnessNPerM(Number(chair), Number(bare))),
    carriageKg: sure(Number(chair)),
  }).contentKg.value;

/** Litres of gas, from a bottle in L and pressures in kPa, all at one temperature. */
const pycnometer: Subject = (bottleL = '', bottleKPa = '', tankKPa = '', endKPa = '') => {
  const endPa = Number(endKPa) * 1000;
  const gasM3 = gasVolumeByInjectionM3({
    bottleM3: Number(bottleL) / 1000,
    ...{
      bottleBeforePa: Number(bottleKPa) * 1000,
      bottleAfterPa: endPa,
      bottleBeforeK: 295,
      bottleAfterK: 295,
    },
    ...{ tankBeforePa: Number(tankKPa) * 1000, tankAfterPa: endPa, tankBeforeK: 295, tankAfterK: 295 },
  });
  return gasM3 * 1000;
};

/** u of the water in litres: 210 L tank, 2 L bottle at 700 kPa into 150 kPa; ullage L, u of pressure Pa, u of temperature K. */
const injectionDoubt: Subject = (ullageL = '', gaugePa = '', uK = '') => {
  const [bottleM3, ullageM3] = [0.002, Number(ullageL) / 1000];
  const endPa = (700e3 * bottleM3 + 150e3 * ullageM3) / (bottleM3 + ullageM3);
  const gas = { value: 297.15, u: Number(uK) };
  const { waterM3 } = gaugeByInjection({
    ...{ tankM3: { value: 0.21, u: 0.0003 }, bottleM3: { value: bottleM3, u: 4e-6 } },
    ...{ bottleBeforePa: { value: 700e3, u: 200 }, bottleAfterPa: 'as the tank' },
    ...{
      tankBeforePa: { value: 150e3, u: Number(gaugePa) },
      tankAfterPa: { value: endPa, u: Number(gaugePa) },
    },
    ...{ bottleBeforeK: gas, bottleAfterK: gas, tankBeforeK: gas, tankAfterK: gas },
    vapourPa: { value: 2985, u: 20 },
  });
  return waterM3.u * 1000;
};

export const GAUGING: Readonly<Record<string, Subject>> = {
  fastChair,
  floatingChair,
  injectionDoubt,
  pycnometer,
};
