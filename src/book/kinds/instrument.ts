// Kinds about instruments: calibrated anew, replaced by another one.
import * as z from 'zod';
import { counterReading, placeName } from './amount.ts';

/** Doubts of the calibration from now on, one standard deviation; absent: those of the outpost file. */
const doubts = {
  calibrationRelative: z.number().min(0).max(1).exactOptional(),
  calibrationAbsolute: z.number().min(0).exactOptional(),
  /** What one count is worth from now on, where the calibration found another figure. */
  litresPerCount: z.number().positive().max(1e6).exactOptional(),
};

/** What was learned of the instrument's error ends here. */
export const instrumentCalibrated = z.strictObject({
  instrument: placeName,
  ...doubts,
  how: z.string().min(1).max(400).exactOptional(),
});

/** Another instrument counts in its place. */
export const instrumentReplaced = z.strictObject({
  instrument: placeName,
  serial: placeName,
  /** Where the old one stood when it was taken off; null or absent: not read. */
  endedAt: counterReading.shape.value.exactOptional(),
  /** Where the new one stands. */
  startsAt: z.number().min(0),
  ...doubts,
  reason: z.string().min(1).max(400).exactOptional(),
});
