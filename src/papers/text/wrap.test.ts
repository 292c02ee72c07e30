// Lines keep to their width, keep figures whole, and lose nothing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { widthOf } from './width.ts';
import { hanging, wrap } from './wrap.ts';

describe('breaking into lines', () => {
  it('breaks at spaces', () => {
    expect(wrap('one two three', 8)).toEqual(['one two', 'three']);
    expect(wrap('', 8)).toEqual(['']);
  });

  it('never parts a value, its ± and its unit while they fit a line', () => {
    expect(wrap('holds 21.4\u00A0±\u00A00.4\u00A0L now', 14)).toEqual([
      'holds',
      '21.4\u00A0±\u00A00.4\u00A0L',
      'now',
    ]);
  });

  it('breaks a long name behind a slash, and cuts at last', () => {
    expect(wrap('electrolyser/flush', 14)).toEqual(['electrolyser/', 'flush']);
    expect(wrap('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
  });

  it('counts wide signs as two columns, and combining marks as none', () => {
    expect(wrap('水水水', 4)).toEqual(['水水', '水']);
    expect(widthOf('e\u0301')).toBe(1);
  });

  it('keeps to the width and keeps every sign but spaces, for any text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 200 }),
        fc.integer({ min: 2, max: 90 }),
        (text, width) => {
          const lines = wrap(text, width);
          for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(width);
          const bare = (each: string) => each.replace(/[ \u00A0]/g, '');
          expect(bare(lines.join(''))).toBe(bare(text));
        },
      ),
    );
  });
});

describe('a text behind a head', () => {
  it('hangs under its first line', () => {
    expect(hanging('KNOW', 'a b c d e f g h i', { width: 22, indent: 6 })).toEqual([
      'KNOW  a b c d e f g h',
      '      i',
    ]);
  });

  it('gives the head a line of its own where it is too wide or no room is left', () => {
    expect(hanging('A LONG HEAD', 'text', { width: 40, indent: 6 })).toEqual(['A LONG HEAD', '      text']);
    expect(hanging('HEAD', 'text', { width: 20, indent: 12 })).toEqual(['HEAD', '  text']);
  });

  it('keeps to the width', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 60 }),
        fc.string({ maxLength: 120 }),
        fc.record({ width: fc.integer({ min: 20, max: 90 }), indent: fc.integer({ min: 2, max: 40 }) }),
        (head, text, at) => {
          for (const line of hanging(head, text, at)) expect(widthOf(line)).toBeLessThanOrEqual(at.width);
        },
      ),
    );
  });
});
