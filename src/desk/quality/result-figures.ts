// The figures of a result as they were typed, by flag and by `NAME=VALUE`, read against what the outpost measures.
import type { Fold } from '../../account/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { findParameter, parametersOf } from './parameters.ts';
import { type ResultFigure, readFigure } from './read-figure.ts';

export interface TypedFigures {
  /** By the parameter's name or the beginning of it. */
  readonly figures?: Readonly<Record<string, string>>;
  /** `nitrate=3 mg/L as N`: any parameter, also one that the outpost does not know. */
  readonly values?: readonly string[];
}

/** All of them, or every fault at once. */
export function readFigures(fold: Fold, { figures = {}, values = [] }: TypedFigures): Answer<ResultFigure[]> {
  const known = parametersOf(fold);
  const read: ResultFigure[] = [];
  const findings: Finding[] = [];
  const take = (answer: Answer<ResultFigure>) => {
    if (answer.ok) read.push(answer.value);
    else findings.push(...answer.findings);
  };
  const ownOf = (name: string) => known.find((one) => one.name === name);
  for (const [typed, text] of Object.entries(figures)) {
    const found = findParameter(known, typed);
    take(found.ok ? readFigure(found.value, text, ownOf(found.value)) : found);
  }
  for (const typed of values) {
    const at = typed.indexOf('=');
    const typedName = typed.slice(0, at).trim();
    if (at < 1 || typedName === '') {
      const data = {
        field: 'value',
        received: typed.slice(0, 60),
        expected: 'NAME=VALUE, such as "nitrate=3 mg/L as N"',
      };
      findings.push(deskFinding('field-needed', data, { where: { field: 'value' } }));
      continue;
    }
    const found = findParameter(known, typedName);
    const name = found.ok ? found.value : typedName.slice(0, 80);
    take(readFigure(name, typed.slice(at + 1), ownOf(name)));
  }
  if (findings.length > 0) return no('bad input', ...findings);
  if (read.length > 0) return yes(read);
  const data = { field: 'value', received: null, expected: 'at least one figure, such as --silver 0.19mg/L' };
  return no('wrong use', deskFinding('field-needed', data, { where: { field: 'value' } }));
}
