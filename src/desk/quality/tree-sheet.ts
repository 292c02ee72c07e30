// The tree of a hold as a sheet: the trace, what is proposed with all its water, and what that changes of free water and cover.
import type { Position } from '../../account/index.ts';
import type { HoldTree } from '../../papers/index.ts';
import type { Desk } from '../desk.ts';
import { volumeFigure } from '../figures.ts';
import { effectOf } from './effect.ts';
import { type Followed, traceSheet } from './hold-tree.ts';

export async function treeSheet(
  { desk }: { readonly desk: Desk },
  of: {
    readonly followed: Followed;
    readonly sample: string | null;
    readonly before: Position;
    readonly after: Position;
  },
): Promise<HoldTree> {
  const { followed, sample, before, after } = of;
  const { hold, conditional } = followed.proposal;
  return {
    trace: await traceSheet({ desk, position: before }, followed, { sample, as: 'proposed' }),
    hold,
    conditional,
    heldVolume: waterIn(before, hold),
    conditionalVolume: waterIn(before, conditional),
    effect: effectOf(before, after),
  };
}

export function waterIn(position: Position, stores: readonly string[]) {
  const because = {
    entries: [],
    method: 'stock-sum',
    inputs: [{ name: 'stores', value: stores.join(', '), unit: '' }],
  };
  return volumeFigure(position, position.sumOf(stores), because);
}
