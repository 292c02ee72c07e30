// A table of plain texts, the twin of every drawing: it can be read, copied as tab-separated text, and printed.
import { type ReactNode, useState } from 'react';
import { words } from '../language.ts';
import { told } from '../open.ts';
import { safeCell } from './safe-cell.ts';

export interface Column<Row> {
  readonly head: string;
  /** Numbers stand to the right. */
  readonly right?: boolean;
  /** What is copied. */
  readonly text: (row: Row) => string;
  /** What is shown; the text where nothing else is said. */
  readonly show?: (row: Row) => ReactNode;
  /** Left out where there is little room; it stays in the copy. */
  readonly spare?: boolean;
  /** Holds things to press: not on paper. */
  readonly pressed?: boolean;
}

interface Told<Row> {
  readonly caption: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  readonly className?: string;
  readonly classOf?: (row: Row) => string;
  /** The heading beside the table says the same already: it is told to voices only. */
  readonly hideCaption?: boolean;
}

export function Table<Row>({
  caption,
  columns,
  rows,
  keyOf,
  className = '',
  classOf,
  hideCaption = false,
}: Told<Row>) {
  return (
    <div className="table">
      <table className={className}>
        <caption>
          <span className={hideCaption ? 'hidden' : ''}>{caption}</span>
          <button
            type="button"
            className="b small no-print"
            onClick={() => void copyText(asTsv(columns, rows), words().table.copied)}
          >
            {words().table.copy}
          </button>
        </caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.head} scope="col" className={classesOf(column)}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={keyOf(row)} className={classOf?.(row)}>
              {columns.map((column, k) => (
                <Cell key={column.head} column={column} row={row} first={k === 0} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Cell<Row>({
  column,
  row,
  first,
}: {
  readonly column: Column<Row>;
  readonly row: Row;
  readonly first: boolean;
}) {
  const shown = column.show?.(row) ?? column.text(row);
  const told = { className: classesOf(column), 'data-head': column.head };
  return first ? (
    <th scope="row" {...told}>
      {shown}
    </th>
  ) : (
    <td {...told}>{shown}</td>
  );
}

function classesOf<Row>({ right, spare, pressed }: Column<Row>): string {
  const named = [right === true && 'right', spare === true && 'spare', pressed === true && 'no-print'];
  return named.filter((name) => name !== false).join(' ');
}

/** Tab-separated, with headings; a text that a sheet would take for a formula gets an apostrophe before it. */
export function asTsv<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const line = (cells: readonly string[]) => cells.map(safeCell).join('\t');
  return [
    line(columns.map(({ head }) => head)),
    ...rows.map((row) => line(columns.map(({ text }) => text(row)))),
  ].join('\n');
}

export async function copyText(text: string, done: string): Promise<void> {
  await navigator.clipboard.writeText(text);
  told.set(done);
}

/** A drawing and its table: one press changes from one to the other; a voice and the paper get the table as well. */
export function Twin({ picture, table }: { readonly picture: ReactNode; readonly table: ReactNode }) {
  const [asTable, setAsTable] = useState(false);
  return (
    <>
      {asTable ? table : picture}
      <button
        type="button"
        className="b small no-print twin"
        aria-pressed={asTable}
        onClick={() => setAsTable(!asTable)}
      >
        {asTable ? words().table.hide : words().table.show}
      </button>
    </>
  );
}
