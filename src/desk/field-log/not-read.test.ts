// Null in a line: taken as not read where an entry can do without, refused where it cannot, and never zero.
import { expect, test } from 'vitest';
import { corrieReader, LOG_OBJECTS, lineWith } from '../../../tests/field-log/corrie-log.ts';
import { readDraft } from '../../book/index.ts';
import { readFieldLog } from './index.ts';
import { lineShapes } from './shape/line-shapes.ts';
import { mayBeNull } from './shape/paths.ts';

const readCorrie = corrieReader(readFieldLog);

test.each(Object.entries(lineShapes()))('%s: whatever may be null is taken as not read', (kind, shape) => {
  const line = LOG_OBJECTS.find((each) => each['kind'] === kind) ?? {};
  const nulls = Object.keys(shape.shape).filter((field) => mayBeNull(shape, [field]));
  const bare = { ...line, ...Object.fromEntries(nulls.map((field) => [field, null])) };
  const { findings, drafts } = readCorrie(kind === 'opening_balance' ? [bare] : [lineWith('E0001'), bare]);
  expect(findings).toEqual([]);
  const draft = drafts.at(-1);
  expect(readDraft(JSON.parse(JSON.stringify(draft)))).toMatchObject({ ok: true });
  expect(draft?.origin?.ref).toBe(line['id']);
  const others = Object.keys(shape.shape).filter((field) => !nulls.includes(field) && field in line);
  for (const field of others) {
    const refused = readCorrie([lineWith('E0001'), { ...line, [field]: null }]);
    expect(refused.notUnderstood.map(({ line: at }) => at)).toContain(2);
  }
});

test('what is left in a container that nobody looked into is not nothing', () => {
  const bare = lineWith('E0010', {
    residual_L: null,
    residual_sd_L: 0.2,
    counters: { dispenser_strokes: null, product_meter_L: 4.11 },
  });
  const read = readCorrie([lineWith('E0001'), bare]);
  expect(read.findings).toMatchObject([{ code: 'log-doubt-alone', severity: 'know' }]);
  expect(read.drafts[1]?.body).toEqual({
    store: 'C-04',
    port: 'dispenser feed',
    counters: [
      { instrument: 'strokes', value: null },
      { instrument: 'product', value: 4.11 },
    ],
  });
});
