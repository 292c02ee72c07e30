// The door of the forecast: what other rooms may use.
export { type Cover, coverOf } from './cover.ts';
export { type CoverQuantiles, coverQuantiles } from './cover-quantiles.ts';
export { type DailyUse, dailyUse, FEWEST_DAYS, MOST_DAYS, NORM_RELATIVE_U } from './daily-use.ts';
export { normUse } from './norm-use.ts';
