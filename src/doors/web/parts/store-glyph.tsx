// One store as it is drawn everywhere: silhouette, badge, name, figure, stave, how known, and its mark as a word.
import { formatFigure } from '../../../ground/units/index.ts';
import { type StoreLine, saidKnown, saidValue } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { hrefOf, usePlace } from '../place.ts';
import { Quantity } from './figure.tsx';
import { GradeBadge } from './grade.tsx';
import { Silhouette } from './silhouette.tsx';
import { bare, Stave } from './stave.tsx';

export function StoreGlyph({ store }: { readonly store: StoreLine }) {
  const { at, asOf } = usePlace();
  return (
    <li className="store">
      <Silhouette kind={store.kind} grade={store.grade} hold={store.held} />
      <div>
        <div className="store-head">
          <a className="store-name" href={hrefOf({ page: 'stores', item: store.id, at, asOf })}>
            <GradeBadge grade={store.grade} />
            <b>{store.id}</b>
          </a>
          <Quantity figure={store.volume} of={store.id} className="end" />
        </div>
        <Stave facts={staveOf(store)} label={staveLabel(store)} />
        <p className="xs soft">
          {store.port !== null && (
            <>
              <b>{words().stores.port(store.port)}</b>,{' '}
            </>
          )}
          {words().glyph.ago(saidKnown(store))}
        </p>
        <Mark store={store} />
      </div>
    </li>
  );
}

/** HOLD, CONDITIONAL and NOT RELEASED stand in a double frame: read without any colour. */
export function Mark({ store }: { readonly store: Pick<StoreLine, 'mark'> }) {
  if (store.mark === '') return null;
  const forbids = words().stores.marks[store.mark];
  return (
    <>
      <p className={`mark ${store.mark === 'EMPTY' ? 'mild' : ''} ${store.mark === 'HOLD' ? '' : 'long'}`}>
        {store.mark}
      </p>
      {forbids !== undefined && <p className="xs forbids no-print">{forbids}</p>}
    </>
  );
}

export function staveOf(store: StoreLine) {
  const { value, u95 } = store.volume;
  return {
    capacity: store.capacityL,
    grade: store.grade,
    value: u95 === null ? null : value,
    low: store.band.low,
    high: Math.max(store.band.high, value),
    unchecked: store.standing !== 'checked',
  };
}

export function staveLabel(store: StoreLine): string {
  const { glyph } = words();
  const capacity = saidValue(store.capacityL, 'L');
  if (store.volume.u95 === null) return glyph.unknown(store.id, capacity);
  const figure = formatFigure(store.volume, { style: 'screen' });
  const zones = glyph.zones(`${bare(store.band.low)}\u00A0L`, `${bare(store.band.high)}\u00A0L`);
  return `${glyph.of(store.id, figure, capacity)}, ${zones}`;
}
