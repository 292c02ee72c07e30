// Remedies on the page: a command that the page has is an act in its place, and what only a command line can do is left out.
import { expect, test } from 'vitest';
import { pageRemedy, type RemedyPart } from './remedy.ts';

const flat = (text: string): readonly RemedyPart[] => pageRemedy(text).flat();

test.each<[string, readonly RemedyPart[]]>([
  [
    'Take a sample of R2 and enter it: waterwright log sample. When it has passed: waterwright log release.',
    [
      'Take a sample of R2 and enter it: ',
      { act: 'sample', of: null, drawn: true },
      '.',
      'When it has passed: ',
      { act: 'hold', way: 'release', hold: null, stores: [] },
      '.',
    ],
  ],
  [
    'Pump until the flow stops, then: waterwright log empty C-07 --flow-stopped. Or gauge it: waterwright log gauge C-07 AMOUNT.',
    [
      'Pump until the flow stops, then: ',
      { act: 'enter', what: 'empty', store: 'C-07' },
      '.',
      'Or gauge it: ',
      { act: 'enter', what: 'gauge', store: 'C-07' },
      '.',
    ],
  ],
  [
    'If a container was changed and not entered, enter it with its time: waterwright log hookup STORE PORT --at TIME.',
    [
      'If a container was changed and not entered, enter it with its time: ',
      { act: 'enter', what: 'hookup', store: null },
      '.',
    ],
  ],
  [
    'If they are one act: waterwright log decide corrie:35 corrie:36 merge. If both happened: waterwright log decide corrie:35 corrie:36 both.',
    [
      'If they are one act: ',
      { act: 'decide', pair: ['corrie:35', 'corrie:36'], decision: 'merge' },
      '.',
      'If both happened: ',
      { act: 'decide', pair: ['corrie:35', 'corrie:36'], decision: 'both are true' },
      '.',
    ],
  ],
  [
    'If it is a slip: waterwright log undo corrie:35, and enter it again. If it is right, nothing is to be done.',
    [
      'If it is a slip: ',
      { act: 'undo', entry: 'corrie:35' },
      ', and enter it again.',
      'If it is right, nothing is to be done.',
    ],
  ],
  [
    'Do not use it; to look: waterwright store show "Bag 2". The ways out, when there is one: waterwright log release, downgrade or waiver.',
    [
      'Do not use it; to look: ',
      { act: 'see', page: 'stores', item: 'Bag 2' },
      '.',
      'The ways out, when there is one: ',
      { act: 'hold', way: 'release', hold: null, stores: [] },
      ' or ',
      { act: 'hold', way: 'downgrade', hold: null, stores: [] },
      ' or ',
      { act: 'hold', way: 'waive', hold: null, stores: [] },
      '.',
    ],
  ],
  [
    'See why, and take or drop each: waterwright inbox list.',
    ['See why, and take or drop each: ', { act: 'see', page: 'inbox', item: null }, '.'],
  ],
  [
    'Its number: waterwright book show --day D9.',
    ['Its number: ', { act: 'see', page: 'daybook', item: 'D9' }, '.'],
  ],
  [
    'Check the amount. If it is right as it stands: add --yes; it is kept, with its finding.',
    [
      'Check the amount.',
      'If it is right as it stands: ',
      { act: 'flag', flag: 'yes' },
      '; it is kept, with its finding.',
    ],
  ],
  [
    'What it touched, and the ways out: waterwright hold show Q-01.',
    ['What it touched, and the ways out: ', { act: 'see', page: 'quality', item: 'Q-01' }, '.'],
  ],
  [
    'Take a sample: waterwright sample add C-05 C-06. When it has passed: waterwright hold release Q-01 C-05 --by medic.',
    [
      'Take a sample: ',
      { act: 'sample', of: 'C-05', drawn: true },
      '.',
      'When it has passed: ',
      { act: 'hold', way: 'release', hold: 'Q-01', stores: ['C-05'] },
      '.',
    ],
  ],
  [
    'Which rows: waterwright quality limits.',
    ['Which rows: ', { act: 'see', page: 'quality', item: null }, '.'],
  ],
  // What only a command line can do is not spoken of.
  [
    'What was acknowledged before is safe. Start it anew: waterwright serve.',
    ['What was acknowledged before is safe.'],
  ],
  [
    'Name another file with -o. A copy is made by waterwright book backup TARGET.',
    ['Name another file with -o.'],
  ],
  ['Begin one: waterwright count start.', []],
  ['The fields are listed at /api/openapi.json.', []],
])('%s', (text, parts) => {
  expect(flat(text)).toEqual(parts);
});
