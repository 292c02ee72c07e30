// What the cabin air carries by its humidity and temperature at a line, and how much of its doubt each instrument brings.
import type { CounterReading } from '../book/index.ts';
import { vapourDensityKgPerM3 } from '../ground/physics/index.ts';
import type { Instrument, OutpostIndex } from '../outpost/index.ts';

/** A step that is small against the doubts and large against rounding, for the slopes. */
const STEP = 0.01;

export interface AirReading {
  readonly humidity: Instrument;
  readonly temperature: Instrument;
  readonly percent: number;
  readonly massKg: number;
  /** New at every reading, one standard deviation; what the instruments repeat is in the slopes. */
  readonly uKg: number;
  readonly perPercentKg: number;
  readonly perDegreeKg: number;
}

/** Null where one of the two was not read, where a reading is none, or where the file tells no volume of the cabin. */
export function airReading(index: OutpostIndex, readings: readonly CounterReading[]): AirReading | null {
  const humidity = spotOf(index, readings, 'humidity');
  const temperature = spotOf(index, readings, 'temperature');
  const volumeM3 = index.outpost.outpost.cabinVolumeM3;
  if (humidity === null || temperature === null || volumeM3 === undefined) return null;
  const { value: percent } = humidity;
  const { value: temperatureC } = temperature;
  if (!(percent >= 0 && percent <= 100 - STEP && temperatureC >= 0 && temperatureC <= 60 - STEP)) return null;
  const massKg = (atPercent: number, atC: number) =>
    volumeM3 * vapourDensityKgPerM3({ relativeHumidity: atPercent / 100, temperatureC: atC });
  const valueKg = massKg(percent, temperatureC);
  const perPercentKg = (massKg(percent + STEP, temperatureC) - valueKg) / STEP;
  const perDegreeKg = (massKg(percent, temperatureC + STEP) - valueKg) / STEP;
  const ofHumidity = (humidity.instrument.random?.absolute ?? 0) * perPercentKg;
  const ofTemperature = (temperature.instrument.random?.absolute ?? 0) * perDegreeKg;
  return {
    humidity: humidity.instrument,
    temperature: temperature.instrument,
    percent,
    massKg: valueKg,
    uKg: Math.sqrt(ofHumidity * ofHumidity + ofTemperature * ofTemperature),
    perPercentKg,
    perDegreeKg,
  };
}

/** One spot reading of the line, with the instrument that gave it. */
function spotOf(index: OutpostIndex, readings: readonly CounterReading[], measures: Instrument['measures']) {
  for (const { instrument: id, value } of readings) {
    const instrument = index.instruments.get(id);
    if (instrument?.measures === measures && value !== null) return { instrument, value };
  }
  return null;
}
