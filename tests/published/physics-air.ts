// What the tables of moist air and of condensers are held against.
import {
  bypassFactor,
  type CabinAir,
  cabinAir,
  coilBalance,
  counterflowEffectiveness,
  dewPointC,
  dewPointOfRatioC,
  effectiveSurfaceCoil,
  handbookAir,
  humidityRatio,
  humidityRatioOfVapour,
  humidityRatioOfWetBulb,
  hylandWexlerPa,
  moistDensityKgPerM3,
  moistEnthalpyJPerKg,
  moistVolumeM3PerKg,
  relativeHumidity,
  segmentedCoil,
  standardPressurePa,
  vapourPressurePa,
  vapourSaturationPa,
} from '../../src/ground/physics/index.ts';
import type { Subject } from './subject.ts';

const numbers = (texts: readonly string[]): readonly number[] => texts.map(Number);
const ATMOSPHERE_PA = 101_325;

type OfState = (air: CabinAir, temperatureC: number, ratio: number) => number;

/** In the units of the handbooks: kilojoules. */
const ofState: Readonly<Record<string, OfState>> = {
  W: (_air, _temperatureC, ratio) => ratio,
  h: (air, temperatureC, ratio) => moistEnthalpyJPerKg(air, temperatureC, ratio) / 1000,
  v: moistVolumeM3PerKg,
  rho: moistDensityKgPerM3,
  rh: relativeHumidity,
  td: (air, _temperatureC, ratio) => dewPointOfRatioC(air, ratio),
};

const missing: OfState = () => Number.NaN;

/** A property by temperature and relative humidity. */
const ofHumidity: Subject = (property = '', ...texts) => {
  const [temperatureC = 0, share = 0, pressurePa = 0] = numbers(texts);
  const air = handbookAir(pressurePa);
  return (ofState[property] ?? missing)(air, temperatureC, humidityRatio(air, temperatureC, share));
};

/** A property by temperature and wet bulb. */
const ofWetBulb: Subject = (property = '', ...texts) => {
  const [dryC = 0, wetC = 0, pressurePa = 0] = numbers(texts);
  const air = handbookAir(pressurePa);
  return (ofState[property] ?? missing)(air, dryC, humidityRatioOfWetBulb(air, { dryC, wetC }));
};

/** A property by temperature and humidity ratio. */
const ofRatio: Subject = (property = '', ...texts) => {
  const [temperatureC = 0, ratio = 0, pressurePa = ATMOSPHERE_PA] = numbers(texts);
  return (ofState[property] ?? missing)(handbookAir(pressurePa), temperatureC, ratio);
};

/** Air of a room of 75 m³: kilograms of dry air and of vapour. */
const ofRoom: Subject = (what = '', ...texts) => {
  const [temperatureC = 0, share = 0, pressurePa = 0, volumeM3 = 0] = numbers(texts);
  const air = handbookAir(pressurePa);
  const ratio = humidityRatio(air, temperatureC, share);
  const dryKg = volumeM3 / moistVolumeM3PerKg(air, temperatureC, ratio);
  return what === 'dry' ? dryKg : dryKg * ratio;
};

const saturatedAt = (air: CabinAir, temperatureC: number) => stateAt(air, temperatureC, 1);

function stateAt(air: CabinAir, temperatureC: number, share: number) {
  const ratio = humidityRatio(air, temperatureC, share);
  return { humidityRatio: ratio, enthalpyJPerKg: moistEnthalpyJPerKg(air, temperatureC, ratio) };
}

/** Air of 34 °C and 70 % cooled to the dew point of 22 °C and 50 %, water leaving at 10 °C. */
function cooledAndReheated(quantity: string): number {
  const air = handbookAir(ATMOSPHERE_PA);
  const [first, last] = [stateAt(air, 34, 0.7), stateAt(air, 22, 0.5)];
  const coilC = dewPointC(air, vapourPressurePa(air, 22, 0.5));
  const { heatW } = coilBalance({
    airFlowKgPerS: 1,
    in: first,
    out: saturatedAt(air, coilC),
    condensateJPerKg: 42_020,
  });
  const figures: Readonly<Record<string, number>> = {
    W1: first.humidityRatio,
    W3: last.humidityRatio,
    T2: coilC,
    q: heatW / 1000,
  };
  return figures[quantity] ?? Number.NaN;
}

/** 1250 kg/h of wet air of 37 °C and 50 % cooled to saturation at 15 °C, water leaving at 12 °C. */
function condensingCooler(quantity: string): number {
  const air = handbookAir(ATMOSPHERE_PA);
  const from = stateAt(air, 37, 0.5);
  const airFlowKgPerS = 1250 / 3600 / (1 + from.humidityRatio);
  const out = coilBalance({
    airFlowKgPerS,
    in: from,
    out: saturatedAt(air, 15),
    condensateJPerKg: 4186 * 12,
  });
  return quantity === 'mc' ? out.condensateKgPerS * 3600 : out.heatW / 1000;
}

/** 10 m³/min of air of 30 °C and 80 % cooled to saturation at 14 °C, water leaving at 14 °C; per minute. */
function windowCooler(quantity: string): number {
  const air = handbookAir(ATMOSPHERE_PA);
  const from = stateAt(air, 30, 0.8);
  const airFlowKgPerS = 10 / 60 / moistVolumeM3PerKg(air, 30, from.humidityRatio);
  const out = coilBalance({
    airFlowKgPerS,
    in: from,
    out: saturatedAt(air, 14),
    condensateJPerKg: 4186 * 14,
  });
  const figures: Readonly<Record<string, number>> = {
    ma: airFlowKgPerS * 60,
    mw: out.condensateKgPerS * 60,
    Q: (out.heatW * 60) / 1000,
  };
  return figures[quantity] ?? Number.NaN;
}

/** A coil with bypass and a heater behind it; enthalpies as the source prints them, kJ/kg and g/kg. */
function bypassedCoil(quantity: string): number {
  const airFlowKgPerS = 250 / 60 / 0.892;
  const side = (kJPerKg: number, gPerKg: number) => ({
    enthalpyJPerKg: kJPerKg * 1000,
    humidityRatio: gPerKg / 1000,
  });
  const coil = coilBalance({
    airFlowKgPerS,
    in: side(82.5, 19.6),
    out: side(47.5, 11.8),
    condensateJPerKg: 0,
  });
  const heater = coilBalance({
    airFlowKgPerS,
    in: side(55.7, 11.8),
    out: side(47.5, 11.8),
    condensateJPerKg: 0,
  });
  const figures: Readonly<Record<string, number>> = {
    BF: bypassFactor({ in: 82.5, out: 47.5, coil: 36.6 }),
    TR: (coil.heatW * 3.6) / 14_000,
    heat: heater.heatW / 1000,
    mw: coil.condensateKgPerS * 3600,
  };
  return figures[quantity] ?? Number.NaN;
}

/** A coil and a heater behind it; all states as the source prints them. */
function coilAndHeater(quantity: string): number {
  const side = (kJPerKg: number, humidityRatio: number) => ({
    enthalpyJPerKg: kJPerKg * 1000,
    humidityRatio,
  });
  const coil = coilBalance({
    airFlowKgPerS: 2,
    in: side(110, 0.029),
    out: side(19, 0.0055),
    condensateJPerKg: 20_970,
  });
  const heater = coilBalance({
    airFlowKgPerS: 2,
    in: side(34, 0.0055),
    out: side(19, 0.0055),
    condensateJPerKg: 0,
  });
  const figures: Readonly<Record<string, number>> = {
    mw: coil.condensateKgPerS,
    Qc: coil.heatW / 1000,
    Qh: heater.heatW / 1000,
  };
  return figures[quantity] ?? Number.NaN;
}

/** A wet coil in counterflow, of handbook air: kg/h or kW. */
const wetCoil: Subject = (way = '', quantity = '', ...texts) => {
  const [pressurePa = 0, temperatureC = 0, share = 0, airFlowKgPerS = 0, coolantInC = 0, ...more] =
    numbers(texts);
  const [coolantFlowKgPerS = 0, outer = 0, inner = 0] = more;
  const air = handbookAir(pressurePa);
  const airIn = { temperatureC, humidityRatio: humidityRatio(air, temperatureC, share) };
  const coil = {
    ...{ air, airIn, airFlowKgPerS, coolantInC, coolantFlowKgPerS },
    outerWPerK: outer * 1000,
    innerWPerK: inner * 1000,
  };
  const { condensateKgPerS, heatW } = way === 'cells' ? segmentedCoil(coil) : effectiveSurfaceCoil(coil);
  return quantity === 'm' ? condensateKgPerS * 3600 : heatW / 1000;
};

export const PHYSICS_AIR: Readonly<Record<string, Subject>> = {
  airOfHumidity: ofHumidity,
  airOfRatio: ofRatio,
  airOfRoom: ofRoom,
  airOfVapour: (vapourPa = '', pressurePa = '') =>
    humidityRatioOfVapour(handbookAir(Number(pressurePa)), Number(vapourPa)),
  airOfWetBulb: ofWetBulb,
  bypassedCoil: (quantity = '') => bypassedCoil(quantity),
  coilAndHeater: (quantity = '') => coilAndHeater(quantity),
  condensingCooler: (quantity = '') => condensingCooler(quantity),
  cooledAndReheated: (quantity = '') => cooledAndReheated(quantity),
  counterflowEffectiveness: (transferUnits = '', capacityRatio = '') =>
    counterflowEffectiveness({ transferUnits: Number(transferUnits), capacityRatio: Number(capacityRatio) }),
  handbookSaturation: (temperatureC = '') => hylandWexlerPa(Number(temperatureC)),
  saturatedAir: (temperatureC = '', pressurePa = '') =>
    humidityRatio(cabinAir({ pressurePa: Number(pressurePa) }), Number(temperatureC), 1),
  standardPressure: (altitudeM = '') => standardPressurePa(Number(altitudeM)),
  vapourSaturation: (temperatureC = '') => vapourSaturationPa(Number(temperatureC)),
  wetCoil,
  windowCooler: (quantity = '') => windowCooler(quantity),
};
