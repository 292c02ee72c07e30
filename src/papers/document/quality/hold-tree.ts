// The tree of a trace as nodes of a paper: each place under the one that its suspect water came from.
import { formatFigure } from '../../../ground/units/index.ts';
import type { SheetFigure } from '../../sheets/figure.ts';
import type { TouchLine, TraceSheet } from '../../sheets/holds.ts';
import { fates } from '../../words/en/holds.ts';
import { notice as words } from '../../words/en/papers-quality.ts';

interface Node {
  readonly depth: number;
  readonly text: string;
}

/** Depth first, in the order of the trace. What came from a place that the trace does not show stands at the root. */
export function treeNodes({ touched }: Pick<TraceSheet, 'touched'>): readonly Node[] {
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
        return [{ depth, text: saidNode(line) }, ...under(line.name, depth + 1)];
      });
  const rooted = under(null, 0);
  // Water that went in a circle has no root: it is shown all the same.
  const circling = touched.filter((line) => !seen.has(line));
  return [...rooted, ...circling.map((line) => ({ depth: 0, text: saidNode(line) }))];
}

/** Water that nobody knows the ± of is said with `about`. */
export function saidWater(figure: SheetFigure): string {
  const said = formatFigure(figure, { style: 'screen' });
  return figure.u95 === null ? `about\u00A0${said}` : said;
}

function saidNode(line: TouchLine): string {
  return words.node(line, {
    suspect: saidWater(line.suspect),
    held: line.held === null ? null : saidWater(line.held),
    fate: fates[line.fate],
  });
}
