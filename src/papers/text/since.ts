// Since I last looked, as a text.
import type { SinceSheet } from '../sheets/since.ts';
import { freedSince, heldSince, sinceHead, sinceLabels, toldAnew } from '../words/en/since.ts';
import { bookLines } from './book.ts';
import { amountOf, fieldsOf, said } from './figures.ts';
import { findingsText } from './findings.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { wrap } from './wrap.ts';

export function sinceText(sheet: SinceSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLines(sheet), options);
  const prose = (sentence: string) => wrap(signed(sentence, options.style), proseWidth(options));
  const anew = sheet.moved.map(({ store, before, after }) =>
    toldAnew(store, said(amountOf(before, options), options), said(amountOf(after, options), options)),
  );
  const found =
    sheet.newFindings.length === 0
      ? []
      : ['', sinceLabels.needs, ...findingsText(sheet.newFindings, options).trimEnd().split('\n')];
  return page(
    [
      ...prose(sheet.entries === 0 ? `${sinceHead(sheet)} ${sinceLabels.nothing}` : sinceHead(sheet)),
      ...(sheet.heldSince.length === 0 ? [] : prose(heldSince(sheet.heldSince))),
      ...(sheet.freedSince.length === 0 ? [] : prose(freedSince(sheet.freedSince))),
      ...(anew.length === 0 ? [] : ['', sinceLabels.anew, ...anew.flatMap(prose)]),
      ...found,
      ...(sheet.lines.length === 0 ? [] : ['', sinceLabels.lines, ...bookLines(sheet.lines, options)]),
    ],
    options,
  );
}

/** since time entries corrections late · held store · freed store · anew store L ± L ± · finding code · entry ref. */
function plainLines(sheet: SinceSheet): string[] {
  const { since, entries, corrections, late } = sheet;
  return [
    record(
      ['since', since, `${entries}`, `${corrections}`, `${late}`].map((field) => signed(field, 'plain')),
    ),
    ...sheet.heldSince.map((store) => record(['held', store])),
    ...sheet.freedSince.map((store) => record(['freed', store])),
    ...sheet.moved.map(({ store, before, after }) =>
      record(['anew', store, ...fieldsOf(before), ...fieldsOf(after)]),
    ),
    ...sheet.newFindings.map((finding) => record(['finding', finding.code, signed(finding.text, 'plain')])),
    ...sheet.lines.map((line) => record(['entry', line.ref, signed(line.text, 'plain')])),
  ];
}
