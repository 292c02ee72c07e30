// The tree of a trace as nodes of a paper: each place under the one that its suspect water came from.
import { formatFigure, roundToDigits, styled } from '../../../ground/units/index.ts';
import type { SheetFigure } from '../../sheets/figure.ts';
import type { TouchLine, TraceSheet } from '../../sheets/holds.ts';
import { fates } from '../../words/en/holds.ts';
import { notice as words } from '../../words/en/papers-quality.ts';

interface Node {
  readonly depth: number;
  readonly text: string;
}

/** Depth first, in the order of the trace. What came from a place that the trace does not show stands at the root. */
export function treeNodes(
  { touched }: Pick<TraceSheet, 'touched'>,
  onHold: ReadonlySet<string>,
): readonly Node[] {
  const known = new Set(touched.map(({ name }) => name));
  const parentOf = ({ path, isSource, name }: TouchLine): string | null => {
    const from = path.at(-1)?.from;
    return isSource || from === undefined || from === name || !known.has(from) ? null : from;
  };
  const seen = new Set<TouchLine>();
  const under = (parent: string | null, depth: number): readonly Node[] =>
    touched
      .filter((line) => parentOf(line) === parent && !seen.has(line))
      .flatMap((line) => {
        seen.add(line);
        return [{ depth, text: saidNode(line, onHold) }, ...under(line.name, depth + 1)];
      });
  const rooted = under(null, 0);
  // Water that went in a circle has no root: it is shown all the same.
  const circling = touched.filter((line) => !seen.has(line));
  return [...rooted, ...circling.map((line) => ({ depth: 0, text: saidNode(line, onHold) }))];
}

/** Traces of traces are not told to the drop. */
const LEAST_L = 0.01;

/** Water that nobody knows the ± of is said with `about`. */
export function saidWater(figure: SheetFigure): string {
  const { value, u95, unit } = figure;
  if (u95 !== null) return formatFigure(figure, { style: 'screen' });
  if (value > 0 && value < LEAST_L) return `less than\u00A0${styled(`${LEAST_L}`, 'screen')}\u00A0${unit}`;
  return `about\u00A0${styled(roundToDigits(value, 2), 'screen')}\u00A0${unit}`;
}

/** A trace tells what it would hold; whether it is held is for the hold to say. */
function saidNode(line: TouchLine, onHold: ReadonlySet<string>): string {
  const isProposed = line.fate === 'hold' || line.fate === 'conditional';
  return words.node(line, {
    isHeld: isProposed && onHold.has(line.name),
    suspect: saidWater(line.suspect),
    held: line.held === null ? null : saidWater(line.held),
    fate: isProposed && !onHold.has(line.name) ? words.notOnIt : fates[line.fate],
  });
}
