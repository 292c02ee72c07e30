// The hold tree: which stores a bad sample touched, each with its litres, under the store that its water came from.
import { formatFigure } from '../../../ground/units/index.ts';
import type { SheetFigure, StoreMark } from '../../../papers/index.ts';
import { GradeBadge } from './grade.tsx';
import { Mark } from './store-glyph.tsx';

export interface HoldNode {
  readonly store: string;
  readonly grade: string | null;
  /** What came from the store above it; null for the first. */
  readonly came: SheetFigure | null;
  readonly volume: SheetFigure | null;
  readonly mark: StoreMark;
  readonly fed: readonly HoldNode[];
  /** When and by which way it came; what became of it where no mark says it. */
  readonly note?: string;
  /** A line or a place of use has no grade. */
  readonly isStore?: boolean;
}

export function HoldTree({ nodes, label }: { readonly nodes: readonly HoldNode[]; readonly label: string }) {
  return (
    <ul className="tree" aria-label={label}>
      {nodes.map((node) => (
        <li key={node.store}>
          <div className="tree-node">
            {node.came !== null && (
              <span className="tree-came">
                <span aria-hidden="true">→ </span>
                <span className="qty">{formatFigure(node.came, { style: 'screen' })}</span>
              </span>
            )}
            {node.isStore !== false && <GradeBadge grade={node.grade} />}
            <b>{node.store}</b>
            {node.volume !== null && (
              <span className="qty">{formatFigure(node.volume, { style: 'screen' })}</span>
            )}
            <Mark store={node} />
            {node.note !== undefined && <span className="xs soft">{node.note}</span>}
          </div>
          {node.fed.length > 0 && <HoldTree nodes={node.fed} label={node.store} />}
        </li>
      ))}
    </ul>
  );
}
