// Holm with two beds in its purifier, limits for what is read behind them, and spare beds.
import { HOLM } from './holm.ts';

/** The outpost file of Holm, with beds: the lead had 400 L through it on Day 1, of 500 L. */
export const holmWithBeds = `${HOLM.replace(
  'rejectTo: { port: waste port }, limitLPerDay: 20 }',
  `rejectTo: { port: waste port }, limitLPerDay: 20,
      beds: { positions: [lead, lag], nominalL: 500, capacityDoubtL: 60, leadThroughputOnDayOneL: 400, lagUseShareAfterChange: 0.3 } }`,
)}`;
