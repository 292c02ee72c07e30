// When it happened: now, or so many minutes earlier, with the clock that this comes to; for anything else a time is typed.
import { useEffect, useId, useRef, useState } from 'react';
import { parseNumber } from '../../../ground/units/index.ts';
import { words } from '../language.ts';
import { usePresent } from '../present.ts';
import { clockBefore, judgeWhen, type Present, tidyWhen } from '../when-typed.ts';

interface Told {
  readonly value: string;
  readonly onChange: (at: string) => void;
}

export function WhenField({ value, onChange }: Told) {
  const present = usePresent();
  const [typed, setTyped] = useState(false);
  if (typed) return <TypedWhen value={value} onChange={onChange} present={present} />;
  return <SteppedWhen value={value} onChange={onChange} present={present} onType={() => setTyped(true)} />;
}

function SteppedWhen({
  value,
  onChange,
  present,
  onType,
}: Told & { readonly present: Present; readonly onType: () => void }) {
  const { log } = words();
  const past = minutesIn(value);
  const step = (by: number) => onChange(`-${past + by}m`);
  return (
    <fieldset className="when">
      <legend>{log.when}</legend>
      <div className="flow">
        <output className="unit">
          {past === 0 ? log.whenNow : log.earlierAt(past, clockBefore(past, present))}
        </output>
        {[5, 15, 60].map((by) => (
          <button
            key={by}
            type="button"
            className="b small"
            aria-label={log.earlier(by)}
            onClick={() => step(by)}
          >
            −{by}
          </button>
        ))}
        {past > 0 && (
          <button type="button" className="b small" onClick={() => onChange('')}>
            {log.whenNow}
          </button>
        )}
        <button type="button" className="b small" onClick={onType}>
          {words().time.field} …
        </button>
      </div>
    </fieldset>
  );
}

/** Read when it is left, never while somebody is still typing. */
function TypedWhen({ value, onChange, present }: Told & { readonly present: Present }) {
  const { log } = words();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(value);
  const [isUnread, setUnread] = useState(false);
  useEffect(() => input.current?.focus(), []);
  const read = () => {
    const tidy = tidyWhen(text, present);
    setUnread(tidy !== '' && judgeWhen(tidy, present) === 'unreadable');
  };
  return (
    <div className="field">
      <label htmlFor={id}>{log.when}</label>
      <input
        ref={input}
        id={id}
        className="f"
        value={text}
        autoComplete="off"
        spellCheck={false}
        aria-invalid={isUnread}
        aria-describedby={`${id}-hint`}
        onBlur={read}
        onChange={(event) => {
          setText(event.target.value);
          setUnread(false);
          onChange(tidyWhen(event.target.value, present));
        }}
      />
      {isUnread && (
        <p className="off" role="alert">
          {log.whenUnread(text)}
        </p>
      )}
      <p className="xs soft" id={`${id}-hint`}>
        {log.whenHint}
      </p>
    </div>
  );
}

function minutesIn(at: string): number {
  const read = parseNumber(/^-(\d+)m$/.exec(at)?.[1] ?? '');
  return read.ok ? read.value : 0;
}
