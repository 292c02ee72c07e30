// Every unit that the tool knows: its names, its kind, and the exact rational that leads to the base unit of the kind.

/** What a unit measures. Two units convert into each other only within a kind; mass and volume also need a density. */
export type Dimension =
  | 'mass'
  | 'volume'
  | 'length'
  | 'count'
  | 'pressure'
  | 'temperature'
  | 'time'
  | 'flow'
  | 'mass-flow'
  | 'concentration'
  | 'conductivity'
  | 'plate-count'
  | 'current'
  | 'voltage'
  | 'power'
  | 'energy'
  | 'stiffness'
  | 'acceleration'
  | 'heat-loss'
  | 'fraction';

/**
 * A unit: base = (value + `offset`) × `numerator` / `denominator`, where the offset is a decimal `offsetHundredths` / 100.
 * Only the temperature scales have an offset.
 */
export interface Unit {
  /** The name kept in data: plain ASCII. */
  readonly name: string;
  /** The sign shown on screen. */
  readonly sign: string;
  readonly dimension: Dimension;
  readonly numerator: bigint;
  readonly denominator: bigint;
  readonly offsetHundredths: bigint;
  /** Other spellings that mean this unit and nothing else. */
  readonly alsoWritten: readonly string[];
}

interface UnitLine {
  readonly sign?: string;
  readonly per?: bigint;
  readonly offsetHundredths?: bigint;
  readonly also?: readonly string[];
}

function unit(name: string, dimension: Dimension, numerator: bigint, line: UnitLine = {}): Unit {
  return Object.freeze({
    name,
    sign: line.sign ?? name,
    dimension,
    numerator,
    denominator: line.per ?? 1n,
    offsetHundredths: line.offsetHundredths ?? 0n,
    alsoWritten: Object.freeze([...(line.also ?? [])]),
  });
}

/**
 * Base units: mg, mL, mm, one, Pa, K, s, mL/d, mg/d, ug/L, uS/cm, CFU/mL, A, V, W, J, N/m, m/s2, W/K, %.
 * The factors are definitions, so they are exact: pound 0.45359237 kg, inch 0.0254 m, standard gravity 9.80665 m/s2,
 * US gallon 231 cubic inches, standard atmosphere 101325 Pa, 0 degC = 273.15 K.
 * @source si-brochure (sections 2.3 and 4, from memory), nist-sp-811 (appendix B.8, from memory)
 */
export const UNITS: readonly Unit[] = Object.freeze([
  unit('mg', 'mass', 1n),
  unit('g', 'mass', 1_000n),
  unit('kg', 'mass', 1_000_000n),
  unit('lb', 'mass', 45_359_237n, { per: 100n }),

  unit('mL', 'volume', 1n, { also: ['ml'] }),
  unit('L', 'volume', 1_000n, { also: ['l'] }),
  unit('m3', 'volume', 1_000_000n, { sign: 'm³', also: ['m³'] }),
  unit('gal', 'volume', 3_785_411_784n, { per: 1_000_000n }),

  unit('um', 'length', 1n, { per: 1_000n, sign: 'µm', also: ['µm', 'μm'] }),
  unit('mm', 'length', 1n),
  unit('cm', 'length', 10n),
  unit('m', 'length', 1_000n),
  unit('in', 'length', 254n, { per: 10n }),

  unit('strokes', 'count', 1n, { also: ['stroke'] }),
  unit('flushes', 'count', 1n, { also: ['flush'] }),

  unit('Pa', 'pressure', 1n),
  unit('kPa', 'pressure', 1_000n),
  unit('bar', 'pressure', 100_000n),
  unit('mbar', 'pressure', 100n),
  // lbf/in2 = 0.45359237 × 9.80665 / 0.0254² Pa.
  unit('psi', 'pressure', 44_482_216_152_605n, { per: 6_451_600_000n }),
  unit('atm', 'pressure', 101_325n),

  unit('K', 'temperature', 1n),
  unit('degC', 'temperature', 1n, { sign: '°C', offsetHundredths: 27_315n, also: ['°C', '℃', 'C'] }),
  unit('degF', 'temperature', 5n, { sign: '°F', per: 9n, offsetHundredths: 45_967n, also: ['°F', '℉', 'F'] }),

  unit('s', 'time', 1n),
  unit('min', 'time', 60n),
  unit('h', 'time', 3_600n),
  unit('d', 'time', 86_400n),

  unit('L/min', 'flow', 1_440_000n, { also: ['l/min'] }),
  unit('mL/min', 'flow', 1_440n, { also: ['ml/min'] }),
  unit('L/h', 'flow', 24_000n, { also: ['l/h'] }),
  unit('L/d', 'flow', 1_000n, { also: ['l/d'] }),
  unit('m3/h', 'flow', 24_000_000n, { sign: 'm³/h', also: ['m³/h'] }),

  unit('kg/h', 'mass-flow', 24_000_000n),
  unit('kg/d', 'mass-flow', 1_000_000n),

  unit('ug/L', 'concentration', 1n, { sign: 'µg/L', also: ['µg/L', 'μg/L', 'ug/l', 'µg/l', 'μg/l'] }),
  unit('mg/L', 'concentration', 1_000n, { also: ['mg/l'] }),

  unit('uS/cm', 'conductivity', 1n, { sign: 'µS/cm', also: ['µS/cm', 'μS/cm'] }),
  unit('CFU/mL', 'plate-count', 1n, { also: ['CFU/ml', 'cfu/mL', 'cfu/ml'] }),

  unit('A', 'current', 1n),
  unit('V', 'voltage', 1n),
  unit('W', 'power', 1n),
  unit('kW', 'power', 1_000n),
  unit('J', 'energy', 1n),
  unit('kJ', 'energy', 1_000n),
  unit('Wh', 'energy', 3_600n),
  unit('kWh', 'energy', 3_600_000n),
  unit('N/m', 'stiffness', 1n),
  unit('m/s2', 'acceleration', 1n, { sign: 'm/s²', also: ['m/s²'] }),
  unit('W/K', 'heat-loss', 1n),
  unit('%', 'fraction', 1n),
]);

const byName: ReadonlyMap<string, Unit> = new Map(
  UNITS.flatMap((each) => [each.name, each.sign, ...each.alsoWritten].map((name) => [name, each] as const)),
);

/** The unit of exactly that spelling, or undefined. */
export function findUnit(name: string): Unit | undefined {
  return byName.get(name);
}

/**
 * The unit of that name.
 * @throws RangeError if there is none: a name in code or checked data is always one of the table.
 */
export function unitNamed(name: string): Unit {
  const found = byName.get(name);
  if (found === undefined) throw new RangeError(`"${name}" is not a unit of the table`);
  return found;
}

/** The names of a kind's units, in the order of the table. */
export function unitNamesOf(dimension: Dimension): readonly string[] {
  return namesByDimension.get(dimension) ?? [];
}

const namesByDimension: ReadonlyMap<Dimension, readonly string[]> = new Map(
  UNITS.map(({ dimension }) => [
    dimension,
    Object.freeze(UNITS.filter((each) => each.dimension === dimension).map((each) => each.name)),
  ]),
);

/** The sign for the screen (`µS/cm`); a word that is no unit of the table, such as `days`, is its own sign. */
export function unitSign(name: string): string {
  return byName.get(name)?.sign ?? name;
}
