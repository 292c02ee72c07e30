// Findings and errors as a text: how soon, what, and what to do.
import type { WordedFinding } from '../sheets/finding.ts';
import * as words from '../words/en/labels.ts';
import { findingRecords } from './finding-records.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page } from './page.ts';
import { signed } from './signs.ts';
import { hanging, wrap } from './wrap.ts';

const INDENT = 11;

/** Every finding whole, in the order in which it is given. */
export function findingsText(findings: readonly WordedFinding[], options: TextOptions): string {
  if (options.style === 'plain') return page(findingRecords(findings, 'finding'), options);
  return page(findingLines(findings, options), options);
}

export function findingLines(findings: readonly WordedFinding[], options: TextOptions): string[] {
  return findings.flatMap((finding) =>
    finding.severity === 'error' ? errorLines(finding, options) : openLines(finding, options),
  );
}

function openLines({ severity, text, remedy }: WordedFinding, options: TextOptions): string[] {
  const at = { width: proseWidth(options), indent: INDENT };
  return [
    ...hanging(words.levels[severity], signed(text, options.style), at),
    ...hanging('', signed(remedy, options.style), at),
  ];
}

/** An error says where, what, what was expected and received, and what to do. Its code is for whoever looks it up. */
function errorLines(finding: WordedFinding, options: TextOptions): string[] {
  const { text, expected, received, remedy, code } = finding;
  const at = { width: proseWidth(options), indent: INDENT };
  const place = placeOf(finding);
  const line = place === '' ? text : `${place}: ${text}`;
  return [
    ...wrap(signed(`${line} [${code}]`, options.style), proseWidth(options)),
    ...hanging(`  ${words.errorLabels.expected}`, signed(expected, options.style), at),
    ...hanging(`  ${words.errorLabels.received}`, signed(received, options.style), at),
    ...hanging('', signed(remedy, options.style), { ...at, indent: 2 }),
  ];
}

/** `corrie.yaml:12:5 stores[3].capacityL`: what an editor can jump to. A place that the sentence names is not said twice. */
function placeOf({ where, text }: WordedFinding): string {
  const names = [where.file, where.field].filter((name) => name !== undefined);
  if (where.line === undefined && names.every((name) => text.includes(name))) return '';
  const spot = [where.file, where.line, where.column].filter((part) => part !== undefined).join(':');
  const line = where.file === undefined && where.line !== undefined ? words.errorLabels.line(spot) : spot;
  return [line, where.field].filter((part) => part !== undefined && part !== '').join(' ');
}
