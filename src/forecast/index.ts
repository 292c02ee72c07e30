// The door of the forecast: what other rooms may use.
export { type Cover, type CoverQuantiles, coverOf, coverQuantiles } from './cover.ts';
export { type DailyUse, dailyUse, FEWEST_DAYS, MOST_DAYS, NORM_RELATIVE_U } from './daily-use.ts';
export { normNetLPerPersonDay } from './norm-use.ts';
