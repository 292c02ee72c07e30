// What acts on a whole book end with, as a text.
import type { BegunSheet, CheckedSheet, CopiedSheet, ImportedSheet } from '../sheets/acts.ts';
import * as words from '../words/en/acts.ts';
import { findingLines } from './findings.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { widthOf } from './width.ts';
import { hanging, wrap } from './wrap.ts';

function prose(sentences: readonly string[], options: TextOptions): string[] {
  return sentences.flatMap((sentence) => wrap(signed(sentence, options.style), proseWidth(options)));
}

const plain = (fields: readonly (string | number | null)[]): string =>
  record(fields.map((field) => signed(`${field ?? ''}`, 'plain')));

export function begunText(sheet: BegunSheet, options: TextOptions): string {
  const { outpost, book, site, practice, entries } = sheet;
  if (options.style === 'plain') return page([plain(['begun', book, site, outpost, entries])], options);
  return page(prose([words.begun(sheet), practice ? words.practiceNote : words.openNext], options), options);
}

/** @param program how this program is called here, with what it needs to find the book */
export function startText(
  start: { readonly program: string; readonly flags: string; readonly practice: boolean },
  options: TextOptions,
): string {
  if (options.style === 'plain') return '';
  const { program, flags, practice } = start;
  const lines = words.tries.map(([words, does]) => [`${program} ${words}${flags}`, does] as const);
  const indent = Math.max(...lines.map(([line]) => widthOf(line))) + 4;
  const tries = lines.flatMap(([line, does]) =>
    hanging(`  ${line}`, does, { width: proseWidth(options), indent }),
  );
  return page(
    [
      '',
      ...(practice ? prose([words.practiceNote], options) : []),
      words.startLabels.tryNext,
      ...tries,
      words.startLabels.all(`${program} help`),
    ],
    options,
  );
}

export function importedText(sheet: ImportedSheet, options: TextOptions): string {
  const { understood, added, alreadyKept, notTaken, findings, dryRun } = sheet;
  if (options.style === 'plain') {
    return page(
      [
        plain([
          dryRun ? 'would-import' : 'imported',
          sheet.format,
          understood,
          added,
          alreadyKept,
          notTaken.length,
        ]),
      ],
      options,
    );
  }
  const sentences = [
    ...(sheet.made === null ? [] : [words.made(sheet.made)]),
    words.imported(sheet),
    ...(dryRun ? [words.nothing] : []),
    ...(findings.length === 0 ? [] : [words.findingsToSee(findings.length)]),
  ];
  return page([...prose(sentences, options), ...findingLines(findings, options)], options);
}

/** How many lines of a file were not taken, by the findings that say why. */
export function leftOutText(notTaken: ImportedSheet['notTaken'], options: TextOptions): string {
  const lines = new Set(notTaken.map(({ where }) => where.line));
  return page(prose([words.leftOut(lines.size)], options), options);
}

export function checkedText(sheet: CheckedSheet, options: TextOptions): string {
  const { heads, digest, findings, closureMg, entries } = sheet;
  if (options.style === 'plain') {
    return page(
      [
        plain(['checked', sheet.book, entries, findings.length, closureMg, digest]),
        ...heads.map((head) => plain(['head', head.site, head.number, head.seal])),
      ],
      options,
    );
  }
  const isWhole = findings.length === 0 && sheet.isReadToEnd;
  // Of a book that is not whole no account is made, so nothing is said about it.
  const sentences = isWhole ? [words.checkLabels.whole(entries), saidAccount(closureMg)] : [];
  const chains = heads.map(({ site, number, seal }) => `${site} ${number}  ${seal}`);
  return page(
    [
      ...findingLines(findings, options),
      ...prose(sentences, options),
      ...chains,
      `${words.checkLabels.digest}  ${digest}`,
    ],
    options,
  );
}

function saidAccount(closureMg: number | null): string {
  const { checkLabels } = words;
  if (closureMg === null) return checkLabels.noAccount;
  return closureMg === 0 ? checkLabels.closes : checkLabels.closesNot(closureMg);
}

export function exportedText(file: string, entries: number, options: TextOptions): string {
  return page(prose([words.exported(file, entries)], options), options);
}

export function copiedText(sheet: CopiedSheet, options: TextOptions): string {
  const { path, entries, digest } = sheet;
  if (options.style === 'plain') return page([plain(['copied', path, entries, digest])], options);
  return page([...prose([words.copied(sheet)], options), `${words.checkLabels.digest}  ${digest}`], options);
}

export function outpostPutText({ outpost }: { readonly outpost: string }, options: TextOptions): string {
  if (options.style === 'plain') return page([plain(['outpost', outpost])], options);
  return page(prose([words.outpostPut(outpost)], options), options);
}
