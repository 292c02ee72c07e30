// English for the sheet *since I last looked*.
import type { SinceSheet } from '../../sheets/since.ts';
import { counted, listed } from './said.ts';

export const sinceLabels = {
  anew: 'TOLD ANEW',
  needs: 'NEW SINCE THEN',
  lines: 'ENTERED SINCE THEN',
  nothing: 'Nothing came in since then.',
} as const;

export function sinceHead(sheet: SinceSheet): string {
  const among = [
    ...(sheet.corrections === 0
      ? []
      : [counted(sheet.corrections, 'undo or correction', 'undos and corrections')]),
    ...(sheet.late === 0 ? [] : [counted(sheet.late, 'late entry', 'late entries')]),
  ];
  const entries = counted(sheet.entries, 'entry', 'entries');
  return `Since ${sheet.since}: ${entries}${among.length === 0 ? '' : `, among them ${listed(among)}`}.`;
}

export const heldSince = (stores: readonly string[]): string => `On HOLD since then: ${listed(stores)}.`;
export const freedSince = (stores: readonly string[]): string => `Off hold since then: ${listed(stores)}.`;
export const toldAnew = (store: string, before: string, after: string): string =>
  `${store} at that time is believed ${after} now; it was believed ${before} then.`;
