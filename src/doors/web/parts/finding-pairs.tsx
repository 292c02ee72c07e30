// What a finding expected, what it received, and what to do: the same three wherever one is told whole.
import type { ReactNode } from 'react';
import type { WordedFinding } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { Phrased } from './phrased.tsx';

export function FindingPairs({
  finding,
  act,
  children,
}: {
  readonly finding: Pick<WordedFinding, 'expected' | 'received'>;
  /** What stands before the remedy, which is the children. */
  readonly act: string;
  readonly children: ReactNode;
}) {
  const { finding: names } = words();
  return (
    <dl className="pairs">
      <dt>{names.expected}</dt>
      <dd>
        <Phrased text={finding.expected} />
      </dd>
      <dt>{names.received}</dt>
      <dd>
        <Phrased text={finding.received} />
      </dd>
      <dt>{act}</dt>
      <dd>{children}</dd>
    </dl>
  );
}
