// What is done to a store and has no amount to be typed: it is connected to a port, it was emptied, it is full.
import { type FormEvent, useState } from 'react';
import type { LogRequest } from '../../../desk/index.ts';
import { formatFigure } from '../../../ground/units/index.ts';
import type { StoreLine, StoresSheet } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Choices, TextField } from '../parts/fields.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { SaveRow } from '../parts/save-row.tsx';
import { nearestId, StorePicker } from '../parts/store-picker.tsx';
import { WhenField } from '../parts/when-field.tsx';

export type StoreActKind = 'hookup' | 'empty' | 'full';

export function StoreAct({
  what,
  named,
}: {
  readonly what: StoreActKind;
  readonly named: string | undefined;
}) {
  const { log } = words();
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  const names = useSheet<{ readonly ports: readonly string[] }>('/api/offices').data;
  const [store, setStore] = useState(named ?? '');
  const [port, setPort] = useState('');
  const [flowStopped, setFlowStopped] = useState(false);
  const [at, setAt] = useState('');
  const [note, setNote] = useState('');
  const entering = useEntering();
  const chosen = nearestId(stores, store) ?? store.trim();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const more = { ...(at !== '' && { at }), ...(note.trim() !== '' && { note: note.trim() }) };
    void entering.save(requestOf({ what, store: chosen, port, flowStopped }), more);
  };
  return (
    <Dialog title={log.actTitles[what]}>
      <form className="stack" onSubmit={submit}>
        <Refusal entering={entering} />
        <p className="soft">{log.actNotes[what]}</p>
        <StorePicker
          label={log.store}
          stores={[...stores].sort((a, b) => likely(what, a) - likely(what, b))}
          all={stores}
          value={store}
          onChange={setStore}
          noteOf={({ volume }) => formatFigure(volume, { style: 'screen' })}
          first={named === undefined}
        />
        {what === 'hookup' && (
          <Choices
            label={log.port}
            value={port === '' ? null : port}
            onChange={setPort}
            options={(names?.ports ?? []).map((each) => ({ value: each, text: portText(each, stores) }))}
          />
        )}
        {what === 'empty' && (
          <label className="tick">
            <input type="checkbox" checked={flowStopped} onChange={() => setFlowStopped(!flowStopped)} />
            <span>{log.flowStopped}</span>
          </label>
        )}
        <WhenField value={at} onChange={setAt} />
        <TextField label={log.note} value={note} onChange={setNote} />
        <SaveRow
          entering={entering}
          disabled={store.trim() === '' || (what === 'hookup' && port === '')}
          first={named !== undefined && what !== 'hookup'}
        />
      </form>
    </Dialog>
  );
}

interface Asked {
  readonly what: StoreActKind;
  readonly store: string;
  readonly port: string;
  readonly flowStopped: boolean;
}

function requestOf({ what, store, port, flowStopped }: Asked): LogRequest {
  if (what === 'hookup') return { what, store, port };
  return what === 'full' ? { what, store } : { what, store, ...(flowStopped && { flowStopped }) };
}

/** Which store stands on the port now: it is the one that will be taken off. */
function portText(port: string, stores: readonly StoreLine[]): string {
  const there = stores.find((store) => store.port === port);
  return there === undefined ? port : words().log.portNow(port, there.id);
}

/** The likely ones first: what holds water is connected or emptied, what takes waste is declared full. */
function likely(what: StoreActKind, { emptied, kind, port }: StoreLine): number {
  if (what === 'full') return (kind === 'wasteContainer' ? 0 : 2) + (port === null ? 1 : 0);
  if (what === 'empty') return (emptied ? 2 : 0) + (port === null ? 1 : 0);
  return (emptied ? 2 : 0) + (port === null ? 0 : 1);
}
