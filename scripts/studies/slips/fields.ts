// Table of what the lines of a log carry: amounts and readings with their units, signed numbers, stores, grades.
import type { Line } from './field-log.ts';

export type Path = readonly (string | number)[];

export interface NumberAt {
  readonly path: Path;
  readonly value: number;
  /** Litres, millilitres, or counts of so many litres; null for readings of the cabin. */
  readonly unit: 'L' | 'mL' | { readonly litresPerCount: number } | null;
  readonly instrument: string | null;
  readonly store: string | null;
}

const counters: Readonly<Record<string, { instrument: string; unit: NumberAt['unit'] }>> = {
  condensate_totaliser_L: { instrument: 'condensate', unit: 'L' },
  product_meter_L: { instrument: 'product', unit: 'L' },
  dispenser_strokes: { instrument: 'strokes', unit: { litresPerCount: 0.025 } },
  flushes: { instrument: 'flushes', unit: { litresPerCount: 0.05 } },
  electrolyser_feed_L: { instrument: 'electrolyser-feed', unit: 'L' },
  RH_percent: { instrument: 'humidity', unit: null },
  T_C: { instrument: 'cabin-temperature', unit: null },
  P_kPa_abs: { instrument: 'cabin-pressure', unit: null },
};

/** Fields that carry an amount of water, by kind of line. */
const amounts: Readonly<Record<string, readonly string[]>> = {
  container_empty: ['residual_L'],
  weigh: ['litres'],
  gauge_pvt: ['litres'],
  waste_full: ['litres'],
  tank_declared_empty: ['residual_L'],
  transfer: ['litres'],
  bag_recovery: ['litres'],
  waste_transfer: ['litres'],
  reserve_draw: ['litres'],
  sample: ['volume_mL'],
  rebiocide: ['dose_mL_each'],
};
const lists: Readonly<Record<string, readonly string[]>> = {
  opening_balance: ['stores'],
  berth: ['stores'],
  dock: ['water_bags'],
  waste_transfer: ['from', 'to'],
};

export function at(line: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (inner, key) => (inner as Record<string | number, unknown> | undefined)?.[key],
    line,
  );
}

/** The line with another value at a place. */
export function withAt(line: Line, path: Path, value: unknown): Line {
  const copy = JSON.parse(JSON.stringify(line)) as Record<string | number, unknown>;
  const last = path.at(-1) ?? '';
  (at(copy, path.slice(0, -1)) as Record<string | number, unknown>)[last] = value;
  return copy as unknown as Line;
}

/** Numbers of a line that say how much water, or what an instrument of the day line read; zeros and what was not read are none. */
export function numbersOf(line: Line): NumberAt[] {
  const found: NumberAt[] = [];
  const add = (path: Path, unit: NumberAt['unit'], instrument: string | null, store: string | null) => {
    const value = at(line, path);
    if (typeof value === 'number' && value !== 0) found.push({ path, value, unit, instrument, store });
  };
  const store = typeof line['store'] === 'string' ? line['store'] : null;
  for (const [field, { unit, instrument }] of Object.entries(counters)) {
    if (line.kind === 'daily') add([field], unit, instrument, null);
    if (line.kind === 'container_empty') add(['counters', field], unit, instrument, store);
  }
  if (line.kind === 'opening_balance') add(['condensate_totaliser_L'], 'L', 'condensate', null);
  for (const field of amounts[line.kind] ?? []) add([field], field.includes('mL') ? 'mL' : 'L', null, store);
  for (const list of lists[line.kind] ?? [])
    for (const [k, item] of (line[list] as readonly { id: string }[]).entries())
      add([list, k, 'litres'], 'L', null, item.id);
  return found;
}

/** Numbers of which the log takes either sign. */
export function signedOf(line: Line): NumberAt[] {
  const fields = {
    daily: ['T_C'],
    gauge_pvt: ['bottle_before_C', 'bottle_after_C', 'tank_before_C', 'tank_after_C'],
    alarm: ['temp_C'],
    transfer_setup: ['drop_kPa'],
  }[line.kind];
  return (fields ?? []).flatMap((field) => {
    const value = line[field];
    const instrument = counters[field]?.instrument ?? null;
    return typeof value === 'number' && value !== 0
      ? [{ path: [field], value, unit: null, instrument, store: null }]
      : [];
  });
}

/** Places of a line that name one store of several alike. */
export function storesOf(line: Line): { path: Path; id: string }[] {
  const found: { path: Path; id: string }[] = [];
  const add = (path: Path) => {
    const id = at(line, path);
    if (typeof id === 'string' && familyOf(id) !== null) found.push({ path, id });
  };
  if (line.kind === 'berth' || line.kind === 'dock') return found;
  add(['store']);
  for (const end of ['from', 'to']) {
    if (line.kind === 'waste_transfer')
      for (const k of (line[end] as readonly unknown[]).keys()) add([end, k, 'id']);
    else if (line.kind !== 'reserve_draw') add([end]);
  }
  return found;
}

/** Names that are taken for one another: C-06 and C-08, FA and FB. */
const FAMILIES = [/^C-\d/, /^W-\d/, /^R\d/, /^F[AB]$/, /^V-\d/];

export function familyOf(id: string): RegExp | null {
  return FAMILIES.find((family) => family.test(id)) ?? null;
}

/** Places of a line that name a grade: a letter, or the word on a label. */
export function gradesOf(line: Line): Path[] {
  const found: Path[] = [];
  for (const field of ['grade', 'was', 'from_grade', 'to_grade', 'from_label', 'to_label'])
    if (typeof line[field] === 'string' && /[A-Za-z]/.test(line[field] as string)) found.push([field]);
  for (const list of ['stores', 'water_bags'])
    for (const [k, item] of ((line[list] as readonly { grade?: string }[] | undefined) ?? []).entries())
      if (typeof item.grade === 'string' && item.grade !== '-') found.push([list, k, 'grade']);
  return found;
}
