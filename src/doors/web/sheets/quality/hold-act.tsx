// A hold that is set, and every way out of one: which stores, until when, why, and by whom beside.
import '../../style/quality.css';
import { type FormEvent, useState } from 'react';
import type { HoldAct } from '../../../../desk/index.ts';
import type { HoldSheet, StoresSheet } from '../../../../papers/index.ts';
import { saidLacks } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { device } from '../../device.ts';
import { useEntrance } from '../../entering.ts';
import { words } from '../../language.ts';
import type { HoldActName } from '../../open.ts';
import { Dialog } from '../../parts/dialog.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { SaveRow } from '../../parts/save-row.tsx';
import { WhenField } from '../../parts/when-field.tsx';
import { ActFields } from './act-fields.tsx';
import { actOf, type Filled, NEEDS, type Offered } from './act-request.ts';
import { HOLDS } from './entrances.ts';

interface Told {
  readonly act: HoldActName;
  readonly hold?: string;
  readonly stores?: readonly string[];
  readonly sample?: string;
}

export function HoldActDialog(told: Told) {
  const { act, hold } = told;
  const { quality } = words();
  const { office } = device.use();
  const [filled, setFilled] = useState<Filled>(() => begun(told));
  const [at, setAt] = useState('');
  const entering = useEntrance(HOLDS);
  const offered = useOffered(told);
  const request: HoldAct | null = actOf(act, { ...filled, hold });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (request !== null) void entering.save(request, at === '' ? {} : { at });
  };
  return (
    <Dialog
      title={
        hold === undefined ? quality.actTitle[act] : `${quality.actTitle[act]}: ${quality.holdTitle(hold)}`
      }
    >
      <form className="stack" onSubmit={submit}>
        <p className="soft">{quality.actNote[act]}</p>
        <Refusal entering={entering} />
        <ActFields act={act} needs={NEEDS[act]} filled={filled} offered={offered} onChange={setFilled} />
        <WhenField value={at} onChange={setAt} />
        <p className="xs soft">{quality.speaks(office)}</p>
        <SaveRow entering={entering} label={quality.actSave[act]} disabled={request === null} />
      </form>
    </Dialog>
  );
}

function begun({ stores, sample }: Told): Filled {
  return { stores: stores ?? [], sample: sample ?? '' };
}

/** Stores of the hold, with what is lacking; where none is named: all that hold water. */
function useOffered({ hold, act }: Told): readonly Offered[] {
  const { quality } = words();
  const { data: sheet, failed } = useSheet<HoldSheet>(
    hold === undefined ? null : `/api/holds/${encodeURIComponent(hold)}`,
  );
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  if (hold === undefined)
    return stores
      .filter(({ emptied, mark }) => !emptied && (act !== 'add' || mark !== 'HOLD'))
      .map(({ id, mark }) => (mark === '' ? { store: id } : { store: id, note: mark }));
  // A store that waits for its first release may stand where a hold is named.
  if (failed?.status === 404) return [{ store: hold }];
  return (sheet?.hold.stores ?? []).map(({ store, lacks }) => {
    if (act !== 'release') return { store };
    return { store, note: lacks.length === 0 ? quality.canRelease : saidLacks(lacks) };
  });
}
