// An amount at a store: a fill, a weight, or what a gauging gave. Store, digits, save.
import { type FormEvent, useState } from 'react';
import { formatFigure } from '../../../ground/units/index.ts';
import type { ReadingWay, StoreLine, StoresSheet, TodaySheet } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { AmountField, TextField } from '../parts/fields.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { SaveRow } from '../parts/save-row.tsx';
import { nearestId, StorePicker } from '../parts/store-picker.tsx';
import { WhenField } from '../parts/when-field.tsx';

const UNITS = { fill: ['L', 'kg'], weigh: ['kg', 'L'], gauge: ['L', 'kg'] } as const;
type What = keyof typeof UNITS;

export function StoreAmount({ what, named }: { readonly what: What; readonly named: string | undefined }) {
  const { log } = words();
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  const ways = useWays();
  const [store, setStore] = useState(named ?? '');
  const [from, setFrom] = useState('');
  const [amount, setAmount] = useState('');
  const [unit, setUnit] = useState<string>(UNITS[what][0]);
  const [at, setAt] = useState('');
  const [note, setNote] = useState('');
  const entering = useEntering();
  const offered = offeredFor(what, stores, ways);
  const chosen = nearestId(stores, store) ?? store.trim();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const told = withUnit(amount, unit);
    const source = nearestId(stores, from) ?? from.trim();
    const more = { ...(at !== '' && { at }), ...(note.trim() !== '' && { note: note.trim() }) };
    if (what !== 'fill') void entering.save({ what, store: chosen, amount: told }, more);
    else
      void entering.save({ what, store: chosen, amount: told, ...(source !== '' && { from: source }) }, more);
  };
  return (
    <Dialog title={{ fill: log.fillTitle, weigh: log.weighTitle, gauge: log.gaugeTitle }[what]}>
      <form className="stack" onSubmit={submit}>
        <Refusal entering={entering} />
        <StorePicker
          label={log.store}
          stores={offered}
          all={stores}
          value={store}
          onChange={setStore}
          noteOf={what === 'fill' ? roomOf : contentOf}
          first={named === undefined}
        />
        {what === 'fill' && (
          <StorePicker
            label={log.from}
            stores={sources(stores)}
            all={stores}
            value={from}
            onChange={setFrom}
            noteOf={contentOf}
            field="from"
          />
        )}
        <AmountField
          label={{ fill: log.fillAmount, weigh: log.weighAmount, gauge: log.gaugeAmount }[what]}
          {...(what !== 'fill' && {
            hint: what === 'weigh' ? log.weighHint : log.gaugeHint(wayOf(ways, chosen)),
          })}
          value={amount}
          onChange={setAmount}
          unit={unit}
          units={UNITS[what]}
          onUnit={setUnit}
          first={named !== undefined}
        />
        <WhenField value={at} onChange={setAt} />
        <TextField label={log.note} value={note} onChange={setNote} />
        <SaveRow entering={entering} disabled={store.trim() === '' || amount.trim() === ''} />
      </form>
    </Dialog>
  );
}

/** A text that carries its unit already is sent as it is. */
export function withUnit(amount: string, unit: string): string {
  const text = amount.trim();
  return /[A-Za-z]/.test(text) ? text : `${text}${unit}`;
}

type Ways = ReadonlyMap<string, ReadingWay>;

/** How each store is read, as the outpost file says it. */
function useWays(): Ways {
  const sheet = useSheet<TodaySheet>('/api/today').data;
  return new Map(sheet?.readings.map(({ store, way }) => [store, way]));
}

function wayOf(ways: Ways, store: string): string | null {
  return ways.get(store) ?? null;
}

/** A weight is asked of what can be weighed and holds water; a fill goes into what is empty. The likely ones first. */
function offeredFor(what: What, stores: readonly StoreLine[], ways: Ways): readonly StoreLine[] {
  const place = ({ emptied, port }: StoreLine) =>
    (emptied === (what === 'fill') ? 0 : 2) + (port === null ? 1 : 0);
  return stores.filter((store) => fits(what, store, ways)).sort((a, b) => place(a) - place(b));
}

function fits(what: What, { id, kind }: StoreLine, ways: Ways): boolean {
  const stands = kind === 'tank' || kind === 'vehicleTank' || kind === 'buffer';
  if (what === 'fill') return kind !== 'vehicleTank';
  // Where the outpost file names no way of reading at all: what can be lifted off its place can be weighed.
  if (ways.size === 0) return (what === 'weigh') !== stands;
  const way = ways.get(id);
  return way !== undefined && (what === 'weigh') === (way === 'weighing');
}

function sources(stores: readonly StoreLine[]): readonly StoreLine[] {
  return stores.filter(
    ({ emptied, kind }) => !emptied && (kind === 'vehicleTank' || kind === 'tank' || kind === 'container'),
  );
}

function contentOf({ volume, mark }: StoreLine): string {
  const content = formatFigure(volume, { style: 'screen' });
  return mark === '' ? content : `${content}, ${mark}`;
}

/** How much still goes in, as surely as the content is known. */
function roomOf({ volume, capacityL, mark }: StoreLine): string {
  const value = Math.max(0, capacityL - volume.value);
  const room = words().log.room(formatFigure({ ...volume, value }, { style: 'screen' }));
  return mark === '' || mark === 'EMPTY' ? room : `${room}, ${mark}`;
}
