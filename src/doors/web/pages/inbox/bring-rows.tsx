// Rows that are pasted or come in a file: looked at first, each with what it would become; then the good ones are added.
import { type ChangeEvent, type FormEvent, useId, useState } from 'react';
import type { TableLine, TableSheet } from '../../../../papers/index.ts';
import { postSheet, type Reply } from '../../api/ask-server.ts';
import { refresh } from '../../api/cache.ts';
import { device } from '../../device.ts';
import { words } from '../../language.ts';
import { told } from '../../open.ts';
import { Choices, TextField } from '../../parts/fields.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Remedy } from '../../parts/remedy.tsx';
import { Failed } from '../../parts/states.tsx';
import { Table } from '../../parts/table.tsx';

interface Brought {
  readonly name: string;
  readonly text?: string;
  readonly base64?: string;
}

export function BringRows() {
  const { inbox } = words();
  // Made anew after each import: a browser tells of a chosen file only when it is another one.
  const [round, setRound] = useState(0);
  return (
    <section className="row no-print">
      <div className="margin">
        <h2>{inbox.pasteHead}</h2>
        <p className="xs">{inbox.pasteNote}</p>
      </div>
      <Rows key={round} onDone={() => setRound(round + 1)} />
    </section>
  );
}

type Refused = Extract<Reply<unknown>, { ok: false }>;

function Rows({ onDone }: { readonly onDone: () => void }) {
  const { inbox } = words();
  const [brought, setBrought] = useState<Brought>(NO_ROWS);
  const [late, setLate] = useState('');
  const [said, setSaid] = useState<Declared>(NOTHING_SAID);
  const [seen, setSeen] = useState<TableSheet | null>(null);
  const [failed, setFailed] = useState<Refused | null>(null);
  const [busy, setBusy] = useState(false);
  const ask = async (dryRun: boolean) => {
    setBusy(true);
    const reply = await postSheet<TableSheet>('/api/import/table', bodyOf({ brought, late, said, dryRun }));
    setBusy(false);
    setFailed(reply.ok ? null : reply);
    if (!reply.ok) return;
    if (dryRun) return setSeen(reply.value);
    told.set(`${inbox.added(reply.value.entries)}; ${inbox.waiting(reply.value.waiting)}`);
    onDone();
    void refresh();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void ask(true);
  };
  const change = (more: Partial<Declared>) => setSaid({ ...said, ...more });
  return (
    <form className="stack" onSubmit={submit} onChange={() => setSeen(null)}>
      <Source brought={brought} onChange={setBrought} />
      <TextField label={inbox.late} value={late} onChange={setLate} />
      <Declare said={said} onChange={change} />
      {failed !== null && <Failed pressed sheet={{ failed, again: () => void ask(true) }} />}
      <div className="flow">
        <button type="submit" className="b" disabled={busy || isNothing(brought)}>
          {busy ? inbox.working : inbox.look}
        </button>
        {seen !== null && (
          <button type="button" className="b main" disabled={busy} onClick={() => void ask(false)}>
            {inbox.add(seen.taken, seen.lines)}
          </button>
        )}
      </div>
      {seen !== null && (
        <Preview
          sheet={seen}
          said={said}
          onMeans={(heading, means) => change({ columns: { ...said.columns, [heading]: means } })}
        />
      )}
    </form>
  );
}

const NO_ROWS: Brought = { name: 'pasted.tsv', text: '' };

function isNothing({ text, base64 }: Brought): boolean {
  return base64 === undefined && (text ?? '').trim() === '';
}

interface Asked {
  readonly brought: Brought;
  readonly late: string;
  readonly said: Declared;
  readonly dryRun: boolean;
}

/** Whoever adds rows has looked at them: many at once are meant. */
function bodyOf({ brought, late, said, dryRun }: Asked) {
  const why = late.trim() === '' ? {} : { late: late.trim() };
  const sure = dryRun ? {} : { sure: true };
  return { ...brought, ...why, ...sure, options: optionsOf(said), dryRun, by: device.get().office };
}

function Source({
  brought,
  onChange,
}: {
  readonly brought: Brought;
  readonly onChange: (brought: Brought) => void;
}) {
  const { inbox } = words();
  const id = useId();
  return (
    <>
      <div className="field">
        <label htmlFor={id}>{inbox.paste}</label>
        <textarea
          id={id}
          className="f rows"
          rows={6}
          spellCheck={false}
          value={brought.text ?? ''}
          onChange={(event) => onChange({ ...NO_ROWS, text: event.target.value })}
        />
      </div>
      <div className="field">
        <label htmlFor={`${id}-file`}>{inbox.file}</label>
        <input
          id={`${id}-file`}
          className="f"
          type="file"
          accept=".csv,.tsv,.txt,.jsonl,text/csv,text/tab-separated-values"
          onChange={(event) => void readFile(event).then(onChange)}
        />
      </div>
    </>
  );
}

/** Bytes as they are: what they mean is read where the book is. */
async function readFile(event: ChangeEvent<HTMLInputElement>): Promise<Brought> {
  const file = event.target.files?.[0];
  if (file === undefined) return NO_ROWS;
  const bytes = new Uint8Array(await file.arrayBuffer());
  let text = '';
  for (let from = 0; from < bytes.length; from += 8192)
    text += String.fromCharCode(...bytes.subarray(from, from + 8192));
  return { name: file.name, base64: btoa(text) };
}

/** What a person says of a table, so that nothing in it has to be guessed. */
interface Declared {
  readonly decimal: '' | 'comma' | 'point';
  readonly dates: '' | 'day-first' | 'month-first';
  readonly zone: string;
  readonly columns: Readonly<Record<string, string>>;
}

const NOTHING_SAID: Declared = { decimal: '', dates: '', zone: '', columns: {} };

function optionsOf({ decimal, dates, zone, columns }: Declared) {
  return {
    ...(decimal !== '' && { decimal }),
    ...(dates !== '' && { dates }),
    ...(zone.trim() !== '' && { zone: zone.trim() }),
    ...(Object.keys(columns).length > 0 && { columns }),
  };
}

function Declare({
  said,
  onChange,
}: {
  readonly said: Declared;
  readonly onChange: (change: Partial<Declared>) => void;
}) {
  const { inbox } = words();
  return (
    <details className="declare">
      <summary>{inbox.declare}</summary>
      <div className="stack">
        <Choices<Declared['decimal']>
          label={inbox.decimal}
          value={said.decimal}
          options={[
            { value: '', text: inbox.proven },
            { value: 'comma', text: inbox.comma },
            { value: 'point', text: inbox.pointSign },
          ]}
          onChange={(decimal) => onChange({ decimal })}
        />
        <Choices<Declared['dates']>
          label={inbox.dates}
          value={said.dates}
          options={[
            { value: '', text: inbox.proven },
            { value: 'day-first', text: inbox.dayFirst },
            { value: 'month-first', text: inbox.monthFirst },
          ]}
          onChange={(dates) => onChange({ dates })}
        />
        <TextField
          label={inbox.clock}
          hint={inbox.clockHint}
          value={said.zone}
          onChange={(zone) => onChange({ zone })}
        />
      </div>
    </details>
  );
}

interface PreviewTold {
  readonly sheet: TableSheet;
  readonly said: Declared;
  readonly onMeans: (heading: string, means: string) => void;
}

function Preview({ sheet, said, onMeans }: PreviewTold) {
  const { inbox } = words();
  return (
    <div className="stack">
      <p>
        {[inbox.waiting(sheet.waiting), inbox.known(sheet.known), inbox.nothing(sheet.saysNothing)].join(
          ', ',
        )}
        . <span className="soft">{inbox.zone(sheet.zone.offset)}</span>
      </p>
      <details className="declare">
        <summary>{inbox.columns}</summary>
        <p className="xs soft">{inbox.columnsNote}</p>
        <div className="facts">
          {sheet.columns.map(({ heading, means }) => (
            <TextField
              key={heading}
              label={heading}
              value={said.columns[heading] ?? means}
              onChange={(value) => onMeans(heading, value)}
            />
          ))}
        </div>
      </details>
      <Table
        caption={inbox.preview}
        rows={sheet.preview}
        keyOf={({ line }) => `${line}`}
        columns={[
          { head: inbox.line, right: true, text: ({ line }) => `${line}` },
          {
            head: inbox.becomes,
            text: ({ what }) => inbox.what[what],
            show: ({ what }) => <b className="nowrap">{inbox.what[what]}</b>,
          },
          {
            head: inbox.text,
            text: ({ text, reasons }) => [text, ...reasons.map((each) => each.text)].join('; '),
            show: (line) => <InWords line={line} />,
          },
        ]}
      />
    </div>
  );
}

function InWords({ line }: { readonly line: TableLine }) {
  return (
    <>
      <Phrased text={line.text} />
      {line.reasons.map((finding) => (
        <p key={finding.text} className="xs">
          <Phrased text={finding.text} strong /> <Remedy text={finding.remedy} />
        </p>
      ))}
    </>
  );
}
