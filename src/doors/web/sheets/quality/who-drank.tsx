// Who drank of held water: shown after the medic's own code, until it is closed; never kept, printed or copied.
import { type FormEvent, useId, useState } from 'react';
import type { DrankLine, WordedFinding } from '../../../../papers/index.ts';
import { postSheet } from '../../api/ask-server.ts';
import { words } from '../../language.ts';
import { Dialog } from '../../parts/dialog.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { screen } from '../../parts/touch-tree.tsx';
import { useTakesFocus } from '../../takes-focus.ts';

export function WhoDrank({ hold }: { readonly hold: string }) {
  const { quality } = words();
  const [lines, setLines] = useState<readonly DrankLine[] | null>(null);
  const [findings, setFindings] = useState<readonly WordedFinding[]>([]);
  const open = async (code: string) => {
    const path = `/api/holds/${encodeURIComponent(hold)}/drank`;
    const reply = await postSheet<{ readonly drank: readonly DrankLine[] }>(path, { code });
    setLines(reply.ok ? reply.value.drank : null);
    setFindings(reply.ok ? [] : reply.findings);
  };
  return (
    <Dialog title={quality.drankTitle(hold)}>
      <div className="stack no-print drank">
        <p>{quality.drankNote}</p>
        {findings.some(({ code }) => code === 'code-none') && <SetCode onSet={() => setFindings([])} />}
        <Said findings={findings} />
        {lines === null && <CodeField label={quality.medicsCode} press={quality.openIt} onCode={open} />}
        {lines !== null && <Lines lines={lines} />}
      </div>
    </Dialog>
  );
}

function Lines({ lines }: { readonly lines: readonly DrankLine[] }) {
  const { quality } = words();
  if (lines.length === 0) return <p>{quality.drankNone}</p>;
  return (
    <ul className="plain">
      {lines.map(({ at, person, from, volume, suspect, ref }) => (
        <li key={`${ref} ${person ?? ''} ${at}`}>
          <b>{at}</b> <Phrased text={quality.drank(person ?? quality.nobodyNamed, screen(volume), from)} />
          <span className="soft">
            , <Phrased text={quality.ofItSuspect(screen(suspect))} /> ({ref})
          </span>
        </li>
      ))}
    </ul>
  );
}

function Said({ findings }: { readonly findings: readonly WordedFinding[] }) {
  const ref = useTakesFocus<HTMLDivElement>(findings.length === 0 ? null : findings);
  if (findings.length === 0) return null;
  return (
    <div className="refusal" role="alert" tabIndex={-1} ref={ref}>
      {findings.map(({ code, text }) => (
        <p key={code}>
          <Phrased text={text} strong />
        </p>
      ))}
    </div>
  );
}

/** Typed so that nobody reads it, and gone from the field as soon as it was used. */
function CodeField(told: {
  readonly label: string;
  readonly press: string;
  readonly hint?: string;
  readonly onCode: (code: string) => Promise<void>;
}) {
  const id = useId();
  const [code, setCode] = useState('');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setCode('');
    void told.onCode(code);
  };
  return (
    <form className="field" onSubmit={submit}>
      <label htmlFor={id}>{told.label}</label>
      <div className="amount-row">
        <input
          id={id}
          className="f"
          type="password"
          inputMode="numeric"
          autoComplete="off"
          maxLength={12}
          value={code}
          data-first
          onChange={({ target }) => setCode(target.value)}
        />
        <button type="submit" className="b" disabled={code === ''}>
          {told.press}
        </button>
      </div>
      {told.hint !== undefined && <p className="xs soft">{told.hint}</p>}
    </form>
  );
}

/** An office without a code gives itself one once; later it takes the old one. */
function SetCode({ onSet }: { readonly onSet: () => void }) {
  const { quality } = words();
  const [findings, setFindings] = useState<readonly WordedFinding[]>([]);
  const set = async (code: string) => {
    const reply = await postSheet<unknown>('/api/codes', { office: 'medic', code });
    setFindings(reply.ok ? [] : reply.findings);
    if (reply.ok) onSet();
  };
  return (
    <>
      <Said findings={findings} />
      <CodeField label={quality.newCode} press={quality.setCode} hint={quality.newCodeHint} onCode={set} />
    </>
  );
}
