// The day line: the outpost's meters one below the other, each with its last value and what is expected.
import { type FormEvent, type KeyboardEvent, useState } from 'react';
import type { DayForm, DayFormItem } from '../../../desk/index.ts';
import { roundFigure, unitSign } from '../../../ground/units/index.ts';
import type { SheetHead } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { device, remember } from '../device.ts';
import { type Entering, useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Keypad } from '../parts/fields.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { Failed, Working } from '../parts/states.tsx';

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
  const put = (instrument: string, value: string) =>
    remember({ line: { day: form.day, values: { ...values, [instrument]: value } } });
  return (
    <Dialog title={log.lineTitle(form.day)} wide>
      <form className="stack" onSubmit={(event) => void submit(event, { form, values, entering, at })}>
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
            <p className="xs">{form.items.find(({ instrument }) => instrument === current)?.name}</p>
            <Keypad value={values[current] ?? ''} onChange={(value) => put(current, value)} dash />
            <button
              type="submit"
              className="b main"
              disabled={entering.saving || Object.keys(values).length === 0}
            >
              {entering.saving ? log.saving : log.save}
            </button>
          </div>
        </div>
      </form>
    </Dialog>
  );
}

async function submit(
  event: FormEvent,
  told: {
    readonly form: DayForm;
    readonly values: Readonly<Record<string, string>>;
    readonly entering: Entering;
    readonly at: { readonly at?: string };
  },
): Promise<void> {
  event.preventDefault();
  const { form, values, entering, at } = told;
  const readings = Object.fromEntries(Object.entries(values).filter(([, value]) => value.trim() !== ''));
  const request = { what: 'day', readings, day: form.day, peopleAboard: form.peopleAboard } as const;
  const done = await entering.save(request, at);
  if (done) remember({ line: null });
}

interface MeterTold {
  readonly item: DayFormItem;
  readonly first: boolean;
  readonly value: string;
  readonly onFocus: () => void;
  readonly onChange: (value: string) => void;
}

function Meter({ item, first, value, onFocus, onChange }: MeterTold) {
  const { log } = words();
  const id = `meter-${item.instrument}`;
  return (
    <li className="meter">
      <label htmlFor={id}>{item.name}</label>
      <input
        id={id}
        className="f"
        inputMode="decimal"
        autoComplete="off"
        value={value}
        aria-describedby={`${id}-last`}
        data-first={first || undefined}
        onFocus={onFocus}
        onKeyDown={nextOnEnter}
        onChange={(event) => onChange(event.target.value)}
      />
      <span className="unit">{unitSign(item.unit)}</span>
      <span className="xs soft" id={`${id}-last`}>
        {item.last === null ? log.noLast : `${log.last} ${digits(item.last)}`}
        {item.low !== null && item.high !== null && (
          <>
            ,{' '}
            <span className="nowrap">
              {log.expected} {digits(item.low, item.resolution)}–{digits(item.high, item.resolution)}
            </span>
          </>
        )}
      </span>
    </li>
  );
}

/** Enter goes on to the next field, as Tab does; only the last one saves. */
function nextOnEnter(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'Enter') return;
  const fields = [...(event.currentTarget.form?.querySelectorAll<HTMLInputElement>('.meter input') ?? [])];
  const next = fields[fields.indexOf(event.currentTarget) + 1];
  if (next === undefined) return;
  event.preventDefault();
  next.focus();
}

/** To the step of the meter, as it will be read off. */
function digits(value: number, resolution: number | null = null): string {
  const stepped = resolution === null ? value : Math.round(value / resolution) * resolution;
  return roundFigure({ value: stepped, u95: resolution === null ? null : resolution * 3.1 }).value;
}
