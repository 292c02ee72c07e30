// A refusal: what speaks against it, the way out, and how it is kept all the same when it has already happened.
import { type ReactNode, useState } from 'react';
import type { WordedFinding } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import type { Entering, Problem } from '../entering.ts';
import { words } from '../language.ts';
import { ReasonField } from './fields.tsx';
import { Phrased, Remedy } from './finding-line.tsx';

export function Refusal({ entering }: { readonly entering: Entering }) {
  const { problem } = entering;
  if (problem === null) return null;
  const { log, frame } = words();
  return (
    <div className="refusal" role="alert">
      {problem.findings.length === 0 && (
        <p>
          <b>{log.bad}</b> {problem.status === 0 && frame.noServer}
        </p>
      )}
      <ul>
        {problem.findings.map((finding) => (
          <Said key={`${finding.code} ${finding.text}`} finding={finding} />
        ))}
      </ul>
      <WayOn problem={problem} entering={entering} />
    </div>
  );
}

function Said({ finding }: { readonly finding: WordedFinding }) {
  const { log, finding: names } = words();
  return (
    <li>
      <p>
        <Phrased text={finding.text} strong />
      </p>
      <dl className="pairs">
        <dt>{names.expected}</dt>
        <dd>
          <Phrased text={finding.expected} />
        </dd>
        <dt>{names.received}</dt>
        <dd>
          <Phrased text={finding.received} />
        </dd>
        <dt>{log.wayOut}</dt>
        <dd>
          <Remedy text={ofThePage(finding.remedy)} />
        </dd>
      </dl>
    </li>
  );
}

/** What a sentence says of flags of the command line has a button of its own here. */
function ofThePage(remedy: string): string {
  const sentences = remedy.split(/(?<=\.) (?=[A-Z])/).filter((sentence) => !/ --[a-z]/.test(sentence));
  return sentences.length === 0 ? remedy : sentences.join(' ');
}

/** A rule refuses an intention, never a fact: what each finding leaves open. */
function WayOn({ problem, entering }: { readonly problem: Problem; readonly entering: Entering }) {
  const codes = new Set(problem.findings.map(({ code }) => code));
  const { log } = words();
  const again = (more: object, second?: string) =>
    void entering.save(problem.request, { ...problem.more, ...more }, second);
  if (codes.has('second-needed')) return <Second onChoose={(office) => again({}, office)} />;
  if (codes.has('day-closed')) {
    return (
      <WithReason
        open={log.late}
        why={log.lateWhy}
        usual={log.lateReasons}
        save={log.lateSave}
        onSave={(late) => again({ late })}
      />
    );
  }
  if (!codes.has('intention-refused')) return null;
  return (
    <WithReason
      open={log.happened}
      why={log.happenedWhy}
      usual={log.happenedReasons}
      save={log.happenedSave}
      onSave={(happened) => again({ happened })}
    >
      <p className="xs">{log.happenedNote}</p>
    </WithReason>
  );
}

function WithReason(told: {
  readonly open: string;
  readonly why: string;
  readonly usual: readonly string[];
  readonly save: string;
  readonly onSave: (reason: string) => void;
  readonly children?: ReactNode;
}) {
  const [isOpen, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  if (!isOpen) {
    return (
      <button type="button" className="b" onClick={() => setOpen(true)}>
        {told.open}
      </button>
    );
  }
  return (
    <div className="stack">
      {told.children}
      <ReasonField label={told.why} usual={told.usual} value={reason} onChange={setReason} />
      <button type="button" className="b" disabled={reason.trim() === ''} onClick={() => told.onSave(reason)}>
        {told.save}
      </button>
    </div>
  );
}

function Second({ onChoose }: { readonly onChoose: (office: string) => void }) {
  const { data } = useSheet<{ readonly offices: readonly string[] }>('/api/offices');
  const { log } = words();
  return (
    <div className="stack">
      <p>
        <b>{log.second}</b> {log.secondNote}
      </p>
      <div className="flow">
        {(data?.offices ?? []).map((office) => (
          <button key={office} type="button" className="b small" onClick={() => onChoose(office)}>
            {log.secondSave(office)}
          </button>
        ))}
      </div>
    </div>
  );
}
