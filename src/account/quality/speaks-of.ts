// Of which stores' water a sample speaks.
import type { Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';

/**
 * A sample of the contents speaks of its store; one that was drawn on the way in, of the store that filled it last; one at a
 * point, of the stores behind that point.
 */
export function speaksOf(fold: Fold, { body }: Entry<'sample'>): readonly string[] {
  if (body.store === undefined) return body.point === undefined ? [] : behindPoint(fold, body.point);
  if (body.drawnFrom === undefined) return [body.store];
  return [fold.stores.get(body.store)?.filledFrom ?? body.store];
}

/** A result without a sample in the book speaks of the store or the point that it names. */
export function namedIn(fold: Fold, { body }: Entry<'result'>): readonly string[] {
  if (body.store !== undefined) return [body.store];
  return body.point === undefined ? [] : behindPoint(fold, body.point);
}

/** The stores behind a sampling point, a port or a unit; nothing where nobody can say. */
export function behindPoint(fold: Fold, name: string): readonly string[] {
  const of = fold.index.samplingPoints.get(name)?.of ?? null;
  if (of === null) return behindName(fold, name);
  if ('store' in of) return [of.store];
  return 'port' in of ? onPort(fold, of.port) : behindUnit(fold, of.unit);
}

function behindName(fold: Fold, name: string): readonly string[] {
  if (fold.ports.has(name)) return onPort(fold, name);
  return fold.index.units.has(name) ? behindUnit(fold, name) : [];
}

function onPort(fold: Fold, port: string): readonly string[] {
  const on = fold.storeOn(port);
  return on === null ? [] : [on.facts.id];
}

/** What a unit fills, else what feeds it; a store that feeds it by an entry alone was not what came out. */
function behindUnit(fold: Fold, id: string): readonly string[] {
  const unit = fold.index.units.get(id);
  if (unit === undefined) return [];
  if ('store' in unit.feeds) return [unit.feeds.store];
  const ends = unit.takes.flatMap((end) => {
    if ('port' in end) return onPort(fold, end.port);
    return 'store' in end && !end.onlyByEntry ? [end.store] : [];
  });
  return [...new Set(ends)];
}
