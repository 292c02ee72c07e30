// Pieces of SVG: nothing that somebody typed can become a tag.
import { expect, test } from 'vitest';
import { element, textElement } from './element.ts';
import { plotFileName } from './file-name.ts';

test('texts and attributes are escaped, numbers are hundredths of a pixel', () => {
  expect(textElement('a < b & "c" </text><script>', { x: 1.23456, y: -0.001, class: '"><x' })).toBe(
    '<text x="1.23" y="0" class="&quot;&gt;&lt;x">a &lt; b &amp; &quot;c&quot; &lt;/text&gt;&lt;script&gt;</text>',
  );
  expect(element('line', { x1: 0, x2: 10 })).toBe('<line x1="0" x2="10"/>');
});

test('a file is called by what it shows, the day and the time', () => {
  const head = { day: 143, at: '2147-07-21T14:10:05Z' };
  expect(plotFileName('store R2', head, 'svg')).toBe('store-R2_D143_21470721T1410Z.svg');
  expect(plotFileName('store ../etc/Tank No. 1', head, 'csv')).toBe(
    'store-etc-Tank-No-1_D143_21470721T1410Z.csv',
  );
});
