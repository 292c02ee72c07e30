// Codes of the questions that this study is about: the control of the study leaves them out.

export const QUESTIONS: ReadonlySet<string> = new Set([
  'amount-implausible',
  'reading-implausible',
  'counter-replaced',
  'copy-proposed',
  'time-implausible',
  'order-impossible',
  'store-doubtful',
  'people-differ',
  'log-in-future',
]);
