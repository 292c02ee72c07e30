// How soon hot water scalds: a caution for pages and tests. The room does not give it out; a warning takes the outpost's limit.
import { exp, log } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';

/** Temperature of the water in °C, and seconds until skin is burnt through. */
const TABLE: readonly (readonly [number, number])[] = [
  [45, 3 * 3600],
  [47, 45 * 60],
  [48, 20 * 60],
  [49, 10 * 60],
  [51, 4.2 * 60],
  [55, 30],
  [60, 5],
];

/**
 * The time in which water of a temperature burns skin through, between the points of the table: ln t on a straight line in T.
 * @param temperatureC °C, 45 to 60
 * @returns s
 * @throws OutsideRange outside that range and for NaN
 * @source moritz-henriques
 * @example scaldTimeS(50) // 389
 */
export function scaldTimeS(temperatureC: number): number {
  const [low, high] = around(temperatureC, ([celsius]) => celsius, {
    quantity: 'temperature of hot water',
    unit: '°C',
  });
  const part = (temperatureC - low[0]) / (high[0] - low[0]);
  return exp(log(low[1]) + part * (log(high[1]) - log(low[1])));
}

/**
 * The temperature at which water burns skin through in a time. The inverse of `scaldTimeS`.
 * @param timeS s, 5 to 10 800
 * @returns °C
 * @throws OutsideRange outside that range and for NaN
 * @source moritz-henriques
 * @example scaldTemperatureC(60) // 53.7
 */
export function scaldTemperatureC(timeS: number): number {
  const [low, high] = around(timeS, ([, seconds]) => seconds, { quantity: 'time in hot water', unit: 's' });
  const part = (log(timeS) - log(low[1])) / (log(high[1]) - log(low[1]));
  return low[0] + part * (high[0] - low[0]);
}

/**
 * The same by a curve through those data: T = 15.005 + 0.51907 L + 352.97 / L with L = ln(1000 t), within 1.3 K of them.
 * @param timeS s, 5 to 10 800
 * @returns °C
 * @throws OutsideRange outside that range and for NaN
 * @source astm-c1055 (coefficients from memory)
 * @example scaldCurveC(30) // 54.6
 */
export function scaldCurveC(timeS: number): number {
  around(timeS, ([, seconds]) => seconds, { quantity: 'time in hot water', unit: 's' });
  const l = log(1000 * timeS);
  return 15.005 + 0.51907 * l + 352.97 / l;
}

type Row = readonly [number, number];

/** The two rows of the table between which a value lies. */
function around(
  value: number,
  column: (row: Row) => number,
  of: { readonly quantity: string; readonly unit: string },
): readonly [Row, Row] {
  for (const [at, row] of TABLE.entries()) {
    const next = TABLE[at + 1];
    if (next === undefined) break;
    const [one, other] = [column(row), column(next)];
    if (value >= Math.min(one, other) && value <= Math.max(one, other)) return [row, next];
  }
  const ends = TABLE.map(column);
  throw new OutsideRange({
    ...of,
    value,
    low: Math.min(...ends),
    high: Math.max(...ends),
    source: 'moritz-henriques',
  });
}
