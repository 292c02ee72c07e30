// A line that needs somebody: the level as sign and word, the cause, what follows, and the first act.
import { type ReactNode, useId, useState } from 'react';
import { firstThought, levels, type WordedFinding } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { FindingPairs } from './finding-pairs.tsx';
import { Phrased } from './phrased.tsx';
import { Remedy } from './remedy.tsx';

export function LevelSign({ severity }: { readonly severity: WordedFinding['severity'] }) {
  const word = levels[severity] || words().finding.error;
  return (
    <span className="level">
      <Sign severity={severity} />
      <b>{word}</b>
    </span>
  );
}

/** The sign alone, where the words beside it say the level. */
export function Sign({ severity }: { readonly severity: WordedFinding['severity'] }) {
  return (
    <svg className="ic" viewBox="0 0 24 24" aria-hidden="true">
      {sign(severity)}
    </svg>
  );
}

function sign(severity: WordedFinding['severity']): ReactNode {
  if (severity === 'act-today') {
    return (
      <>
        <path d="M12 1L23 12L12 23L1 12Z" className="day" />
        <path d="M12 6v7M12 16v2.5" className="sign-dark" />
      </>
    );
  }
  if (severity === 'know') {
    return (
      <>
        <circle cx="12" cy="12" r="9.5" className="know" />
        <path d="M12 11v6M12 6.5v2.5" className="sign-ink" />
      </>
    );
  }
  return (
    <>
      <rect x="2" y="2" width="20" height="20" className="now" />
      <path d="M12 6v7M12 16v2.5" className="sign-light" />
    </>
  );
}

export interface NeedLine {
  readonly finding: WordedFinding;
  readonly alike: number;
}

/** The first thought stands; the rest and the remedy open below it. */
export function FindingLine({
  need,
  act,
  forbids = null,
  store,
}: {
  readonly need: NeedLine;
  readonly act?: ReactNode;
  /** What must not be done meanwhile. */
  readonly forbids?: string | null;
  /** The store that it is about, where the finding itself names none. */
  readonly store?: string | undefined;
}) {
  const { finding, alike } = need;
  const [open, setOpen] = useState(false);
  const id = useId();
  const cause = firstThought(finding.text);
  const rest = finding.text.slice(cause.length).trim();
  // Of what is to be acted on now, why it is so and what follows stand there at once.
  const isUrgent = finding.severity === 'act-now' && rest !== '';
  return (
    <li className="need">
      <LevelSign severity={finding.severity} />
      <div className="need-text">
        <p>
          <Phrased text={cause} strong />
          {isUrgent && (
            <span className="no-print">
              {' '}
              <Phrased text={rest} />
            </span>
          )}
          {forbids !== null && <b> {forbids}</b>}
          {alike > 1 && <span className="soft"> ({words().today.alike(alike)})</span>}
        </p>
        {open && <More id={id} finding={finding} rest={isUrgent ? '' : rest} store={store} />}
      </div>
      <div className="need-acts no-print">
        {act}
        <button
          type="button"
          className="b small"
          aria-expanded={open}
          aria-controls={open ? id : undefined}
          onClick={() => setOpen(!open)}
        >
          {open ? words().today.fewer : words().finding.more}
        </button>
      </div>
    </li>
  );
}

function More({
  id,
  finding,
  rest,
  store,
}: {
  readonly id: string;
  readonly finding: WordedFinding;
  readonly rest: string;
  readonly store: string | undefined;
}) {
  const { finding: names } = words();
  return (
    <div id={id} className="need-more">
      {rest !== '' && (
        <p>
          <Phrased text={rest} />
        </p>
      )}
      <FindingPairs finding={finding} act={names.act}>
        <Remedy text={finding.remedy} store={finding.where.store ?? store} />
      </FindingPairs>
    </div>
  );
}
