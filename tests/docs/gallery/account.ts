// All samples of the account: a code without one does not compile.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import { doubtSamples } from './account-doubts.ts';
import { nameSamples } from './account-names.ts';
import { qualitySamples } from './account-quality.ts';
import { questionSamples } from './account-questions.ts';
import { stockSamples } from './account-stocks.ts';
import { storageSamples } from './account-storage.ts';
import type { Samples } from './sample.ts';

export const accountSamples: Samples<AccountFindingCode> = {
  ...nameSamples,
  ...stockSamples,
  ...storageSamples,
  ...doubtSamples,
  ...qualitySamples,
  ...questionSamples,
};
