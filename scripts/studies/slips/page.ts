// The page docs/verification/slips.md: what was put in, what was caught, what was missed and why, and what was asked for nothing.
import type { FalseRate } from './false-questions.ts';
import type { Judged } from './judge.ts';
import { SLIP_KINDS } from './put-in.ts';
import { QUESTIONS } from './questions.ts';
import { whyMissed } from './why-missed.ts';

export interface Studied {
  readonly seed: number;
  readonly tunedOn: string;
  readonly judged: readonly Judged[];
  /** The same slips with the questions of this study left out, and with the account left out. */
  readonly without: readonly Judged[];
  readonly readerAlone: readonly Judged[];
  readonly practice: FalseRate & { readonly deliberate: number };
  readonly chance: FalseRate;
  readonly firstChanceSeed: number;
}

export function shareCaught(judged: readonly Judged[]): number {
  return judged.filter(({ caught }) => caught !== 'missed').length / judged.length;
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

export function pageOf(studied: Studied): string {
  const { judged, without, readerAlone, seed, tunedOn, practice, chance, firstChanceSeed } = studied;
  const caught = judged.filter((one) => one.caught !== 'missed').length;
  return `# Slips of the pen

How many slips are caught at entry or within a day, and how often is a good entry asked about? Made by \`npm run study:slips\`; a small part of it is among the tests (\`scripts/studies/slips/slips.test.ts\`).

${judged.length} slips (seed ${seed}), one each in a fresh copy of the practice book. Thresholds were chosen on ${tunedOn}; none of the cases below was among those.

**${caught} of ${judged.length} caught, ${percent(shareCaught(judged))}** (90 % asked for); with the questions of this study switched off (${[...QUESTIONS].join(', ')}) ${percent(shareCaught(without))}, by the reader of the log alone ${percent(shareCaught(readerAlone))}.
**${practice.perFifty.toFixed(2)} false questions to 50 good entries in the practice book, ${chance.perFifty.toFixed(2)} in ${chance.books} clean books by chance** (at most 1 asked for).

## Caught
${caughtTable(judged)}

*At entry*: the line is refused or asked about by the reader of the log, or a question of the account comes with the evening's import that brings the line. *Within a day*: with the import of the next evening. A question counts if it asks for an act (what is merely good to know does not), if the same book without the slip does not bring it by that evening, and if it names the slipped entry, its store (as typed or as it should have been) or its instrument. The log is imported every evening half an hour after the day line, by a clock that stands at that time: a line that lies in the future is refused. Of what was written after that evening nothing is known.

Every line that can carry a kind of slip is as likely as every other, and within a line every place. In a real book each entry is typed at its own time and more of the clock's slips lie in the future.

## What is put in
| kind | what is typed |
|---|---|
${SLIP_KINDS.map(({ kind, definition }) => `| ${kind} | ${definition} |`).join('\n')}

Kilograms for litres are not put in: the two differ by 0.2 % here, a fifth of what the flow meter is trusted with, and nobody could tell.

## Missed
${missedTable(judged)}

## Asked for nothing
The practice book has ${practice.entries} entries and brings ${practice.deliberate} questions that it is meant to bring (its documented oddities and what really happened), and ${practice.questions} others.

${chance.books} clean books by chance (seeds ${firstChanceSeed} to ${firstChanceSeed + chance.books - 1}, ${chance.entries} entries) bring ${chance.questions}; the worst of them ${chance.worstPerFifty.toFixed(2)} to 50 entries:

| question | times |
|---|---|
${[...chance.byCode]
  .sort((a, b) => b[1] - a[1])
  .map(([name, times]) => `| ${name} | ${times} |`)
  .join('\n')}

They are 28 days of the practice outpost each under another crew of 2 to 4 and its visitors, with other rates and meters, hours of work that move by a quarter of an hour and day lines by up to half an hour, meals that take up to half of the use, part fills, a rest day's and an exercise day's use, flushing that is halved from some day on, a stroke count that is left out, a lowered cabin pressure, a totaliser that starts anywhere. They have no leak, no fault of a unit and no late entry: questions about those would be right. The simulation is ours and knows only what we thought of; a real outpost is odder.
`;
}

function caughtTable(judged: readonly Judged[]): string {
  const rows = SLIP_KINDS.map(({ kind }) => {
    const of = judged.filter((one) => one.kind === kind);
    const count = (caught: Judged['caught']) => of.filter((one) => one.caught === caught).length;
    return `| ${kind} | ${of.length} | ${count('at entry')} | ${count('within a day')} | ${count('missed')} | ${percent(shareCaught(of))} |`;
  });
  return `| kind | put in | caught at entry | caught within a day | missed | caught |\n|---|---|---|---|---|---|\n${rows.join('\n')}`;
}

function missedTable(judged: readonly Judged[]): string {
  const missed = judged.filter(({ caught }) => caught === 'missed');
  if (missed.length === 0) return 'None.';
  const rows = missed.map(({ kind, what }) => `| ${kind} | ${what} | ${whyMissed(kind, what)} |`);
  return `| kind | line and slip | why |\n|---|---|---|\n${rows.join('\n')}`;
}
