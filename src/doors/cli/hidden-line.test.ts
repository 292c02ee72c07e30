// A hidden line takes what a terminal sends, and gives an answer only at its end.
import { expect, test } from 'vitest';
import { HiddenLine } from './hidden-line.ts';

test.each([
  ['4821\r', { said: '4821' }],
  ['48\u007f\u007f7391\n', { said: '7391' }],
  ['99\b\b\b7391\r\n', { said: '7391' }],
  ['wrong\u00154821\r', { said: '4821' }],
  ['\u001b[200~4821\u001b[201~\r', { said: '4821' }],
  ['\u001b[A48\u001b[D21\r', { said: '4821' }],
  ['\r', { said: '' }],
  ['48\u0003', 'stopped'],
  ['\u0004', 'end of input'],
  ['48\u000421\r', { said: '4821' }],
])('%j', (keys, reply) => {
  expect(new HiddenLine().take(keys)).toEqual(reply);
});

test('keys come one by one, and what was pasted behind an Enter answers the next question', () => {
  const line = new HiddenLine();
  expect([...'482'].map((key) => line.take(key))).toEqual([null, null, null]);
  expect(line.take('1\r7391\r')).toEqual({ said: '4821' });
  expect(line.take('')).toEqual({ said: '7391' });
  expect(line.take('')).toBeNull();
});
