// Amounts of a line: read, given their doubt, and held against what the store can hold; one without a unit waits.
import { convert, unitNamesOf } from '../../ground/units/index.ts';
import type { Store } from '../../outpost/index.ts';
import { readCellAmount, spellAmount } from './cell-amount.ts';
import { isNothing, readCellNumber } from './cell-number.ts';
import { quoted } from './inbox-finding.ts';
import { unitOf } from './match-heading.ts';
import type { RowReading } from './row-reading.ts';
import { amountUnits, type Sheet } from './sheet.ts';

const NO_UNITS: ReadonlySet<string> = new Set();
const unitsOf = new WeakMap<Sheet, ReadonlySet<string>>();

function allowedUnits(sheet: Sheet): ReadonlySet<string> {
  const known = unitsOf.get(sheet) ?? amountUnits(sheet.vocabulary);
  unitsOf.set(sheet, known);
  return known;
}

export interface AmountPlace {
  readonly column: number;
  /** Stores that the amount is in or goes through: it cannot be more than any of them holds. */
  readonly stores: readonly string[];
  /** Columns of unit and ± beside it; −1 for none. */
  readonly unitColumn: number;
  readonly doubtColumn: number;
}

/** As a person would type it; null where it was said why not. */
export function rowAmount(reading: RowReading, place: AmountPlace): string | null {
  const { sheet } = reading;
  const { column } = place;
  const text = reading.cell(column);
  const beside = reading.cell(place.unitColumn).trim();
  const unit = beside === '' ? (sheet.columns[column]?.meaning?.unit ?? null) : unitOf(beside);
  const rule = { ...ruleOf(sheet, column), unit, allowed: allowedUnits(sheet) };
  const asked = beside !== '' && unit === null ? { ...rule, unit: quoted(beside), allowed: NO_UNITS } : rule;
  const read = readCellAmount(text, asked);
  if (!read.ok) {
    if (read.bareValue === undefined) reading.sayFault(read.fault, column);
    else sayUnitless(reading, read.bareValue, { ...place, received: quoted(text.trim()) });
    return null;
  }
  const u95 = rowDoubt(reading, place.doubtColumn) ?? read.amount.u95;
  if (Number.isNaN(u95)) return null;
  if (!fitsIn(reading, read.amount, { ...place, received: quoted(text.trim()) })) return null;
  return spellAmount({ ...read.amount, u95 });
}

const NO_RULE = { decimal: null, commaSeen: false } as const;

export function ruleOf(sheet: Sheet, column: number) {
  return sheet.decimals[column] ?? NO_RULE;
}

/** NaN where it was said that it is none. */
function rowDoubt(reading: RowReading, column: number): number | null {
  const text = reading.cell(column);
  if (isNothing(text)) return null;
  const read = readCellNumber(text.replace(/^\s*(?:\u00B1|\+\/?-)/, ''), ruleOf(reading.sheet, column));
  if (read.ok && read.value > 0) return read.value;
  reading.sayFault(
    read.ok ? { code: 'cell-no-number', data: { received: quoted(text) } } : read.fault,
    column,
  );
  return Number.NaN;
}

/** Milligrams for one of a unit; null for a count, which depends on its counter. */
export function mgPerUnit(unit: string, mgPerL: number): number | null {
  if (unitNamesOf('mass').includes(unit)) return convert(1, unit, 'mg');
  return unitNamesOf('volume').includes(unit) ? convert(1, unit, 'L') * mgPerL : null;
}

interface Received extends AmountPlace {
  readonly received: string;
}

function fitsIn(
  reading: RowReading,
  amount: { readonly value: number; readonly unit: string },
  { column, stores, received }: Received,
): boolean {
  const { fold } = reading.sheet.vocabulary;
  const factor = factorOf(reading.sheet, amount.unit);
  if (factor === null || reading.isFact) return true;
  const massMg = Math.round(amount.value * factor);
  for (const store of stores) {
    const capacityMg = fold.stores.get(store)?.facts.capacityMg;
    if (capacityMg === undefined || massMg <= capacityMg) continue;
    reading.say('cell-over-capacity', column, { received, massMg, store, capacityMg, mgPerL: fold.mgPerL });
    return false;
  }
  return true;
}

const factors = new WeakMap<Sheet, Map<string, number | null>>();

function factorOf(sheet: Sheet, unit: string): number | null {
  const known = factors.get(sheet) ?? new Map<string, number | null>();
  factors.set(sheet, known);
  const found = known.get(unit);
  if (found !== undefined) return found;
  const factor = mgPerUnit(unit, sheet.vocabulary.fold.mgPerL);
  known.set(unit, factor);
  return factor;
}

/** Units that somebody may have meant. */
const MEANT = ['L', 'kg', 'lb', 'mL'] as const;
/** Nobody writes a few drops into a sheet of water. */
const LEAST_ML = 50;

/** What the bare number would be in each unit, beside what the store can hold; it stays with the line that waits. */
function sayUnitless(reading: RowReading, value: number, { column, stores, received }: Received): void {
  const { fold } = reading.sheet.vocabulary;
  const store: Pick<Store, 'id'> | undefined = fold.index.stores.get(stores[0] ?? '');
  const facts = fold.stores.get(stores[0] ?? '')?.facts;
  const data: Record<string, string | number | null> = { received, store: stores[0] ?? store?.id ?? null };
  for (const unit of MEANT) {
    const factor = mgPerUnit(unit, fold.mgPerL);
    const massMg = Math.round(value * (factor ?? 0));
    if (factor === null || !Number.isSafeInteger(massMg) || massMg > MOST_MG) continue;
    if (unit === 'mL' && value < LEAST_ML) continue;
    data[`as ${unit}`] = massMg / fold.mgPerL;
    const capacity = facts === undefined ? {} : { store: facts.id, capacityMg: facts.capacityMg };
    reading.possible = [...reading.possible, { received, unit, massMg, ...capacity }];
  }
  data['capacityL'] = facts === undefined ? null : facts.capacityMg / fold.mgPerL;
  reading.say('cell-unit-missing', column, data);
}

/** No store of an outpost holds a hundred tonnes. */
const MOST_MG = 100_000_000_000;
