// The last thing of every form: Save, and beside it what speaks against it, so that a refusal is never out of sight.
import type { ReactNode } from 'react';
import type { Entering, Problem } from '../entering.ts';
import { words } from '../language.ts';
import { askedAbout } from './asked.ts';
import { Phrased } from './phrased.tsx';

interface Told {
  readonly entering: Pick<Entering<unknown>, 'saving'> & {
    readonly problem: Pick<Problem, 'status' | 'findings'> | null;
  };
  readonly disabled?: boolean;
  readonly label?: string;
  /** The first thing to press, where nothing has to be typed. */
  readonly first?: boolean;
  /** Other ways on, beside it. */
  readonly children?: ReactNode;
}

export function SaveRow({ entering, disabled = false, label, first = false, children }: Told) {
  const { log } = words();
  const { problem, saving } = entering;
  const speaks = problem?.findings[0];
  return (
    <div className="save-row">
      <button
        type="submit"
        className="b main"
        data-first={first || undefined}
        disabled={saving || disabled}
        aria-describedby={problem === null ? undefined : 'not-saved'}
      >
        {saving ? log.saving : (label ?? log.save)}
      </button>
      {children}
      {problem !== null && (
        <p className="xs" id="not-saved">
          <b>{askedAbout(problem) ? log.askedShort : log.notSaved}</b>{' '}
          {speaks !== undefined && <Phrased text={speaks.text} />}
        </p>
      )}
    </div>
  );
}
