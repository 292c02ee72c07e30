// The label of a store, 60 × 40 mm: number, grade as shape and numeral, and lines to write on.
import type { StoreSheet } from '../../../papers/index.ts';
import { saidValue } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { GradeBadge } from '../parts/grade.tsx';
import { type Place, sheetPath } from '../place.ts';

/** Whoever reads only the label has to know it too. */
function LabelMark({ store }: { readonly store: StoreSheet['store'] }) {
  if (store.mark === '' || store.mark === 'EMPTY') return null;
  return <span className="label-mark">{store.mark}</span>;
}

export function Label({ id, place }: { readonly id: string; readonly place: Place }) {
  const { stores, frame } = words();
  const { data } = useSheet<StoreSheet>(sheetPath(`stores/${encodeURIComponent(id)}`, place));
  return (
    <Dialog title={stores.labelTitle}>
      <div className="stack label-sheet">
        {data !== undefined && (
          <div className="label">
            <p className="label-name">
              <GradeBadge grade={data.store.grade} /> <b>{data.store.id}</b>
              <LabelMark store={data.store} />
            </p>
            <p className="label-kind">
              {stores.kinds[data.store.kind] ?? data.store.kind}{' '}
              {stores.of(saidValue(data.store.capacityL, 'L'))} · {data.head.outpost}
            </p>
            <dl>
              {stores.labelLines.map((line) => (
                <div key={line}>
                  <dt>{line}</dt>
                  <dd />
                </div>
              ))}
            </dl>
          </div>
        )}
        <button type="button" className="b main no-print" data-first onClick={() => window.print()}>
          {frame.print}
        </button>
      </div>
    </Dialog>
  );
}
