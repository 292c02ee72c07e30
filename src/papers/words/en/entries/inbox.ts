// English for entries of the inbox: lines that wait, what became of them, and headings that are known again.
import type { Body } from '../../../../book/index.ts';
import { counted, listed } from '../said.ts';
import { type EntryContext, joined } from './context.ts';

/** Longer lines are shown whole by `inbox show`. */
const LONGEST = 80;

export function waitingLine({ file, line, cells, reasons }: Body<'waiting-line'>): string {
  const said = cells.filter((cell) => cell.trim() !== '').join(' | ');
  const cut = said.length > LONGEST ? `${said.slice(0, LONGEST)}\u2026` : said;
  return `waits in the inbox, ${counted(reasons.length, 'reason')}: ${file} line ${line}: ${cut}`;
}

export function waitingLineSettled(body: Body<'waiting-line-settled'>, { refOf }: EntryContext): string {
  const named = (id: string) => refOf?.(id) ?? `\u2026${id.slice(-8)}`;
  const line = `waiting line ${named(body.line)}`;
  if (body.how === 'dropped') return joined(`${line} dropped`, body.reason);
  return joined(`${line} taken as ${listed(body.entries.map(named))}`, body.reason);
}

export function columnMatching({ columns }: Body<'column-matching'>): string {
  const said = columns
    .filter(({ means }) => means !== '')
    .map(({ heading, means }) => `${heading === '' ? '(no heading)' : heading} = ${means}`);
  return `headings are read so from now on: ${said.join('; ')}`;
}
