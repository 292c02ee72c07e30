// One line that waits: where it is from, its cells, why it waits, what its bare number would be, and every way out.
import { type FormEvent, useState } from 'react';
import type {
  DroppedSheet,
  InboxLine,
  PossibleReading,
  TakenSheet,
  WordedFinding,
} from '../../../../papers/index.ts';
import { saidValue } from '../../../../papers/index.ts';
import { postSheet, type Reply } from '../../api/ask-server.ts';
import { refresh } from '../../api/cache.ts';
import { device } from '../../device.ts';
import { entryName } from '../../entering.ts';
import { words } from '../../language.ts';
import { told } from '../../open.ts';
import { Choices, ReasonField, TextField } from '../../parts/fields.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Remedy } from '../../parts/remedy.tsx';
import { Failed } from '../../parts/states.tsx';

export function WaitingLine({ line }: { readonly line: InboxLine }) {
  const { inbox } = words();
  const [open, setOpen] = useState<'no' | 'settle' | 'drop'>('no');
  return (
    <li className="row waiting">
      <div className="margin">
        <h2>{line.ref}</h2>
        <p className="xs">{inbox.from(line.file, line.line)}</p>
        <p className="xs">{inbox.since(line.since, line.by)}</p>
      </div>
      <div className="stack">
        <dl className="cells">
          {line.cells.map(({ heading, cell }) => (
            <div key={heading}>
              <dt>{heading}</dt>
              <dd>{cell}</dd>
            </div>
          ))}
        </dl>
        <Reasons reasons={line.reasons} />
        <Readings readings={line.readings} />
        <div className="flow no-print">
          <button
            type="button"
            className="b"
            aria-expanded={open === 'settle'}
            onClick={() => setOpen(open === 'settle' ? 'no' : 'settle')}
          >
            {inbox.settle}
          </button>
          <button
            type="button"
            className="b small"
            aria-expanded={open === 'drop'}
            onClick={() => setOpen(open === 'drop' ? 'no' : 'drop')}
          >
            {inbox.drop}
          </button>
        </div>
        {open === 'settle' && <Settle line={line} />}
        {open === 'drop' && <Drop line={line} />}
      </div>
    </li>
  );
}

function Reasons({ reasons }: { readonly reasons: readonly WordedFinding[] }) {
  return (
    <ul className="stack">
      {reasons.map((finding) => (
        <li key={`${finding.code} ${finding.text}`}>
          <p>
            <Phrased text={finding.text} strong />
          </p>
          <p className="xs">
            <Remedy text={finding.remedy} />
          </p>
        </li>
      ))}
    </ul>
  );
}

/** None of them is taken by itself: they only show what each unit would mean against what the store holds. */
function Readings({ readings }: { readonly readings: readonly PossibleReading[] }) {
  const { inbox } = words();
  if (readings.length === 0) return null;
  return (
    <div>
      <h3 className="xs">{inbox.could}</h3>
      <ul className="readings">
        {readings.map((reading) => (
          <li key={`${reading.unit} ${reading.store ?? ''}`}>
            <span className="qty">
              {inbox.couldLine(
                reading.received,
                reading.unit,
                saidValue(Math.round(reading.litres * 10) / 10, 'L'),
              )}
            </span>
            {reading.store !== null && reading.capacityL !== null && (
              <span className="soft">
                {inbox.against(reading.store, saidValue(reading.capacityL, 'L'))}
                {reading.litres > reading.capacityL && <b> – {inbox.tooMuch}</b>}
              </span>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

const UNITS = ['L', 'mL', 'kg', 'g', 'lb', 'gal'] as const;

interface Failing {
  readonly failed: Extract<Reply<unknown>, { ok: false }> | null;
}

function Settle({ line }: { readonly line: InboxLine }) {
  const { inbox } = words();
  const [unit, setUnit] = useState('');
  const [store, setStore] = useState('');
  const [cells, setCells] = useState<Readonly<Record<string, string>>>({});
  const [tried, setTried] = useState<TakenSheet | null>(null);
  const [{ failed }, setFailed] = useState<Failing>({ failed: null });
  const ask = async (dryRun: boolean) => {
    const body = { fields: fieldsOf({ unit, store, cells, dryRun }), by: device.get().office };
    const reply = await postSheet<TakenSheet>(addressOf(line, 'take'), body);
    setFailed({ failed: reply.ok ? null : reply });
    if (!reply.ok) return setTried(null);
    if (dryRun) return setTried(reply.value);
    told.set(inbox.taken(reply.value.entries.map(({ text }) => text).join('; ')));
    void refresh();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void ask(tried === null);
  };
  return (
    <form className="stack settle" onSubmit={submit} onChange={() => setTried(null)}>
      <Choices
        label={inbox.unit}
        value={UNITS.find((each) => each === unit) ?? null}
        options={UNITS.map((each) => ({ value: each, text: each }))}
        onChange={(chosen) => {
          setUnit(chosen);
          setTried(null);
        }}
      />
      <TextField label={inbox.store} value={store} onChange={setStore} />
      <fieldset>
        <legend>{inbox.cells}</legend>
        <div className="facts">
          {line.cells.map(({ heading, cell }) => (
            <TextField
              key={heading}
              label={heading}
              value={cells[heading] ?? cell}
              onChange={(value) => setCells({ ...cells, [heading]: value })}
            />
          ))}
        </div>
      </fieldset>
      {failed !== null && <Failed pressed sheet={{ failed, again: () => void ask(true) }} />}
      {tried !== null && <WouldBecome sheet={tried} />}
      <button type="submit" className={tried === null ? 'b' : 'b main'}>
        {tried === null ? inbox.try : inbox.take}
      </button>
    </form>
  );
}

function WouldBecome({ sheet }: { readonly sheet: TakenSheet }) {
  return (
    <div>
      <h3>{words().inbox.would}</h3>
      <ul>
        {sheet.entries.map((entry) => (
          <li key={entry.id}>
            <span className="soft nowrap">{entry.happened}</span> <Phrased text={entry.text} />
          </li>
        ))}
      </ul>
    </div>
  );
}

interface Settling {
  readonly unit: string;
  readonly store: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly dryRun: boolean;
}

function fieldsOf({ unit, store, cells, dryRun }: Settling) {
  const added = store.trim() === '' ? cells : { ...cells, store: store.trim() };
  return {
    ...(unit !== '' && { unit }),
    ...(Object.keys(added).length > 0 && { cells: added }),
    ...(dryRun && { dryRun }),
  };
}

function addressOf({ ref }: InboxLine, act: 'take' | 'drop'): string {
  return `/api/inbox/${encodeURIComponent(entryName(ref))}/${act}`;
}

function Drop({ line }: { readonly line: InboxLine }) {
  const { inbox } = words();
  const [reason, setReason] = useState('');
  const [{ failed }, setFailed] = useState<Failing>({ failed: null });
  const drop = async () => {
    const body = { reason, by: device.get().office };
    const reply = await postSheet<DroppedSheet>(addressOf(line, 'drop'), body);
    if (!reply.ok) return setFailed({ failed: reply });
    told.set(inbox.dropped(line.ref));
    void refresh();
  };
  return (
    <div className="stack settle">
      <ReasonField label={inbox.dropWhy} usual={inbox.dropReasons} value={reason} onChange={setReason} />
      {failed !== null && <Failed pressed sheet={{ failed, again: () => void drop() }} />}
      <button type="button" className="b" disabled={reason.trim() === ''} onClick={() => void drop()}>
        {inbox.drop}
      </button>
    </div>
  );
}
