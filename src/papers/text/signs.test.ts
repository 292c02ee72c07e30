// What a text may show: our signs in ASCII where asked, and nothing that moves a terminal's cursor.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { painted } from './paint.ts';
import { signed, unbound } from './signs.ts';

describe('signs', () => {
  it('are our own in ASCII', () => {
    expect(
      signed(
        'Day 46 \u00B7 194\u00A0\u00B1\u00A06\u00A0\u00B5S/cm, \u22121.6\u00A0\u00B0C, loader\u2019s\u2026',
        'ascii',
      ),
    ).toBe("Day 46, 194\u00A0+/-\u00A06\u00A0uS/cm, -1.6\u00A0degC, loader's...");
  });

  it('of other scripts are data for programs, and question marks for a terminal without them', () => {
    expect(signed('\u0412\u043E\u0434\u0430', 'plain')).toBe('\u0412\u043E\u0434\u0430');
    expect(signed('\u0412\u043E\u0434\u0430 \u{1F4A7}', 'ascii')).toBe('???? ?');
  });

  it('that would steer a terminal or turn the writing are shown as what they are not', () => {
    expect(signed('a\u001B[2Jb\u202Ec\nd\te', 'screen')).toBe('a\uFFFD[2Jb\uFFFDc d e');
  });

  it('are ASCII throughout in ascii style, for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 100 }), (text) => {
        expect(unbound(signed(text, 'ascii'))).toMatch(/^[\u0020-\u007E]*$/);
        for (const sign of ['\t', '\n', '\u001B']) expect(signed(text, 'plain')).not.toContain(sign);
      }),
    );
  });
});

describe('colour', () => {
  const options = { width: 80, style: 'screen', colour: true, units: 'L' } as const;

  it('is on three words only, and the words stay', () => {
    const text = painted('ACT NOW x ACT TODAY y HOLD z KNOW CONDITIONAL HOLDER', options);
    expect(text).toBe(
      '\u001B[1;31mACT NOW\u001B[0m x \u001B[1mACT TODAY\u001B[0m y \u001B[1;31mHOLD\u001B[0m z KNOW CONDITIONAL HOLDER',
    );
  });

  it('is off where it was not asked for, and always for programs', () => {
    expect(painted('HOLD', { ...options, colour: false })).toBe('HOLD');
    expect(painted('HOLD', { ...options, style: 'plain' })).toBe('HOLD');
  });
});
