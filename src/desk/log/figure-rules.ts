// Figures that say nothing: water that moved and is none, counts that are broken. No reason makes them true.
import type { Fold } from '../../account/index.ts';
import type { Amount, AnyDraft, CounterReading } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { deskFinding } from '../desk-finding.ts';

export function figureRules(fold: Fold, draft: AnyDraft): Finding[] {
  switch (draft.kind) {
    case 'movement':
    case 'push':
      return movedRules(fold, draft.body.amount);
    case 'correction': {
      const { from, amount, readings = [] } = draft.body.body as Corrected;
      const moved = from === undefined || amount === undefined ? [] : movedRules(fold, amount);
      return [...moved, ...readings.flatMap((reading) => readingRules(fold, reading))];
    }
    case 'day-line':
    case 'meter':
      return draft.body.readings.flatMap((reading) => readingRules(fold, reading));
    default:
      return [];
  }
}

interface Corrected {
  readonly from?: unknown;
  readonly amount?: Amount;
  readonly readings?: readonly CounterReading[];
}

function movedRules(fold: Fold, { massMg, raw }: Amount): Finding[] {
  const received = `${raw.value} ${raw.unit}`;
  const where = { where: { field: 'amount' } };
  if (massMg <= 0) return [deskFinding('amount-nothing', { received }, where)];
  return isCountOf(fold, raw.unit) && !Number.isInteger(raw.value)
    ? [deskFinding('figure-not-whole', { received, unit: raw.unit }, where)]
    : [];
}

function readingRules(fold: Fold, { instrument: id, value }: CounterReading): Finding[] {
  const instrument = fold.index.instruments.get(id);
  if (value === null || instrument?.measures !== 'flow') return [];
  const isWhole = instrument.litresPerCount === undefined || Number.isInteger(value);
  if (value >= 0 && isWhole) return [];
  const data = { received: `${value} ${instrument.unit}`, unit: instrument.unit, whole: !isWhole };
  return [deskFinding('figure-not-whole', data, { where: { field: id } })];
}

/** Strokes and flushes are counted, one by one. */
function isCountOf(fold: Fold, unit: string): boolean {
  return fold.index.outpost.instruments.some(
    (instrument) => instrument.litresPerCount !== undefined && instrument.unit === unit,
  );
}
