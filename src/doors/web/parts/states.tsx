// What stands where a sheet is not there yet, or could not be read: words, never a moving picture.
import { useEffect, useState } from 'react';
import type { Sheet } from '../api/cache.ts';
import { words } from '../language.ts';
import { useTakesFocus } from '../takes-focus.ts';
import { Phrased } from './phrased.tsx';
import { Remedy } from './remedy.tsx';
import { copyText } from './table.tsx';

/** Nothing for 0.4 s: what is quick would only flicker. */
export function Working() {
  const [isSlow, setSlow] = useState(false);
  useEffect(() => {
    const wait = window.setTimeout(() => setSlow(true), 400);
    return () => window.clearTimeout(wait);
  }, []);
  return (
    <div className="working" role="status">
      {isSlow && <p>{words().state.working}</p>}
    </div>
  );
}

/** What failed, what is safe, what to do: it stands in its own panel and blanks no other. */
export function Failed({
  sheet,
  pressed = false,
}: {
  readonly sheet: Pick<Sheet<unknown>, 'failed' | 'again'>;
  /** It answers a press: it comes into sight and takes the focus. */
  readonly pressed?: boolean;
}) {
  const { state, frame } = words();
  const { failed, again } = sheet;
  const findings = failed?.findings ?? [];
  const ref = useTakesFocus<HTMLDivElement>(pressed ? failed : null);
  return (
    <div className="refusal" role="alert" tabIndex={-1} ref={ref}>
      <p>
        <b>{findings[0] === undefined ? state.failed : <Phrased text={findings[0].text} />}</b> {state.safe}
      </p>
      {findings.map((finding) => (
        <p key={finding.code}>
          <Remedy text={finding.remedy} store={finding.where.store} />
        </p>
      ))}
      <div className="flow">
        <button type="button" className="b" onClick={again}>
          {frame.tryAgain}
        </button>
        <button
          type="button"
          className="b small"
          onClick={() => void copyText(JSON.stringify(failed), state.copied)}
        >
          {state.copyDetails}
        </button>
      </div>
    </div>
  );
}

/** A whole view that could not be read: it still says which view it is. */
export function FailedView({
  name,
  sheet,
}: {
  readonly name: string;
  readonly sheet: Pick<Sheet<unknown>, 'failed' | 'again'>;
}) {
  return (
    <>
      <div className="title">
        <h1>{name}</h1>
      </div>
      <Failed sheet={sheet} />
    </>
  );
}
