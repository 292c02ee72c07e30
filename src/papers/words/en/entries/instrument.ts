// English for entries about instruments.
import type { Body } from '../../../../book/index.ts';
import { saidValue } from '../said.ts';
import { type EntryContext, joined } from './context.ts';

export function instrumentCalibrated(body: Body<'instrument-calibrated'>, context: EntryContext): string {
  return joined(`${body.instrument} calibrated`, ...newFigures(body, context), body.how);
}

export function instrumentReplaced(body: Body<'instrument-replaced'>, context: EntryContext): string {
  const { instrument, serial, endedAt, startsAt, reason } = body;
  const unit = unitOf(instrument, context);
  return joined(
    `${instrument} replaced by ${serial}`,
    endedAt == null ? 'the old one not read' : `the old one at ${saidValue(endedAt, unit)}`,
    `the new one at ${saidValue(startsAt, unit)}`,
    ...newFigures(body, context),
    reason,
  );
}

/** The doubts are kept as one standard deviation; what is printed is 95 %. */
const COVERAGE = 2;

function newFigures(
  body: Pick<
    Body<'instrument-calibrated'>,
    'instrument' | 'calibrationRelative' | 'calibrationAbsolute' | 'litresPerCount'
  >,
  context: EntryContext,
): (string | false)[] {
  const { calibrationRelative: relative, calibrationAbsolute: absolute, litresPerCount } = body;
  return [
    relative !== undefined && `good to ${within(100 * COVERAGE * relative, '%')}`,
    absolute !== undefined && `good to ${within(COVERAGE * absolute, unitOf(body.instrument, context))}`,
    litresPerCount !== undefined && `${saidValue(1000 * litresPerCount, 'mL')} a count`,
  ];
}

function within(u95: number, unit: string): string {
  return `\u00B1\u00A0${saidValue(u95, unit)}`;
}

function unitOf(instrument: string, { instruments }: EntryContext): string {
  return instruments?.get(instrument)?.unit ?? '';
}
