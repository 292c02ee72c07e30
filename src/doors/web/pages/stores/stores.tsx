// All stores: which are there, what may be used, how surely; as pictures or as a table.
import { useEffect, useState } from 'react';
import type { StoreLine, StoresSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { GradeKey } from '../../parts/grade.tsx';
import { FailedView, Working } from '../../parts/states.tsx';
import { StoreGlyph } from '../../parts/store-glyph.tsx';
import { Twin } from '../../parts/table.tsx';
import { type Place, sheetPath } from '../../place.ts';
import { dayInSight } from '../day-steps.ts';
import { StoreTable } from '../today/where.tsx';

type Sieve = 'all' | 'use' | 'held' | 'reserve' | 'empty' | `grade ${string}`;

export function Stores({ place }: { readonly place: Place }) {
  const sheet = useSheet<StoresSheet>(sheetPath('stores', place));
  const [sieve, setSieve] = useState<Sieve>('all');
  const { data } = sheet;
  useEffect(() => {
    if (data === undefined) return;
    document.title = words().frame.title(words().pages.stores, data.head.outpost);
    dayInSight.set(data.head.day);
  }, [data]);
  if (data === undefined)
    return sheet.failed === null ? <Working /> : <FailedView name={words().pages.stores} sheet={sheet} />;
  const shown = inSeries(data.stores).filter((store) => passes(store, sieve));
  return (
    <div data-ready="stores">
      <div className="title">
        <h1>{words().pages.stores}</h1>
        <GradeKey grades={data.stores.map(({ grade }) => grade)} />
      </div>
      {data.stores.length === 0 ? (
        <p className="md">{words().today.empty}</p>
      ) : (
        <>
          <SieveRow stores={data.stores} sieve={sieve} onChange={setSieve} />
          {shown.length === 0 && <p>{words().stores.none}</p>}
          {shown.length > 0 && (
            <Twin
              picture={
                <ul className="rack">
                  {shown.map((store) => (
                    <StoreGlyph key={store.id} store={store} />
                  ))}
                </ul>
              }
              table={<StoreTable stores={shown} />}
            />
          )}
        </>
      )}
    </div>
  );
}

/** Stores that are numbered on stand together, also those that came later: C-17 behind C-16. */
function inSeries(stores: readonly StoreLine[]): readonly StoreLine[] {
  const series = [...new Set(stores.map(({ id }) => seriesOfId(id)))];
  return [...stores].sort((a, b) => series.indexOf(seriesOfId(a.id)) - series.indexOf(seriesOfId(b.id)));
}

function seriesOfId(id: string): string {
  return id.replace(/\d+$/, '');
}

function passes(store: StoreLine, sieve: Sieve): boolean {
  switch (sieve) {
    case 'all':
      return true;
    case 'use':
      return store.port !== null;
    case 'held':
      return store.held || store.conditional;
    case 'reserve':
      return store.reserve;
    case 'empty':
      return store.emptied;
    default:
      return !store.emptied && `grade ${store.grade ?? ''}` === sieve;
  }
}

function SieveRow({
  stores,
  sieve,
  onChange,
}: {
  readonly stores: readonly StoreLine[];
  readonly sieve: Sieve;
  readonly onChange: (sieve: Sieve) => void;
}) {
  const { stores: names, grade } = words();
  const grades = [...new Set(stores.filter(({ emptied }) => !emptied).map((store) => store.grade ?? ''))];
  const rows: readonly (readonly [Sieve, string])[] = [
    ['all', names.all(stores.length)],
    ['use', names.inUse],
    ...grades.map((each) => [`grade ${each}`, each === '' ? grade.unknown : each] as const),
    ['held', names.held],
    ['reserve', names.reserve],
    ['empty', names.empty],
  ];
  const counted = (each: Sieve) => stores.filter((store) => passes(store, each)).length;
  return (
    <div className="flow sieve-row no-print">
      {rows.map(([value, text]) => (
        <button
          key={value}
          type="button"
          className="b small"
          aria-pressed={sieve === value}
          onClick={() => onChange(value)}
        >
          {value === 'all' ? text : `${text} ${counted(value)}`}
        </button>
      ))}
    </div>
  );
}
