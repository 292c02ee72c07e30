// How well readings keep what their declared doubt promises: squared innovations over their variance, by way of reading.

/** So many of the last readings are kept. @source methods of sequential accountancy, common practice, no source */
const MOST_READINGS = 60;

/** Normalised squared innovations, the youngest last: each ν² / V, 1 on the mean when all doubts are declared right. */
export type InstrumentRecord = readonly number[];

export function withReading(record: InstrumentRecord, reading: { innovation: number; variance: number }) {
  const { innovation, variance } = reading;
  return variance > 0 ? [...record.slice(1 - MOST_READINGS), (innovation * innovation) / variance] : record;
}

/** Root of the mean: what the declared doubts would have to be multiplied by to fit. NaN without readings. */
export function doubtFactor(record: InstrumentRecord): number {
  let sum = 0;
  for (const square of record) sum += square;
  return Math.sqrt(sum / record.length);
}
