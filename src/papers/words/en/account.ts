// English for what the account has to say about the entries and the stocks.
import type { AccountFindingCode } from '../../../account/index.ts';
import type { Words } from '../shape.ts';
import { doubtWords } from './account/doubts.ts';
import { figureQuestionWords } from './account/figure-questions.ts';
import { nameWords } from './account/names.ts';
import { orderQuestionWords } from './account/order-questions.ts';
import { qualityWords } from './account/quality.ts';
import { stockWords } from './account/stocks.ts';
import { storageWords } from './account/storage.ts';

export const accountWords: Words<AccountFindingCode> = {
  ...nameWords,
  ...stockWords,
  ...doubtWords,
  ...qualityWords,
  ...figureQuestionWords,
  ...orderQuestionWords,
  ...storageWords,
};
