// The figure of a row that is off is typed from a copy of the rule.
import '../../style/quality.css';
import { type FormEvent, useState } from 'react';
import type { LimitSetSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { useEntrance } from '../../entering.ts';
import { words } from '../../language.ts';
import { saidSides } from '../../pages/quality/limits.tsx';
import { Dialog } from '../../parts/dialog.tsx';
import { TextField } from '../../parts/fields.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { SaveRow } from '../../parts/save-row.tsx';
import { TYPE } from './entrances.ts';
import { LimitsWould } from './limits-would.tsx';
import { useAhead } from './looking-ahead.ts';

export function TypeLimit({ set, row }: { readonly set: string; readonly row: string }) {
  const { quality } = words();
  const sheet = useSheet<LimitSetSheet>(`/api/limits/sets/${encodeURIComponent(set)}`).data;
  const line = sheet?.set.rows.find(({ id }) => id === row);
  const [atLeast, setAtLeast] = useState('');
  const [atMost, setAtMost] = useState('');
  const [copy, setCopy] = useState('');
  const entering = useEntrance(TYPE);
  const unit = line?.unit ?? '';
  const withUnit = (text: string) => (/[a-z]/i.test(text) ? text.trim() : `${text.trim()} ${unit}`.trim());
  const isTyped = atLeast.trim() !== '' || atMost.trim() !== '';
  const request = {
    set,
    row,
    copy: copy.trim(),
    ...(atLeast.trim() !== '' && { atLeast: withUnit(atLeast) }),
    ...(atMost.trim() !== '' && { atMost: withUnit(atMost) }),
  };
  const ahead = useAhead(TYPE, isTyped && copy.trim() !== '' ? request : null, '');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void entering.save(request, { sure: true });
  };
  return (
    <Dialog title={quality.typeTitle} wide>
      <form className="stack" onSubmit={submit}>
        <p>
          <b>{line?.parameter ?? row}</b> <span className="soft">{sheet?.name}</span>
        </p>
        <p className="soft">{quality.typeNote}</p>
        <Refusal entering={entering} />
        {line?.remembered != null && <p>{quality.remembered(saidSides(line.remembered, line.unit))}</p>}
        <div className="two">
          <TextField
            label={quality.atLeast}
            value={atLeast}
            onChange={setAtLeast}
            hint={quality.withUnit(unit)}
          />
          <TextField
            label={quality.atMost}
            value={atMost}
            onChange={setAtMost}
            hint={quality.withUnit(unit)}
            first
          />
        </div>
        <TextField label={quality.copy} value={copy} onChange={setCopy} hint={quality.copyHint} />
        {ahead.sheet !== null && ahead.sheet.effect === null && <p>{quality.noEffect}</p>}
        <LimitsWould effect={ahead.sheet?.effect ?? null} findings={ahead.findings} />
        <SaveRow entering={entering} label={quality.typeSave} disabled={!isTyped || copy.trim() === ''} />
      </form>
    </Dialog>
  );
}
