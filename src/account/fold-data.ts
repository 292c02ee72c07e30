// A fold as plain data, with nothing in it that cannot be written down and read back to the same bits.
import type { Outpost, OutpostIndex } from '../outpost/index.ts';
import { Estimator, type EstimatorData } from './estimator.ts';
import { Fold, type FoldFields } from './fold.ts';
import { Ledger } from './ledger.ts';
import { Usage, type UsageData } from './usage.ts';

/** Maps, lists, numbers, texts and typed arrays only: what the structured clone of the web and of Node copies exactly. */
export interface FoldData {
  readonly fields: FoldFields;
  readonly balances: ReadonlyMap<string, number>;
  readonly estimator: EstimatorData;
  readonly usage: UsageData;
}

export function dataOfFold(fold: Fold): FoldData {
  return {
    fields: fold.fields(),
    balances: fold.ledger.balances(),
    estimator: fold.estimator.data(),
    usage: fold.usage.data(),
  };
}

/** The data may be shared by several folds: it is copied, and none of them changes it. */
export function foldOfData(outpost: Outpost, index: OutpostIndex, data: FoldData): Fold {
  const fold = new Fold(outpost, { index, fields: data.fields });
  fold.ledger = new Ledger(data.balances);
  fold.estimator = Estimator.of(data.estimator);
  fold.usage = Usage.of(data.usage);
  return fold;
}
