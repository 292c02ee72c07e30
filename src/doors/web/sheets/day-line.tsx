// The day line: the outpost's meters one below the other, each with its last value and what is expected.
import { type FormEvent, useState } from 'react';
import type { DayForm, DayFormItem } from '../../../desk/index.ts';
import type { SheetHead } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { device, remember } from '../device.ts';
import { type Entering, useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { readingsIn, tidyReading } from '../meter-mark.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Keypad } from '../parts/fields.tsx';
import { Meter, nameOfMeter } from '../parts/meter.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { SaveRow } from '../parts/save-row.tsx';
import { Failed, Working } from '../parts/states.tsx';
import { useTakesFocus } from '../takes-focus.ts';

export function DayLine() {
  const sheet = useSheet<DayForm>('/api/day-form');
  const { log } = words();
  if (sheet.data === undefined) {
    return <Dialog title={log.day}>{sheet.failed === null ? <Working /> : <Failed sheet={sheet} />}</Dialog>;
  }
  return <Form key={sheet.data.day} form={sheet.data} />;
}

function Form({ form }: { readonly form: DayForm }) {
  const { log } = words();
  const entering = useEntering();
  const { line } = device.use();
  const values = line?.day === form.day ? line.values : {};
  // A practice book lives in its own time: its line is that of the day which comes next.
  const isPractice = useSheet<{ readonly head: SheetHead }>('/api/today').data?.head.practice === true;
  const at = isPractice ? { at: new Date(form.lineAtMs).toISOString() } : {};
  const [current, setCurrent] = useState(form.items[0]?.instrument ?? '');
  const [asks, setAsks] = useState(false);
  const blank = form.items.filter(({ instrument }) => tidyReading(values[instrument] ?? '') === '');
  const put = (instrument: string, value: string) => {
    setAsks(false);
    remember({ line: { day: form.day, values: { ...values, [instrument]: value } } });
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (blank.length > 0 && !asks) return setAsks(true);
    setAsks(false);
    void save({ form, values, entering, at });
  };
  const chosen = form.items.find(({ instrument }) => instrument === current);
  return (
    <Dialog title={log.lineTitle(form.day)} wide>
      <form className="stack" onSubmit={submit}>
        <p className="xs soft">{log.lineNote}</p>
        <Refusal entering={entering} />
        <div className="day-form">
          <ol className="meters">
            {form.items.map((item, k) => (
              <Meter
                key={item.instrument}
                item={item}
                first={k === 0}
                value={values[item.instrument] ?? ''}
                onFocus={() => setCurrent(item.instrument)}
                onChange={(value) => put(item.instrument, value)}
              />
            ))}
          </ol>
          <div className="day-pad">
            {asks && blank.length > 0 ? (
              <Blank
                items={blank}
                onSave={() => void save({ form, values, entering, at })}
                onBack={() => setAsks(false)}
              />
            ) : (
              <>
                <p className="xs pad-name">{chosen !== undefined && nameOfMeter(chosen)}</p>
                <Keypad value={values[current] ?? ''} onChange={(value) => put(current, value)} dash />
                <SaveRow entering={entering} disabled={blank.length === form.items.length} />
              </>
            )}
          </div>
        </div>
      </form>
    </Dialog>
  );
}

/** A blank is no dash: whether a meter was forgotten or not read is asked once. */
function Blank({
  items,
  onSave,
  onBack,
}: {
  readonly items: readonly DayFormItem[];
  readonly onSave: () => void;
  readonly onBack: () => void;
}) {
  const { log } = words();
  const ref = useTakesFocus<HTMLDivElement>(true);
  const first = items[0];
  const back = () => {
    onBack();
    if (first !== undefined) document.getElementById(`meter-${first.instrument}`)?.focus();
  };
  return (
    <div className="stack refusal" role="alert" tabIndex={-1} ref={ref}>
      <p>
        <b>{log.blank(items.length)}</b> {items.map(nameOfMeter).join(', ')}.
      </p>
      <div className="flow">
        <button type="button" className="b" onClick={back}>
          {log.blankBack}
        </button>
        <button type="button" className="b" onClick={onSave}>
          {log.blankSave}
        </button>
      </div>
    </div>
  );
}

async function save(told: {
  readonly form: DayForm;
  readonly values: Readonly<Record<string, string>>;
  readonly entering: Entering;
  readonly at: { readonly at?: string };
}): Promise<void> {
  const { form, values, entering, at } = told;
  const readings = readingsIn(values);
  const request = { what: 'day', readings, day: form.day, peopleAboard: form.peopleAboard } as const;
  const done = await entering.save(request, at);
  if (done) remember({ line: null });
}
