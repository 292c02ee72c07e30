// The book as a question about quality looks at it: account, position and what was sampled and held, in one view.
import { type Fold, type Position, positionOf } from '../../account/index.ts';
import { type Answer, yes } from '../answer.ts';
import { type Desk, type Moment, type Sight, viewOf } from '../desk.ts';
import { type QualityPast, qualityPast } from './past.ts';

export interface Seen {
  readonly desk: Desk;
  readonly sight: Sight;
  readonly fold: Fold;
  readonly position: Position;
  readonly past: QualityPast;
}

export async function seenAt(
  desk: Desk,
  sight: Sight,
  moment: Pick<Moment, 'nowUtcMs'>,
): Promise<Answer<Seen>> {
  const view = viewOf(sight);
  const opened = await desk.account(view);
  if (!opened.ok) return opened;
  const { fold } = opened.value;
  const atMs = sight.kind === 'now' ? desk.presentMs(fold, moment) : sight.ms;
  const position = positionOf(fold, Math.max(atMs, fold.lastEntryMs ?? atMs));
  return yes({ desk, sight, fold, position, past: await qualityPast(desk.port, view) });
}
