// What the words of an entry need to know, and amounts as an entry tells them.
import type { Amount, AnyDraft, CounterReading } from '../../../../book/index.ts';
import { convert, type DayRule, formatFigure, unitSign } from '../../../../ground/units/index.ts';
import { litresOf, saidValue, saidValueAt } from '../said.ts';

export interface EntryContext {
  readonly mgPerL: number;
  readonly dayRule: DayRule | null;
  /** Names of grades by id; without them the ids are shown. */
  readonly gradeNames?: ReadonlyMap<string, string>;
  /** Instruments by id, for the units of their readings; the index of an outpost has such a map. */
  readonly instruments?: ReadonlyMap<string, { readonly unit: string }>;
  /** How people name an entry, from its id; null where it is not known. */
  readonly refOf?: (id: string) => string | null;
  /** An entry that another one corrects, as it was made; null where it is not known. */
  readonly targetOf?: (id: string) => AnyDraft | null;
}

/** An entry keeps one standard deviation; what is printed after ± is two of them, 95 %. */
const COVERAGE = 2;
const volumes: ReadonlySet<string> = new Set(['L', 'mL']);

/** A content or a large amount in litres: `20.5 L`, `0.6 ± 0.4 L`, `21.4 L (21.4 kg)`. */
export function saidContent(amount: Amount, { mgPerL }: Pick<EntryContext, 'mgPerL'>): string {
  return within(amount, mgPerL, 'L') + rawOf(amount);
}

/** An amount that was handled: millilitres below one litre: `200 mL (8 strokes)`. */
export function saidAmount(amount: Amount, { mgPerL }: Pick<EntryContext, 'mgPerL'>): string {
  const unit = amount.massMg > 0 && amount.massMg < mgPerL ? 'mL' : 'L';
  return within(amount, mgPerL, unit) + rawOf(amount);
}

/** Milligrams that stand in an entry without a reading behind them. */
export function saidBareMass(massMg: number, { mgPerL }: Pick<EntryContext, 'mgPerL'>): string {
  const litres = litresOf(massMg, mgPerL);
  return massMg < mgPerL ? saidValueAt(convert(litres, 'L', 'mL'), 0, 'mL') : saidValueAt(litres, -1, 'L');
}

function within(amount: Amount, mgPerL: number, unit: 'L' | 'mL'): string {
  const { massMg, uMg, raw } = amount;
  const asEntered = volumes.has(raw.unit);
  const value = asEntered ? convert(raw.value, raw.unit, unit) : convert(litresOf(massMg, mgPerL), 'L', unit);
  if (uMg !== undefined) {
    const u95 = convert(litresOf(COVERAGE * uMg, mgPerL), 'L', unit);
    return formatFigure({ value, u95, unit }, { style: 'screen' });
  }
  // What was entered as a volume has its own digits; what comes out of another unit gets none that nobody read.
  return asEntered ? saidValue(value, unit) : saidValueAt(value, unit === 'L' ? -2 : 0, unit);
}

function rawOf({ raw }: Amount): string {
  return volumes.has(raw.unit) ? '' : ` (${saidValue(raw.value, unitSign(raw.unit))})`;
}

/** A reading that the counter gave: `strokes 455`, `condensate 951.5 L`, `strokes not read`. */
export function saidReadings(readings: readonly CounterReading[], context: EntryContext): string {
  return readings.map((reading) => saidReading(reading, context)).join(', ');
}

function saidReading({ instrument, value }: CounterReading, context: EntryContext): string {
  if (value === null) return `${instrument} not read`;
  const unit = context.instruments?.get(instrument)?.unit ?? '';
  // `strokes 455`, not `strokes 455 strokes`.
  return `${instrument} ${saidValue(value, unit === instrument ? '' : unit)}`;
}

/** Named values of a sample, a unit or a part: `silver 0.19 mg/L`. */
export function saidValues(
  values: readonly {
    readonly name: string;
    readonly value: number;
    readonly unit: string;
    readonly below?: boolean;
  }[],
): string {
  return values
    .map(
      ({ name, value, unit, below }) => `${name} ${below === true ? 'below ' : ''}${saidValue(value, unit)}`,
    )
    .join(', ');
}

export function saidGrade(grade: string, context: EntryContext): string {
  return context.gradeNames?.get(grade) ?? grade;
}

/** Parts of one line that are there. */
export function joined(...parts: readonly (string | false | undefined)[]): string {
  return parts.filter((each): each is string => typeof each === 'string' && each !== '').join(', ');
}
