// Where the water is and what it may be used for: stores by use, each with its stave; then the sum of all.

import { formatFigure } from '../../../../ground/units/index.ts';
import {
  type StoreLine,
  saidKnown,
  seriesOf,
  sortStores,
  sumFigures,
  type TodaySheet,
} from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { NamedQuantity, Quantity } from '../../parts/figure.tsx';
import { GradeBadge, GradeKey } from '../../parts/grade.tsx';
import { Silhouette } from '../../parts/silhouette.tsx';
import { Mark, StoreGlyph } from '../../parts/store-glyph.tsx';
import { Table, Twin } from '../../parts/table.tsx';
import { hrefOf, usePlace } from '../../place.ts';

export function Where({ sheet }: { readonly sheet: TodaySheet }) {
  const { today } = words();
  return (
    <section className="row">
      <div className="margin">
        <h2>{today.where}</h2>
        <p className="xs no-print">{today.whereNote}</p>
        <GradeKey grades={sheet.stores.map(({ grade }) => grade)} />
      </div>
      <div>
        <Twin picture={<Groups sheet={sheet} />} table={<StoreTable stores={sheet.stores} />} />
        <Sum sheet={sheet} />
      </div>
    </section>
  );
}

interface Group {
  readonly name: string;
  readonly note: string;
  readonly stores: readonly StoreLine[];
  readonly free: TodaySheet['total'] | null;
}

/** Held first, because it must not be used; then the reserve; then grade by grade. */
function groupsOf(sheet: TodaySheet): readonly Group[] {
  const { today } = words();
  const { rows, packed } = sortStores(sheet.stores);
  const shown = [...rows, ...packed];
  const held = shown.filter((store) => store.held);
  const reserve = shown.filter((store) => store.reserve && !store.held);
  const rest = shown.filter((store) => !store.held && !store.reserve);
  const grades = [...new Set([...Object.keys(sheet.cover), ...rest.map(({ grade }) => grade ?? '')])];
  return [
    { name: today.heldNote, note: '', stores: held, free: null },
    {
      name: today.reserveHead,
      note: today.reserveNote,
      stores: reserve,
      free: sheet.reserve?.volume ?? null,
    },
    ...grades.map((grade) => ({
      name: grade === '' ? words().grade.unknown : today.freeOf(grade),
      note: sheet.cover[grade] === undefined ? '' : today.freeNote,
      stores: rest.filter((store) => (store.grade ?? '') === grade),
      free: sheet.cover[grade]?.free ?? null,
    })),
  ].filter(({ stores }) => stores.length > 0);
}

function Groups({ sheet }: { readonly sheet: TodaySheet }) {
  return (
    <div className="groups">
      {groupsOf(sheet).map((group) => (
        <div key={group.name} className="group">
          <h3>
            {group.name}
            {group.free !== null && (
              <>
                {' '}
                <Quantity figure={group.free} of={group.name} />
              </>
            )}
            {group.note !== '' && <span className="soft"> {group.note}</span>}
          </h3>
          <ul className="rack">
            {group.stores.map((store) => (
              <StoreGlyph key={store.id} store={store} />
            ))}
          </ul>
        </div>
      ))}
      <Emptied stores={sortStores(sheet.stores).empty} />
    </div>
  );
}

function Emptied({ stores }: { readonly stores: readonly StoreLine[] }) {
  const { today } = words();
  const { at, asOf } = usePlace();
  if (stores.length === 0) return null;
  return (
    <div className="group emptied">
      <Silhouette kind="container" grade={null} />
      <div>
        <h3>{today.emptied}</h3>
        <p>
          {seriesOf(stores.map(({ id }) => id)).join(', ')}. <span className="soft">{today.emptiedNote}</span>
        </p>
        <a className="link no-print" href={hrefOf({ page: 'stores', at, asOf })}>
          {words().stores.list}
        </a>
      </div>
    </div>
  );
}

export function StoreTable({ stores }: { readonly stores: readonly StoreLine[] }) {
  const { today, stores: names } = words();
  const { at, asOf } = usePlace();
  return (
    <Table
      caption={today.where}
      className="stores-table"
      rows={stores}
      keyOf={({ id }) => id}
      columns={[
        {
          head: today.store,
          text: ({ id }) => id,
          show: (store) => (
            <a className="store-name" href={hrefOf({ page: 'stores', item: store.id, at, asOf })}>
              <GradeBadge grade={store.grade} /> <b>{store.id}</b>
            </a>
          ),
        },
        { head: today.grade, text: ({ grade }) => grade ?? words().grade.unknown },
        {
          head: 'L',
          right: true,
          text: ({ volume }) => formatFigure(volume, { style: 'plain' }).replace(/ L$/, ''),
          show: (store) => <Quantity figure={store.volume} of={store.id} />,
        },
        { head: today.known, text: saidKnown },
        { head: today.mark, text: ({ mark }) => mark, show: (store) => <Mark store={store} /> },
        {
          head: names.place,
          text: ({ place, port }) => (port === null ? place : names.port(port)),
          spare: true,
        },
      ]}
    />
  );
}

/** All water in one line: the parts add up, as they are printed, to the total that is printed. */
function Sum({ sheet }: { readonly sheet: TodaySheet }) {
  const { today } = words();
  const { figures, note } = sumFigures(sheet, { style: 'screen', units: 'L', width: 80, colour: false });
  return (
    <div className="sum">
      <div className="sum-line">
        {sheet.sums.map(({ name, volume }, k) => (
          <NamedQuantity key={name} figure={volume} of={name} name={name} text={figures[k] ?? ''} />
        ))}
        <NamedQuantity figure={sheet.total} of={today.sum} name={today.sum} />
      </div>
      {note !== '' && <p className="xs soft">{note}</p>}
    </div>
  );
}
