// Tables of the units and bases in which limits and results are told, and which of them go together.

/** What units measure; only units of one kind are ever turned into one another, save the three of chemistry. */
type Kind =
  | 'mass'
  | 'amount'
  | 'charge'
  | 'count'
  | 'conductivity'
  | 'acidity'
  | 'turbidity'
  | 'colour'
  | 'taste'
  | 'odour';

export interface UnitOfLimit {
  readonly kind: Kind;
  /** One of it is `times / per` of the first unit of its kind: two whole numbers, so that no factor is rounded. */
  readonly times: number;
  readonly per: number;
  /** No water holds more: a figure above it is a slip. */
  readonly most: number;
}

const table = {
  'mg/L': { kind: 'mass', times: 1, per: 1, most: 1e6 },
  'g/L': { kind: 'mass', times: 1000, per: 1, most: 1e3 },
  'µg/L': { kind: 'mass', times: 1, per: 1000, most: 1e9 },
  'ng/L': { kind: 'mass', times: 1, per: 1_000_000, most: 1e12 },
  'mmol/L': { kind: 'amount', times: 1, per: 1, most: 1e5 },
  'mEq/L': { kind: 'charge', times: 1, per: 1, most: 1e5 },
  'CFU/mL': { kind: 'count', times: 1, per: 1, most: 1e12 },
  'CFU/100 mL': { kind: 'count', times: 1, per: 100, most: 1e14 },
  'CFU/250 mL': { kind: 'count', times: 1, per: 250, most: 1e14 },
  'µS/cm': { kind: 'conductivity', times: 1, per: 1, most: 1e6 },
  'mS/cm': { kind: 'conductivity', times: 1000, per: 1, most: 1e3 },
  'mS/m': { kind: 'conductivity', times: 10, per: 1, most: 1e5 },
  pH: { kind: 'acidity', times: 1, per: 1, most: 14 },
  NTU: { kind: 'turbidity', times: 1, per: 1, most: 1e5 },
  'Pt-Co': { kind: 'colour', times: 1, per: 1, most: 1e5 },
  TTN: { kind: 'taste', times: 1, per: 1, most: 1e5 },
  TON: { kind: 'odour', times: 1, per: 1, most: 1e5 },
} as const satisfies Readonly<Record<string, UnitOfLimit>>;

export type LimitUnit = keyof typeof table;
export const LIMIT_UNITS = Object.keys(table) as readonly LimitUnit[];
export const UNITS_OF_LIMITS: ReadonlyMap<string, UnitOfLimit> = new Map(Object.entries(table));

export interface BasisOfLimit {
  readonly kinds: readonly Kind[];
  /** What the mass is that of, the element that it shares with other bases, and its charges. */
  readonly told?: { readonly formula: string; readonly element: string; readonly charge: number };
}

const ION: readonly Kind[] = ['mass', 'amount', 'charge'];
const ELEMENT: readonly Kind[] = ['mass'];
const as = (formula: string, element: string, charge: number): BasisOfLimit => ({
  kinds: formula === element ? ELEMENT : ION,
  told: { formula, element, charge },
});

const bases = {
  /** The thing that the parameter names, and nothing else. */
  'as itself': {
    kinds: ['mass', 'count', 'conductivity', 'acidity', 'turbidity', 'colour', 'taste', 'odour'],
  },
  'as C': as('C', 'C', 1),
  'as N': as('N', 'N', 1),
  'as NO3': as('NO3', 'N', 1),
  'as NO2': as('NO2', 'N', 1),
  'as NH4': as('NH4', 'N', 1),
  'as NH3': { kinds: ['mass', 'amount'], told: { formula: 'NH3', element: 'N', charge: 1 } },
  'as O2': { kinds: ['mass'] },
  'as Ca': { kinds: ION, told: { formula: 'Ca', element: 'Ca', charge: 2 } },
  'as CaCO3': as('CaCO3', 'Ca', 2),
  'as HCO3': as('HCO3', 'C', 1),
  'at 20 °C': { kinds: ['conductivity'] },
  'at 25 °C': { kinds: ['conductivity'] },
  'grown at 22 °C': { kinds: ['count'] },
  'grown at 37 °C': { kinds: ['count'] },
} as const satisfies Readonly<Record<string, BasisOfLimit>>;

export type LimitBasis = keyof typeof bases;
export const LIMIT_BASES = Object.keys(bases) as readonly LimitBasis[];
export const BASES_OF_LIMITS: ReadonlyMap<string, BasisOfLimit> = new Map(Object.entries(bases));

/** Parameters that are told in more ways than one: without its basis such a figure means nothing. */
const NEEDS_BASIS = new Set(['nitrate', 'nitrite', 'ammonia', 'ammonium', 'hardness', 'alkalinity', 'TOC']);

/**
 * The basis of a figure that nobody gave one with; undefined where that would be a guess.
 * @example basisUnlessSaid('silver') // 'as itself'
 * @example basisUnlessSaid('nitrate') // undefined
 */
export function basisUnlessSaid(parameter: string): LimitBasis | undefined {
  // Total organic carbon is carbon by its name.
  if (parameter === 'TOC') return 'as C';
  return NEEDS_BASIS.has(parameter) ? undefined : 'as itself';
}

/** Whether a figure in this unit can be told on this basis: plates are not counted as nitrogen. */
export function fitTogether(unit: string, basis: string): boolean {
  const kind = UNITS_OF_LIMITS.get(unit)?.kind;
  return kind !== undefined && (BASES_OF_LIMITS.get(basis)?.kinds.includes(kind) ?? false);
}
