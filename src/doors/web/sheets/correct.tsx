// A correction or an undo of a line of the daybook: a new line that points at the old one, with its reason.
import { type FormEvent, useState } from 'react';
import type { BookLine } from '../../../papers/index.ts';
import { entryName, useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { AmountField, ReasonField } from '../parts/fields.tsx';
import { Phrased } from '../parts/finding-line.tsx';
import { Refusal } from '../parts/refusal.tsx';

export function Correct({ line }: { readonly line: BookLine }) {
  const { daybook, log } = words();
  const [value, setValue] = useState('');
  const [unit, setUnit] = useState('');
  const [reason, setReason] = useState('');
  const entering = useEntering();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void entering.save({
      what: 'correct',
      entry: entryName(line.ref),
      value: unit === '' || /[A-Za-z]/.test(value) ? value.trim() : `${value.trim()}${unit}`,
      reason: reason.trim(),
    });
  };
  return (
    <Dialog title={daybook.correctTitle(line.ref)}>
      <form className="stack" onSubmit={submit}>
        <p>
          <Phrased text={line.text} />
          <span className="soft">
            , {line.by}, {line.happened}
          </span>
        </p>
        <p className="xs soft">{daybook.correctNote}</p>
        <Refusal entering={entering} />
        <AmountField
          label={daybook.correctValue}
          value={value}
          onChange={setValue}
          unit={unit}
          units={['', 'L', 'mL', 'kg', 'g']}
          onUnit={setUnit}
          first
        />
        <ReasonField label={daybook.reason} usual={log.reasons} value={reason} onChange={setReason} />
        <button
          type="submit"
          className="b main"
          disabled={entering.saving || value.trim() === '' || reason.trim() === ''}
        >
          {entering.saving ? log.saving : log.save}
        </button>
      </form>
    </Dialog>
  );
}

export function UndoLine({ line }: { readonly line: BookLine }) {
  const { daybook, log } = words();
  const [reason, setReason] = useState('');
  const entering = useEntering();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const told = reason.trim();
    void entering.save({ what: 'undo', entry: entryName(line.ref), ...(told !== '' && { reason: told }) });
  };
  return (
    <Dialog title={daybook.undoTitle(line.ref)}>
      <form className="stack" onSubmit={submit}>
        <p>
          <Phrased text={line.text} />
        </p>
        <p className="xs soft">{daybook.undoNote}</p>
        <Refusal entering={entering} />
        <ReasonField label={daybook.reason} usual={log.reasons} value={reason} onChange={setReason} />
        <button type="submit" className="b main" data-first disabled={entering.saving}>
          {entering.saving ? log.saving : daybook.undo}
        </button>
      </form>
    </Dialog>
  );
}
