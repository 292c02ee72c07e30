// What needs somebody: the gravest first, those alike together, each with the command that is the first act.
import type { WordedFinding } from '../sheets/finding.ts';
import * as words from '../words/en/labels.ts';
import { commandsIn, firstThought, saidWays } from './commands.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { signed } from './signs.ts';
import { hanging } from './wrap.ts';

/** More than this are not read on a first page. */
const MOST = 8;
const INDENT = 13;

export interface Need {
  readonly finding: WordedFinding;
  /** Findings of the same code about the same store, this one among them. */
  readonly alike: number;
}

/** One line for findings that differ only in the entry: the first of them, which is the youngest, stands for all. */
export function needsOf(findings: readonly WordedFinding[]): readonly Need[] {
  const groups = new Map<string, WordedFinding[]>();
  findings.forEach((finding, k) => {
    const { store, field } = finding.where;
    const about = store ?? field;
    const key = about === undefined ? `${k}` : `${finding.severity} ${finding.code} ${about}`;
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  });
  return [...groups.values()].flatMap(([finding, ...rest]) =>
    finding === undefined ? [] : [{ finding, alike: rest.length + 1 }],
  );
}

export function needLines(findings: readonly WordedFinding[], options: TextOptions): string[] {
  const needs = needsOf(findings);
  const lines = needs.slice(0, MOST).flatMap((need) => needOf(need, options));
  if (needs.length <= MOST) return lines;
  const more = signed(`${words.andMore(needs.length - MOST)}:`, options.style);
  return [...lines, ...hanging('', `${more} ${words.moreFindings}`, at(options))];
}

function needOf({ finding, alike }: Need, options: TextOptions): string[] {
  const head = `  ${words.levels[finding.severity]}`;
  // How sure and what follows stand in the full list.
  const text = firstThought(finding.text);
  const counted = alike > 1 ? `${text} ${words.alike(alike)}` : text;
  const way = firstAct(finding);
  return [
    ...hanging(head, signed(counted, options.style), at(options)),
    ...(way === undefined ? [] : hanging('', signed(way, options.style), at(options))),
  ];
}

/** Of what is only to be known nothing is to be done; and an undo is never the first act, but what a look may end in. */
function firstAct({ severity, remedy }: WordedFinding): string | undefined {
  if (severity === 'know') return undefined;
  return saidWays(commandsIn(remedy).filter((each) => !each.startsWith('waterwright log undo')))[0];
}

function at(options: TextOptions) {
  return { width: proseWidth(options), indent: INDENT };
}
