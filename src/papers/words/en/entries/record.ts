// English for entries about the book itself: notes, refusals, anomalies, undo, corrections, decisions, the close of a day.
import type { Amount, Body, CounterReading } from '../../../../book/index.ts';
import { counted, listed } from '../said.ts';
import { type EntryContext, joined, saidAmount, saidBareMass, saidReadings } from './context.ts';

export function note(body: Body<'note'>): string {
  return `note${body.about === undefined ? '' : ` about ${body.about}`}: ${body.text}`;
}

export function refused(body: Body<'refused'>): string {
  return `not done, because of a rule: ${body.what} (${body.rule})`;
}

export function anomaly(body: Body<'anomaly'>): string {
  const stores = body.stores.length === 0 ? '' : `, ${listed(body.stores)}`;
  return `anomaly ${body.anomaly}: ${body.symptom}${stores}`;
}

export function explanation(body: Body<'explanation'>, context: EntryContext): string {
  const { anomaly: of, where, cause, evidence, rateMgPerDay, recoveredMg, expiresDay } = body;
  return joined(
    `explanation${of === undefined ? '' : ` of ${of}`}: ${where}`,
    cause,
    rateMgPerDay !== undefined && `${saidBareMass(rateMgPerDay, context)} a day`,
    recoveredMg !== undefined && `${saidBareMass(recoveredMg, context)} recovered`,
    evidence.length > 0 && `rests on ${counted(evidence.length, 'entry', 'entries')}`,
    expiresDay !== undefined && `to be looked at again on Day ${expiresDay}`,
  );
}

/** By site and number where the context knows them; ids are long, and their last part is enough to find the line. */
function named(id: string, { refOf }: EntryContext): string {
  return refOf?.(id) ?? `\u2026${id.slice(-8)}`;
}

export function undo(body: Body<'undo'>, context: EntryContext): string {
  return joined(`undo of entry ${named(body.target, context)}`, body.reason);
}

export function correction(body: Body<'correction'>, context: EntryContext): string {
  const target = context.targetOf?.(body.target) ?? null;
  const change = target === null ? '' : `, ${saidChange(target.body, body.body, context)}`;
  return `correction of entry ${named(body.target, context)}${change === ', ' ? '' : change}: ${body.reason}`;
}

type Fields = Readonly<Record<string, unknown>>;

/** `from 2.00 L (80 strokes) to 200 mL (8 strokes)`, `strokes from 430 to 455`; what stayed as it was is not told. */
function saidChange(was: unknown, is: unknown, context: EntryContext): string {
  const [before, after] = [was as Fields, is as Fields];
  const changed = Object.keys(after).filter(
    (key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]),
  );
  return listed(changed.flatMap((key) => saidField([before[key], after[key]], context)));
}

function saidField([was, is]: readonly [unknown, unknown], context: EntryContext): readonly string[] {
  if (isAmount(was) && isAmount(is))
    return [`from ${saidAmount(was, context)} to ${saidAmount(is, context)}`];
  if (!Array.isArray(was) || !Array.isArray(is)) return [];
  const old = new Map((was as CounterReading[]).map(({ instrument, value }) => [instrument, value]));
  return (is as CounterReading[]).flatMap((reading) => {
    const before = old.get(reading.instrument) ?? null;
    if (before === reading.value) return [];
    const said = saidReadings([{ ...reading, value: before }], context);
    return [`${said} to ${saidReadings([reading], context).slice(reading.instrument.length + 1)}`];
  });
}

function isAmount(value: unknown): value is Amount {
  return typeof value === 'object' && value !== null && 'massMg' in value && 'raw' in value;
}

export function duplicateDecision(body: Body<'duplicate-decision'>, context: EntryContext): string {
  const pair = `${named(body.first, context)} and ${named(body.second, context)}`;
  return body.decision === 'merge' ? `decided: ${pair} are one act` : `decided: ${pair} both happened`;
}

export function dayClose(body: Body<'day-close'>): string {
  const figures = body.figures.length === 0 ? '' : counted(body.figures.length, 'figure');
  return joined(
    `close of ${body.what === 'month' ? `the month with Day ${body.day}` : `Day ${body.day}`}`,
    figures,
  );
}
