// Where there are no figures: what is still needed, where to look, or a refusal with its way out.
import type { WordedFinding } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { StillText } from './still.tsx';
import type { Verdict } from './verdict.ts';

export function NoAnswer({
  verdict,
  again,
}: {
  readonly verdict: Exclude<Verdict, { kind: 'answer' }>;
  readonly again: () => void;
}) {
  const { reckon, frame } = words();
  switch (verdict.kind) {
    case 'needs':
    case 'look':
      return (
        <div className="not-yet">
          <p>{verdict.kind === 'needs' ? reckon.needs : reckon.look}</p>
          <ul className="plain">
            {verdict.fields.map(({ name, label }) => (
              <li key={name}>{label}</li>
            ))}
          </ul>
        </div>
      );
    case 'untold':
      return (
        <div className="not-yet">
          <Findings findings={verdict.findings} />
        </div>
      );
    case 'lost':
      return (
        <div className="refusal">
          <p>{frame.noServer}</p>
          <button type="button" className="b" onClick={again}>
            {frame.tryAgain}
          </button>
        </div>
      );
    default:
      return (
        <div className={verdict.kind === 'refused' ? 'refusal' : 'refusal cannot'}>
          <Findings findings={verdict.findings} />
        </div>
      );
  }
}

function Findings({ findings }: { readonly findings: readonly WordedFinding[] }) {
  const { reckon, finding: names } = words();
  return findings.map((finding) => (
    <div key={`${finding.code} ${finding.text}`}>
      <p>
        <b>
          <StillText text={finding.text} />
        </b>
      </p>
      <dl className="pairs">
        <dt>{names.expected}</dt>
        <dd>
          <StillText text={finding.expected} />
        </dd>
        <dt>{names.received}</dt>
        <dd>
          <StillText text={finding.received} />
        </dd>
        <dt>{reckon.wayOut}</dt>
        <dd>
          <StillText text={finding.remedy} />
        </dd>
      </dl>
    </div>
  ));
}
