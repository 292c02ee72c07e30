// The door of the forecast: what other rooms may use.

export { bedCurve, type CurvePoint } from './bed-curve.ts';
export { type BedDate, bedDate, type FeedAhead, feedAhead, type Quantiles } from './bed-date.ts';
export { type BiocideEnds, belowNow, biocideEnds } from './biocide-ends.ts';
export { type Cover, coverOf } from './cover.ts';
export { type CoverAfter, type CoverInDoubt, coverAfter, coversInDoubt, type Reach } from './cover-after.ts';
export { type CoverAtRate, coverAtRates, type DaysAtRate } from './cover-at-rates.ts';
export type { CoverQuantiles } from './cover-quantiles.ts';
export { dailyUse } from './daily-use.ts';
export { usedAhead } from './use-ahead.ts';
