// English for the heads of a reckoning, on paper, in a terminal and on the page.

export const reckonLabels = {
  asked: 'Asked:',
  input: 'RECKONED FROM',
  value: 'VALUE',
  by: 'WHERE FROM',
  share: 'OF THE ±',
  typed: 'typed',
  assumed: 'assumed',
  book: 'book',
  file: 'outpost file',
  how: 'HOW IT WAS RECKONED',
  range: 'holds for',
  source: 'source',
  page: 'more in',
  noDoubt: 'No input came with a ±, so the answer has none: it is as exact as what was typed.',
  explain: 'All inputs, formula, range and source: add --explain.',
} as const;
