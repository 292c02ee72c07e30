// The second person of a two-person act: an office, and its own code where it has one, typed so that nobody reads it.
import { useState } from 'react';
import type { SecondNamed } from '../../../desk/index.ts';
import { useSheet } from '../api/cache.ts';
import { words } from '../language.ts';

export function Second({ onChoose }: { readonly onChoose: (second: SecondNamed) => void }) {
  const { data } = useSheet<{ readonly offices: readonly string[] }>('/api/offices');
  const [code, setCode] = useState('');
  const { log } = words();
  const choose = (office: string): void => {
    setCode('');
    onChoose(code === '' ? { office } : { office, code });
  };
  return (
    <div className="stack">
      <p>
        <b>{log.second}</b> {log.secondNote}
      </p>
      <label className="field">
        <b>{log.secondCode}</b>
        <input
          className="f"
          type="password"
          inputMode="numeric"
          autoComplete="off"
          maxLength={12}
          value={code}
          onChange={({ target }) => setCode(target.value)}
        />
      </label>
      <div className="flow">
        {(data?.offices ?? []).map((office) => (
          <button key={office} type="button" className="b small" onClick={() => choose(office)}>
            {log.secondSave(office)}
          </button>
        ))}
      </div>
    </div>
  );
}
