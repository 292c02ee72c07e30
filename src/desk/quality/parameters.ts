// Parameters that this outpost measures or is limited by, and the units that each is told in.
import type { Fold } from '../../account/index.ts';
import { UNITS_OF_LIMITS } from '../../outpost/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { findName } from '../log/context.ts';

export interface Parameter {
  readonly name: string;
  /** In the order in which they are told: the outpost's own instrument first. */
  readonly units: readonly string[];
}

export function parametersOf({ index, limits }: Pick<Fold, 'index' | 'limits'>): readonly Parameter[] {
  const units = new Map<string, string[]>();
  const add = (name: string, unit: string) => units.set(name, [...(units.get(name) ?? []), unit]);
  for (const { measures, quantity, unit } of index.outpost.instruments)
    if (measures === 'quality' && quantity !== undefined) add(quantity, unit);
  for (const { rows } of limits.sets) for (const { parameter, unit } of rows) add(parameter, unit);
  return [...units].map(([name, all]) => ({ name, units: [...new Set(all)] }));
}

const bare = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]/g, '');
/** Shorter than this a beginning of a name could be anything. */
const LEAST_BEGINNING = 3;

/** `plate-count` is `plate count`, and `cond` is conductivity where nothing else begins so. */
export function findParameter(known: readonly Parameter[], typed: string): Answer<string> {
  const names = known.map(({ name }) => name);
  const same = names.filter((name) => bare(name) === bare(typed));
  const begun =
    bare(typed).length < LEAST_BEGINNING ? [] : names.filter((name) => bare(name).startsWith(bare(typed)));
  const [only] = same.length > 0 ? same : begun;
  if (only !== undefined && (same.length === 1 || (same.length === 0 && begun.length === 1)))
    return yes(only);
  const found = findName('parameter', typed, names);
  if (found.ok) return found;
  const nearest = found.findings.flatMap(
    ({ data }) => (data['nearest'] as readonly string[] | undefined) ?? [],
  );
  const data = { parameter: typed.slice(0, 60), nearest, known: names };
  return no('bad input', deskFinding('parameter-unknown', data, { where: { field: typed.slice(0, 60) } }));
}

/** Units that measure the same as a parameter's own; of one that is new here, all. */
export function fitsUnit(parameter: Parameter | undefined, unit: string): boolean {
  if (parameter === undefined) return true;
  const kinds = parameter.units.map((one) => UNITS_OF_LIMITS.get(one)?.kind);
  const kind = UNITS_OF_LIMITS.get(unit)?.kind;
  const isChemistry = (one: string | undefined) => one === 'mass' || one === 'amount' || one === 'charge';
  return kinds.some((one) => one === kind || (isChemistry(one) && isChemistry(kind)));
}
