// A correction or an undo of a line of the daybook: a new line that points at the old one, with its reason.
import { type FormEvent, useState } from 'react';
import type { DayForm } from '../../../desk/index.ts';
import type { BookLine, BookSheet } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { entryName, useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { readingsIn } from '../meter-mark.ts';
import { openSheet } from '../open.ts';
import { Dialog } from '../parts/dialog.tsx';
import { AmountField, ReasonField } from '../parts/fields.tsx';
import { Meter } from '../parts/meter.tsx';
import { Phrased } from '../parts/phrased.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { SaveRow } from '../parts/save-row.tsx';

const WATER = ['L', 'mL', 'kg', 'g'] as const;

/** The unit in which the line was told stands there first; of a count of strokes it is the count. */
function unitsOf({ text }: BookLine): readonly string[] {
  const { strokes } = words().log;
  const counted = new RegExp(`\\d\\u00A0${strokes}`).test(text);
  const first = /\d\u00A0(mL|L|kg|g)(?![A-Za-z/])/.exec(text)?.[1] ?? 'L';
  const water = [first, ...WATER.filter((each) => each !== first)];
  return counted ? [strokes, ...water] : water;
}

export function Correct({ line }: { readonly line: BookLine }) {
  return line.mayCorrect === 'readings' ? <CorrectReadings line={line} /> : <CorrectAmount line={line} />;
}

/** A line of meters: only those that were wrong are told anew. */
function CorrectReadings({ line }: { readonly line: BookLine }) {
  const { daybook, log } = words();
  const form = useSheet<DayForm>('/api/day-form');
  const [values, setValues] = useState<Readonly<Record<string, string>>>({});
  const [reason, setReason] = useState('');
  const entering = useEntering();
  const readings = readingsIn(values);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void entering.save({ what: 'correct', entry: entryName(line.ref), readings, reason: reason.trim() });
  };
  return (
    <Dialog title={daybook.correctTitle(line.ref)} wide>
      <form className="stack" onSubmit={submit}>
        <Line line={line} />
        <p className="xs soft">{daybook.correctReadings}</p>
        <Refusal entering={entering} />
        <ol className="meters">
          {(form.data?.items ?? []).map((item, k) => (
            <Meter
              key={item.instrument}
              // What is expected of the next line is not what was expected of this one.
              item={{ ...item, last: null, low: null, high: null }}
              bare
              first={k === 0}
              value={values[item.instrument] ?? ''}
              onChange={(value) => setValues({ ...values, [item.instrument]: value })}
            />
          ))}
        </ol>
        <ReasonField label={daybook.reason} usual={log.correctReasons} value={reason} onChange={setReason} />
        <UndoInstead line={line} />
        <SaveRow entering={entering} disabled={Object.keys(readings).length === 0 || reason.trim() === ''} />
      </form>
    </Dialog>
  );
}

function UndoInstead({ line }: { readonly line: BookLine }) {
  const { daybook } = words();
  return (
    <p>
      {daybook.correctElse}{' '}
      <button type="button" className="link" onClick={() => openSheet({ kind: 'undo-line', line })}>
        {daybook.undoTitle(line.ref)}
      </button>
    </p>
  );
}

function CorrectAmount({ line }: { readonly line: BookLine }) {
  const { daybook, log } = words();
  const units = unitsOf(line);
  const [value, setValue] = useState('');
  const [unit, setUnit] = useState(units[0] ?? 'L');
  const [reason, setReason] = useState('');
  const entering = useEntering();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const bare = unit === log.strokes || /[A-Za-z]/.test(value);
    void entering.save({
      what: 'correct',
      entry: entryName(line.ref),
      value: bare ? value.trim() : `${value.trim()}${unit}`,
      reason: reason.trim(),
    });
  };
  return (
    <Dialog title={daybook.correctTitle(line.ref)}>
      <form className="stack" onSubmit={submit}>
        <Line line={line} />
        <p className="xs soft">{daybook.correctNote}</p>
        <Refusal entering={entering} />
        <AmountField
          label={daybook.correctValue}
          value={value}
          onChange={setValue}
          unit={unit}
          units={units}
          onUnit={setUnit}
          first
        />
        <ReasonField label={daybook.reason} usual={log.correctReasons} value={reason} onChange={setReason} />
        <UndoInstead line={line} />
        <SaveRow entering={entering} disabled={value.trim() === '' || reason.trim() === ''} />
      </form>
    </Dialog>
  );
}

function Line({ line }: { readonly line: BookLine }) {
  return (
    <p>
      <Phrased text={line.now ?? line.text} />
      <span className="soft">
        , {line.by}, {line.happened}
      </span>
    </p>
  );
}

export function UndoLine({ line }: { readonly line: BookLine }) {
  return <Undo entry={entryName(line.ref)} line={line} />;
}

/** An entry that a remedy names: its line is looked up, so that nobody undoes a number. */
export function UndoEntry({ entry }: { readonly entry: string }) {
  const ref = entry.replace(':', ' ');
  const book = useSheet<BookSheet>('/api/book?most=99999').data;
  const line = book?.lines.find((each) => each.ref === ref || each.ref.endsWith(` ${ref}`)) ?? null;
  return <Undo entry={entry} line={line} />;
}

function Undo({ entry, line }: { readonly entry: string; readonly line: BookLine | null }) {
  const { daybook, log } = words();
  const [reason, setReason] = useState('');
  const entering = useEntering();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const told = reason.trim();
    void entering.save({ what: 'undo', entry, ...(told !== '' && { reason: told }) });
  };
  return (
    <Dialog title={daybook.undoTitle(line?.ref ?? entry.replace(':', ' '))}>
      <form className="stack" onSubmit={submit}>
        {line !== null && <Line line={line} />}
        <p className="xs soft">{daybook.undoNote}</p>
        <Refusal entering={entering} />
        <ReasonField label={daybook.reason} usual={log.reasons} value={reason} onChange={setReason} />
        <SaveRow entering={entering} label={daybook.undo} first />
      </form>
    </Dialog>
  );
}
