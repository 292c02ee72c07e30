// How a figure was reckoned: its method, its inputs, its ±, and the entries that it rests on.
import { roundAtPlace, roundFigure, styled, unitSign } from '../../../ground/units/index.ts';
import type { BookLine, BookSheet, SheetFigure } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Phrased } from '../parts/phrased.tsx';
import { type Place, sheetPath } from '../place.ts';

/** Entries that are shown; the others are counted. */
const MOST = 12;

interface Told {
  readonly figure: SheetFigure;
  readonly of: string;
  readonly text: string;
  readonly place: Place;
}

export function Reckoned({ figure, of, text, place }: Told) {
  const { reckoned } = words();
  const { because, u95 } = figure;
  return (
    <Dialog title={reckoned.title} wide>
      <div className="stack">
        <p className="md">
          {of}: <b className="qty">{text}</b>
        </p>
        <p>
          {u95 === null ? (figure.unit === 'd' ? '' : reckoned.noDoubt) : reckoned.doubt}
          {u95 !== null && (
            <>
              {' '}
              {reckoned.band} <span className="qty">{bound(figure, -1)}</span> {reckoned.bandTo}{' '}
              <span className="qty">{bound(figure, 1)}</span>.
            </>
          )}
        </p>
        <h3>{reckoned.method}</h3>
        <p>{reckoned.methods[because.method] ?? because.method}</p>
        {because.inputs.length > 0 && (
          <>
            <h3>{reckoned.inputs}</h3>
            <dl className="pairs">
              {because.inputs.map(({ name, value, unit }) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{input(value, unit)}</dd>
                </div>
              ))}
            </dl>
          </>
        )}
        <h3>{reckoned.entries}</h3>
        <Entries ids={because.entries} place={place} />
      </div>
    </Dialog>
  );
}

/** An end of the 95 % interval, at the place to which the figure is rounded. */
function bound({ value, u95, unit }: SheetFigure, side: -1 | 1): string {
  const { place } = roundFigure({ value, u95 });
  return `${styled(roundAtPlace(value + side * (u95 ?? 0), place), 'screen')}\u00A0${unitSign(unit)}`;
}

function input(value: number | string | null, unit: string): string {
  if (value === null) return '–';
  if (typeof value === 'string') return value;
  const said = styled(roundFigure({ value, u95: null }).value, 'screen');
  return unit === '' ? said : `${said}\u00A0${unitSign(unit)}`;
}

function Entries({ ids, place }: { readonly ids: readonly string[]; readonly place: Place }) {
  const { reckoned } = words();
  const sheet = useSheet<BookSheet>(ids.length === 0 ? null : sheetPath('book', place, { most: '99999' }));
  if (ids.length === 0) return <p className="soft">{reckoned.noEntries}</p>;
  const wanted = new Set(ids);
  const lines = (sheet.data?.lines ?? []).filter(({ id }) => wanted.has(id)).reverse();
  return (
    <>
      <p className="soft">{reckoned.count(ids.length)}</p>
      <ul className="plain">
        {lines.slice(0, MOST).map((line) => (
          <Line key={line.id} line={line} />
        ))}
      </ul>
      {lines.length > MOST && <p className="soft">{reckoned.more(lines.length - MOST)}</p>}
    </>
  );
}

function Line({ line }: { readonly line: BookLine }) {
  return (
    <li>
      <b className="nowrap">{line.ref}</b> <span className="soft nowrap">{line.happened}</span>{' '}
      <Phrased text={line.text} />
    </li>
  );
}
