// The strip after an entry: what was kept, what it changed, and Undo in one press.
import { formatFigure, roundCoverDays } from '../../../ground/units/index.ts';
import type { KeptSheet } from '../../../papers/index.ts';
import { undoLast } from '../entering.ts';
import { words } from '../language.ts';
import { entered, stripOpen, told } from '../open.ts';
import { Phrased } from './phrased.tsx';

export function UndoStrip() {
  const all = entered.use();
  const isOpen = stripOpen.use();
  const last = isOpen ? (all.at(-1) ?? null) : null;
  const word = told.use();
  const { log } = words();
  return (
    <div className="strip no-print" aria-live="polite">
      {word === null && last !== null && (
        <div className="strip-row">
          <div>
            <p>
              <b>
                <Phrased text={log.kept(last.sheet.line.text)} />
              </b>{' '}
              <span className="soft">{log.keptLine(last.sheet.line.ref)}</span>
            </p>
            <Changes sheet={last.sheet} />
          </div>
          <div className="flow">
            <button type="button" className="b" onClick={() => void undoLast()}>
              {log.undoWhat}
            </button>
            <button type="button" className="b small" onClick={() => stripOpen.set(false)}>
              {log.close}
            </button>
          </div>
        </div>
      )}
      {word !== null && (
        <div className="strip-row">
          <p>{word}</p>
          <button type="button" className="b small" onClick={() => told.set(null)}>
            {log.close}
          </button>
        </div>
      )}
    </div>
  );
}

export function Changes({ sheet }: { readonly sheet: KeptSheet }) {
  const { log, today } = words();
  if (sheet.stores.length + sheet.cover.length + sheet.became.length === 0) return null;
  const days = (value: number | null) => (value === null ? '∞' : today.days(roundCoverDays(value)));
  return (
    <p className="xs changes">
      {sheet.stores.slice(0, 4).map(({ before, after }) => (
        <span key={after.id} className="qty">
          {after.id} {litres(after)}
          {before !== null && ` (${log.before} ${litres(before)})`}
        </span>
      ))}
      {sheet.became.map((sentence) => (
        <b key={sentence}>{sentence}</b>
      ))}
      {sheet.cover.map((cover) => (
        <span key={cover.grade} className="qty">
          {cover.grade} {days(cover.afterQ05)} ({log.before} {days(cover.beforeQ05)})
        </span>
      ))}
    </p>
  );
}

function litres({ valueL, u95L }: { readonly valueL: number; readonly u95L: number }): string {
  return formatFigure({ value: valueL, u95: u95L, unit: 'L' }, { style: 'screen' });
}
