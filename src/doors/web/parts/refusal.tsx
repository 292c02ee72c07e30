// A refusal: what speaks against it, the way out, and how it is kept all the same; or a question that is answered once.
import { type ReactNode, useState } from 'react';
import type { SecondNamed } from '../../../desk/index.ts';
import type { WordedFinding } from '../../../papers/index.ts';
import type { Entering, Problem } from '../entering.ts';
import { words } from '../language.ts';
import { useTakesFocus } from '../takes-focus.ts';
import { askedAbout } from './asked.ts';
import { ReasonField } from './fields.tsx';
import { FindingPairs } from './finding-pairs.tsx';
import { Phrased } from './phrased.tsx';
import { Remedy } from './remedy.tsx';
import { Second } from './second.tsx';

interface About<Request> {
  readonly problem: Problem<Request>;
  readonly entering: Entering<Request>;
}

export function Refusal<Request>({ entering }: { readonly entering: Entering<Request> }) {
  const { problem } = entering;
  const ref = useTakesFocus<HTMLDivElement>(problem);
  if (problem === null) return null;
  const { log, frame } = words();
  const isAsked = askedAbout(problem);
  return (
    <div className="refusal" role="alert" tabIndex={-1} ref={ref}>
      <p>
        <b>{isAsked ? log.asked : log.bad}</b> {problem.status === 0 && frame.noServer}
      </p>
      <ul>
        {problem.findings.map((finding) => (
          <Said key={`${finding.code} ${finding.text}`} finding={finding} isAsked={isAsked} />
        ))}
      </ul>
      {isAsked ? (
        <Asked problem={problem} entering={entering} />
      ) : (
        <WayOn problem={problem} entering={entering} />
      )}
    </div>
  );
}

function Said({ finding, isAsked }: { readonly finding: WordedFinding; readonly isAsked: boolean }) {
  const { log, finding: names } = words();
  return (
    <li>
      <p>
        <Phrased text={finding.text} strong />
      </p>
      <FindingPairs finding={finding} act={isAsked ? names.act : log.wayOut}>
        <Remedy text={finding.remedy} store={finding.where.store} flags={false} />
      </FindingPairs>
    </li>
  );
}

/** It may be so: kept when somebody says so, and else typed anew. */
function Asked<Request>({ problem, entering }: About<Request>) {
  const { log } = words();
  return (
    <div className="stack">
      <p>{log.askedQuestion}</p>
      <div className="flow">
        <button
          type="button"
          className="b"
          disabled={entering.saving}
          onClick={() =>
            void entering.save(problem.request, { ...problem.more, sure: true }, problem.second ?? undefined)
          }
        >
          {log.askedKeep}
        </button>
        <button type="button" className="b" onClick={() => changeIt(problem, entering)}>
          {log.askedChange}
        </button>
      </div>
    </div>
  );
}

/** Back to the field that the question was about, or to the first one. */
function changeIt<Request>(problem: Problem<Request>, entering: Entering<Request>): void {
  const dialog = document.querySelector('dialog[open]');
  const field = problem.findings[0]?.where.field;
  const asked = dialog?.querySelector<HTMLElement>(`[data-field="${CSS.escape(field ?? '')}"]`) ?? null;
  entering.forget();
  (asked ?? dialog?.querySelector<HTMLElement>('input') ?? null)?.focus();
}

/** A rule refuses an intention, never a fact: what each finding leaves open. */
function WayOn<Request>({ problem, entering }: About<Request>) {
  const codes = new Set(problem.findings.map(({ code }) => code));
  const { log } = words();
  const again = (more: object, second?: SecondNamed) =>
    void entering.save(problem.request, { ...problem.more, ...more }, second ?? problem.second ?? undefined);
  if (['second-needed', 'code-wrong', 'code-waits'].some((code) => codes.has(code)))
    return <Second onChoose={(second) => again({}, second)} />;
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
  const ref = useTakesFocus<HTMLDivElement>(isOpen);
  if (!isOpen) {
    return (
      <button type="button" className="b" onClick={() => setOpen(true)}>
        {told.open}
      </button>
    );
  }
  return (
    <div className="stack" tabIndex={-1} ref={ref}>
      {told.children}
      <ReasonField label={told.why} usual={told.usual} value={reason} onChange={setReason} />
      <button type="button" className="b" disabled={reason.trim() === ''} onClick={() => told.onSave(reason)}>
        {told.save}
      </button>
    </div>
  );
}
