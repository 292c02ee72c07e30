// A drink: tap the strokes and it is saved; another count or amount is typed.
import { type FormEvent, useState } from 'react';
import { useSheet } from '../api/cache.ts';
import { device, remember } from '../device.ts';
import { useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Choices, TextField } from '../parts/fields.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { SaveRow } from '../parts/save-row.tsx';
import { WhenField } from '../parts/when-field.tsx';

/** Where nothing is learned yet: ours, no source. */
const USUAL = ['4', '6', '8', '10', '12', '16'];
const MOST = 6;

/** The counts that are entered most on this device, in rising order, so that the place of each does not jump. */
export function presetsOf(strokes: Readonly<Record<string, number>>): readonly string[] {
  const learned = Object.entries(strokes)
    .sort(([, a], [, b]) => b - a)
    .map(([count]) => count);
  const chosen = [...new Set([...learned, ...USUAL])].slice(0, MOST);
  return chosen.sort((a, b) => a.length - b.length || (a < b ? -1 : 1));
}

export function Drink() {
  const { log } = words();
  const { strokes, person } = device.use();
  const names = useSheet<{ readonly offices: readonly string[] }>('/api/offices');
  const [amount, setAmount] = useState('');
  const [at, setAt] = useState('');
  // The presets stand still while the dialog is open.
  const [presets] = useState(() => presetsOf(strokes));
  const entering = useEntering();
  const save = async (text: string) => {
    const isCount = /^\d{1,3}$/.test(text);
    const done = await entering.save(
      { what: 'drink', amount: text, ...(person !== '' && { person }) },
      at === '' ? {} : { at },
    );
    if (done && isCount) remember({ strokes: { ...strokes, [text]: (strokes[text] ?? 0) + 1 } });
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (amount.trim() !== '') void save(amount.trim());
  };
  return (
    <Dialog title={log.drinkTitle}>
      <form className="stack" onSubmit={submit}>
        <Refusal entering={entering} />
        <fieldset className="presets">
          <legend>{log.drinkPresets}</legend>
          {presets.map((count) => (
            <button
              key={count}
              type="button"
              className="b"
              disabled={entering.saving}
              onClick={() => void save(count)}
            >
              <span className="preset">{count}</span>
              <span className="xs">{log.strokes}</span>
            </button>
          ))}
        </fieldset>
        <TextField
          label={log.drinkOther}
          hint={log.drinkPlace}
          value={amount}
          onChange={setAmount}
          first
          numeric
        />
        <Choices
          label={log.person}
          value={person}
          onChange={(chosen) => remember({ person: chosen })}
          options={[
            { value: '', text: log.nobody },
            ...(names.data?.offices ?? []).map((office) => ({ value: office, text: office })),
          ]}
        />
        <WhenField value={at} onChange={setAt} />
        <SaveRow entering={entering} disabled={amount.trim() === ''} />
      </form>
    </Dialog>
  );
}
