// Golden records of what is refused: one clear message with place and remedy, the right exit code, and every file as it was.
import { describe, expect, test } from 'vitest';
import { expectGolden } from '../record.ts';
import { Console, type RunOptions, record } from './console.ts';

interface Refusal extends RunOptions {
  readonly line: string;
  readonly code: number;
  /** Commands before it, which have to work. */
  readonly after?: readonly string[];
  /** Files that it reads. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
}

const ends = (code: number, ...lines: readonly (string | Omit<Refusal, 'code'>)[]): readonly Refusal[] =>
  lines.map((line) => (typeof line === 'string' ? { line, code } : { ...line, code }));

const groups: Readonly<Record<string, readonly Refusal[]>> = {
  names: [
    ...ends(
      5,
      'waterwright log fill c99 20L',
      'waterwright store show main',
      'waterwright log hookup c02 electrolyser',
      'waterwright log hookup c02 roof',
      'waterwright log relabel c02 purple --second second',
      'waterwright log undo 9999',
      'waterwright log move 1L --from c17 --to c77',
      'waterwright log hold --hold H-1 --stores c02,c88 --reason smell',
      'waterwright book show --store c99',
      'waterwright log day --set strikes=12',
      'waterwright store add C-21 --kind contaner --capacity 22L',
    ),
    ...ends(
      3,
      'waterwright log drink 8 --by cook',
      'waterwright store add c05 --kind container --capacity 22L',
    ),
  ],
  amounts: [
    ...ends(
      3,
      'waterwright log weigh c02 20furlong',
      'waterwright log weigh c02 20',
      'waterwright log weigh c02 NaNkg',
      'waterwright log weigh c02 1e400kg',
      'waterwright log weigh c02 -5kg',
      'waterwright log weigh c02 1,234kg',
      'waterwright log weigh c02 ""',
      'waterwright log weigh c02 214kg',
      'waterwright log weigh c02 5kg+--1',
      'waterwright log weigh c02 1e12kg',
      'waterwright log drink -8',
      'waterwright log drink 8cups',
      'waterwright log day --set condensate=many',
      'waterwright store add C-22 --kind container --capacity 22kg',
    ),
    ...ends(4, 'waterwright log fill c02', 'waterwright log move 30L --from R1 --to c11'),
  ],
  times: ends(
    3,
    'waterwright log drink 8 --at 2147-02-30T10:00Z',
    'waterwright log drink 8 --at D45T09:60',
    'waterwright log drink 8 --at D45T25:00',
    'waterwright log drink 8 --at D0T10:00',
    'waterwright log drink 8 --at yesterday',
    'waterwright today --at 2147-13-01T00:00Z',
    'waterwright today --at 2147-02-01T00:00Z',
    'waterwright today --as-of "half past nine"',
  ),
  rules: ends(
    4,
    'waterwright log relabel c19 technical',
    'waterwright log relabel c19 technical --second keeper',
    {
      line: 'waterwright log use 1L --for drink --from c02',
      after: ['waterwright log hold --hold H-1 --stores c02 --reason smell'],
    },
    {
      line: 'waterwright log move 1L --from c02 --to c19',
      after: ['waterwright log hold --hold H-1 --stores c02 --reason smell'],
    },
    'waterwright log use 1L --for drink --from c08',
    'waterwright log move 5L --from c08 --to c19',
    'waterwright log hookup c08 "dispenser feed"',
    { line: 'waterwright log drink 8 --at D46T10:00', after: ['waterwright book close'] },
  ),
  entries: ends(
    3,
    { line: 'waterwright log undo 204', after: ['waterwright log drink 8', 'waterwright log undo'] },
    {
      line: 'waterwright log correct 205 --value 6L --reason no',
      after: ['waterwright log drink 8', 'waterwright log undo'],
    },
    'waterwright log undo',
    'waterwright log day --set strokes=430 --at D46T21:00',
    'waterwright log opening --from opening.json',
    'waterwright log result --sample S-1 --values silver',
    'waterwright log check --what labels --ok maybe --items seal',
    'waterwright log roster --change arrive --people 1.5',
    'waterwright log roster --change return --people 2',
    'waterwright log waiver --hold H-1 --stores c02 --reason thirst --until soon',
  ).map((each) =>
    each.line.includes('opening.json')
      ? { ...each, files: { 'opening.json': '{"asOf":"2147-02-28T21:00Z","peopleAboard":4}' } }
      : each,
  ),
  use: ends(
    2,
    'waterwright tody',
    'waterwright log drnk 8',
    'waterwright book',
    'waterwright book burn',
    'waterwright servr',
    'waterwright today --frm c02',
    'waterwright today extra',
    'waterwright log drink',
    'waterwright log drink 8 9',
    'waterwright log drink 8 --from',
    'waterwright log drink 8 --from --json',
    'waterwright log drink 8 --from c02 --from c19',
    'waterwright today --json=yes',
    'waterwright today --at D13 --as-of D13',
    'waterwright today --units gallons',
    'waterwright today --width 5',
    'waterwright today --fail-on worst',
    'waterwright log use 1L --for hygene',
    'waterwright log use 1L',
    'waterwright log correct 203 --value 6L',
    'waterwright log sample --store c02',
    'waterwright log sample --store c02 --sample S-1 --colour blue',
    'waterwright log day-line --day 3',
    'waterwright log decide 35 36 perhaps',
    'waterwright init',
    'waterwright init --template mars',
    'waterwright init --practice --book waterwright.book',
    'waterwright book close --day tomorrow',
    'waterwright book export --since 240',
    'waterwright book backup waterwright.book',
    'waterwright today -o waterwright.book',
    'waterwright book export -o waterwright.book',
    'waterwright import missing.jsonl',
    'waterwright today --book nowhere.book',
    'waterwright today --book no-folder/a.book',
    'waterwright completion tcsh',
    'waterwright book show --kind sampel',
  ),
};

describe.each(Object.entries(groups))('%s', (name, refusals) => {
  test('each is refused with its code, and no file changes', async () => {
    const parts: string[] = [];
    for (const { line, code, after = [], files = {}, ...options } of refusals) {
      const console = await new Console().withPractice();
      for (const [file, text] of Object.entries(files)) console.write(file, text);
      for (const before of after) expect((await console.run(before)).code, before).toBe(0);
      const digests = console.digests();
      const ran = await console.run(line, options);
      parts.push(record(line, ran));
      expect(console.digests(), line).toEqual(digests);
      expect({ line, code: ran.code, out: ran.out }).toEqual({ line, code, out: '' });
      console.end();
    }
    expectGolden(`cli/refused/${name}.txt`, parts.join('\n'));
  });
});
