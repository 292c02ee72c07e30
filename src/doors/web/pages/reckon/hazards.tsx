// Hazard boxes: signal word and shape before the answer they belong to; a limit is a line to write on.
import { Fragment } from 'react';
import type { ReckonCaution } from '../../../../papers/index.ts';
import { words } from '../../language.ts';

export function Hazards({ cautions }: { readonly cautions: readonly ReckonCaution[] }) {
  if (cautions.length === 0) return null;
  return (
    <ul className="hazards" aria-label={words().reckon.hazards}>
      {cautions.map((caution) => (
        <li key={caution.text} className={`hazard ${caution.signal.toLowerCase()}`}>
          <p className="signal">
            <Sign signal={caution.signal} />
            <b>{caution.signal}</b>
          </p>
          <p>
            <WithBlanks text={caution.text} />
          </p>
        </li>
      ))}
    </ul>
  );
}

/** A triangle where somebody may be hurt, a square where a thing may. */
function Sign({ signal }: Pick<ReckonCaution, 'signal'>) {
  return (
    <svg className="ic" viewBox="0 0 24 24" aria-hidden="true">
      {signal === 'NOTICE' ? (
        <>
          <rect x="2.5" y="2.5" width="19" height="19" className="outline" />
          <path d="M12 10.5v7M12 6v2.5" className="sign-ink" />
        </>
      ) : (
        <>
          <path d="M12 2L23 21.5H1Z" className="outline" />
          <path d="M12 8.5v6.5M12 16.8v2.5" className="sign-ink" />
        </>
      )}
    </svg>
  );
}

const BLANK = '____';

function WithBlanks({ text }: { readonly text: string }) {
  const parts = text.split(BLANK);
  return parts.map((part, k) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: parts of a text that does not change stand where they stand.
    <Fragment key={k}>
      {k > 0 && (
        <span className="blank">
          <span className="hidden">{words().reckon.blank}</span>
        </span>
      )}
      {part}
    </Fragment>
  ));
}
