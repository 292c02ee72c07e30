// The study of daily use: simulated crews, and the page docs/verification/use.md that says how often the bands held.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { FIVE_PEOPLE, LEARNERS, type UseCovered, useCoverage } from '../../tests/reference/use-study.ts';

const CREWS = 4000;
const FIRST_SEED = 2_000_001;
const HORIZONS = [30, 90, 180];
const LEARNED = [5, 14, 30, 90];
const ROOT = join(import.meta.dirname, '..', '..');

const names: Readonly<Record<keyof typeof LEARNERS, string>> = {
  bayes: '**Bayes on the grid (the product)**',
  fewerDays: 'mean and an effective number of days',
  meanToo: 'mean of independent days',
  daysAlone: 'spread of the days alone',
};

const cellOf = ({ share, shareU, halfWidthL }: UseCovered): string =>
  `${(100 * share).toFixed(1)} ± ${(100 * shareU).toFixed(1)} % (${halfWidthL.toFixed(0)} L)`;

interface Row {
  readonly head: string;
  readonly cells: readonly UseCovered[];
}

const started = performance.now();
const study = { crews: CREWS, firstSeed: FIRST_SEED, horizons: HORIZONS };
const main: readonly Row[] = LEARNED.flatMap((learnedDays) =>
  (Object.keys(names) as (keyof typeof names)[]).map((key) => ({
    head: `${learnedDays} | ${names[key]}`,
    cells: useCoverage({ ...study, learnedDays, learner: LEARNERS[key] }),
  })),
);
const others: readonly Row[] = [
  { what: 'days that hardly remember each other, memory 0.3', world: { ...FIVE_PEOPLE, memory: 0.3 } },
  { what: 'moods that last for weeks, memory 0.95', world: { ...FIVE_PEOPLE, memory: 0.95 } },
  { what: 'a norm that is half as high again as crews use', world: { ...FIVE_PEOPLE, normTimes: 1.5 } },
  { what: 'one person', world: { ...FIVE_PEOPLE, people: 1 } },
].flatMap(({ what, world }) =>
  [14, 90].map((learnedDays) => ({
    head: `${what} | ${learnedDays}`,
    cells: useCoverage({ ...study, learnedDays, world, learner: LEARNERS.bayes }),
  })),
);
const page = pageOf();
mkdirSync(join(ROOT, 'docs', 'verification'), { recursive: true });
writeFileSync(join(ROOT, 'docs', 'verification', 'use.md'), page);
console.log(page);
console.log(`${Math.round((performance.now() - started) / 1000)} s`);
const asked = main.filter(({ head }) => head.includes('product') && !head.startsWith('5 '));
process.exitCode = asked.every(({ cells }) => cells.every(({ share }) => share > 0.86 && share < 0.96))
  ? 0
  : 1;

function tableOf(head: string, rows: readonly Row[]): string {
  const ends = HORIZONS.map((days) => `${days} d`).join(' | ');
  const line = '|---'.repeat(head.split('|').length + HORIZONS.length);
  return [
    `| ${head} | ${ends} |`,
    `${line}|`,
    ...rows.map(({ head: first, cells }) => `| ${first} | ${cells.map(cellOf).join(' | ')} |`),
  ].join('\n');
}

/** The product's cells that miss the narrower aim, in words. */
function offAim(rows: readonly Row[]): string {
  const missed = rows
    .filter(({ head }) => head.includes('product') && /^(30|90) /.test(head))
    .flatMap(({ head, cells }) =>
      cells
        .filter(({ share }) => share < 0.87 || share > 0.93)
        .map(
          ({ days, share }) =>
            `${(100 * share).toFixed(1)} % over ${days} d, learned from ${head.split(' ')[0]}`,
        ),
    );
  return missed.length === 0 ? 'all are there.' : `outside of that: ${missed.join('; ')}.`;
}

function pageOf(): string {
  return `# Coverage of the bands of use

How often does a band of 90 % of what a crew will use hold what it then uses? Made by \`npm run study:use\`; a shorter run is among the tests (\`tests/reference/use-study.test.ts\`).

${CREWS} simulated crews a row (seeds ${FIRST_SEED} to ${FIRST_SEED + CREWS - 1}), each looked at once, so that no outcome counts twice. Five people who use 2.5 L a person and day; crews differ by 0.63 L, people of one crew by 0.3 L; a person's mood has 0.2 L and keeps 0.8 of itself from day to day; noise of a day 0.15 L (all one standard deviation). The learner is told the days and the norm of 2.5 L, and nothing else.

In brackets: mean half-width of the band for the whole crew. ± is one standard error.

${tableOf('learned from, days | how', main)}

A band of 90 % should hold 90. From 14 days on 86 to 96 % is asked for, and from 30 days on 87 to 93 % is aimed at; ${offAim(main)} Five days are the fewest that are learned from at all.

## Other worlds, the product's learner
${tableOf('world | learned from, days', others)}

Moods that last for weeks cannot be told from another mean by days that are few: there the bands are too narrow, and say so nowhere. Days that hardly remember each other get bands that are wider than they need to be until there are more of them.

## What is simulated, and what is not
The model is the one that is learned: normal moods and noises, and a mean that stays. No visitors, no weekdays, no change of crew, no lost water, no miscounted day. People's moods are their own; their sum has the same memory.
`;
}
