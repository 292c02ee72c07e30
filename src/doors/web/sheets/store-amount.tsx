// An amount at a store: a fill, or a weight. Store, digits, save.
import { type FormEvent, useState } from 'react';
import type { StoreLine, StoresSheet } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { AmountField, TextField, WhenField } from '../parts/fields.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { nearestId, StorePicker } from '../parts/store-picker.tsx';

const UNITS = { fill: ['L', 'kg'], weigh: ['kg', 'L'], gauge: ['L', 'kg'] } as const;

export function StoreAmount({
  what,
  named,
}: {
  readonly what: keyof typeof UNITS;
  readonly named: string | undefined;
}) {
  const { log } = words();
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  const [store, setStore] = useState(named ?? '');
  const [from, setFrom] = useState('');
  const [amount, setAmount] = useState('');
  const [unit, setUnit] = useState<string>(UNITS[what][0]);
  const [at, setAt] = useState('');
  const [note, setNote] = useState('');
  const entering = useEntering();
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
          stores={likely(stores, what)}
          all={stores}
          value={store}
          onChange={setStore}
          first={named === undefined}
        />
        {what === 'fill' && (
          <StorePicker
            label={log.from}
            stores={sources(stores)}
            all={stores}
            value={from}
            onChange={setFrom}
          />
        )}
        <AmountField
          label={{ fill: log.fillAmount, weigh: log.weighAmount, gauge: log.gaugeAmount }[what]}
          value={amount}
          onChange={setAmount}
          unit={unit}
          units={UNITS[what]}
          onUnit={setUnit}
          first={named !== undefined}
        />
        <button
          type="submit"
          className="b main"
          disabled={entering.saving || store.trim() === '' || amount.trim() === ''}
        >
          {entering.saving ? log.saving : log.save}
        </button>
        <WhenField value={at} onChange={setAt} />
        <TextField label={log.note} value={note} onChange={setNote} />
      </form>
    </Dialog>
  );
}

/** A text that carries its unit already is sent as it is. */
export function withUnit(amount: string, unit: string): string {
  const text = amount.trim();
  return /[A-Za-z]/.test(text) ? text : `${text}${unit}`;
}

/** A weight is asked of what holds water; a fill goes into what is empty. Both first, the rest behind a button. */
function likely(stores: readonly StoreLine[], what: keyof typeof UNITS): readonly StoreLine[] {
  const place = ({ emptied, port }: StoreLine) =>
    (emptied === (what === 'fill') ? 0 : 2) + (port === null ? 1 : 0);
  return [...stores]
    .filter(({ kind }) => kind !== 'vehicleTank' || what !== 'fill')
    .sort((a, b) => place(a) - place(b));
}

function sources(stores: readonly StoreLine[]): readonly StoreLine[] {
  return stores.filter(
    ({ emptied, kind }) => !emptied && (kind === 'vehicleTank' || kind === 'tank' || kind === 'container'),
  );
}
