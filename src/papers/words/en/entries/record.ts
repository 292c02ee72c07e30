// English for entries about the book itself: notes, refusals, anomalies, undo, corrections, decisions, the close of a day.
import type { Body } from '../../../../book/index.ts';
import { counted, listed } from '../said.ts';
import { type EntryContext, joined, saidBareMass } from './context.ts';

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

/** Ids are long; their last part is enough to find the line, which names the whole of it. */
const short = (id: string): string => `…${id.slice(-8)}`;

export function undo(body: Body<'undo'>): string {
  return joined(`undo of entry ${short(body.target)}`, body.reason);
}

export function correction(body: Body<'correction'>): string {
  return `correction of entry ${short(body.target)}: ${body.reason}`;
}

export function duplicateDecision(body: Body<'duplicate-decision'>): string {
  const pair = `${short(body.first)} and ${short(body.second)}`;
  return body.decision === 'merge' ? `decided: ${pair} are one act` : `decided: ${pair} both happened`;
}

export function dayClose(body: Body<'day-close'>): string {
  const figures = body.figures.length === 0 ? '' : counted(body.figures.length, 'figure');
  return joined(
    `close of ${body.what === 'month' ? `the month with Day ${body.day}` : `Day ${body.day}`}`,
    figures,
  );
}
