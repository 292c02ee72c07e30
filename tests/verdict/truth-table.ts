// Table of truth of the release verdict: what is known of one required row, and what follows; the page prints it, a test walks it.

/** What can be known of one row, its results, the certificate and the use; every combination is walked. */
export const KNOWN = {
  limit: ['in force', 'off'],
  result: [
    'none',
    'passes',
    'above',
    'below',
    'censored across',
    'other unit',
    'no figure',
    'future',
    'contradictory',
  ],
  verified: ['yes', 'no'],
  valid: ['yes', 'over'],
  water: ['this', 'older'],
  degassed: ['not asked', 'yes', 'no'],
  certificate: ['none', 'holds', 'not allowed', 'over', 'not for all water'],
  use: ['any other', 'reserve'],
} as const;

type Known = typeof KNOWN;
export type Case = { readonly [Factor in keyof Known]: Known[Factor][number] };
type Condition = { readonly [Factor in keyof Known]?: readonly Known[Factor][number][] };

export interface Truth {
  /** A factor that is left out may be anything. */
  readonly when: Condition;
  /** `results` and `certificate` release; all else is the reason for holding. */
  readonly verdict: string;
}

const held = (result: Case['result'], verdict: string): Truth => ({ when: { result: [result] }, verdict });

/** Read from the top: the first line that fits counts. */
export const TRUTH: readonly Truth[] = [
  { when: { limit: ['off'] }, verdict: 'row-off' },
  held('above', 'above'),
  held('below', 'below'),
  held('censored across', 'censored-across-limit'),
  held('other unit', 'unit-or-basis'),
  held('no figure', 'no-figure'),
  held('future', 'future'),
  held('contradictory', 'contradictory'),
  { when: { result: ['none'], certificate: ['holds'], use: ['any other'] }, verdict: 'certificate' },
  { when: { result: ['none'] }, verdict: 'missing' },
  {
    when: { verified: ['yes'], valid: ['yes'], water: ['this'], degassed: ['not asked', 'yes'] },
    verdict: 'results',
  },
  { when: { valid: ['over'] }, verdict: 'expired' },
  { when: { certificate: ['holds'], use: ['any other'] }, verdict: 'certificate' },
  { when: { verified: ['no'] }, verdict: 'unverified' },
  { when: { water: ['older'] }, verdict: 'older-water' },
  { when: { degassed: ['no'] }, verdict: 'not-degassed' },
];

const FACTORS = Object.keys(KNOWN) as (keyof Known)[];

/** Every combination there is. */
export function allCases(): readonly Case[] {
  return FACTORS.reduce<readonly Partial<Case>[]>(
    (cases, factor) => cases.flatMap((each) => KNOWN[factor].map((value) => ({ ...each, [factor]: value }))),
    [{}],
  ) as readonly Case[];
}

/** The index of the line that counts; -1 where the table is silent. */
export function lineFor(each: Case): number {
  return TRUTH.findIndex(({ when }) =>
    FACTORS.every((factor) => {
      const allowed: readonly string[] | undefined = when[factor];
      return allowed?.includes(each[factor]) ?? true;
    }),
  );
}

/** The table as Markdown, with how many combinations each line decides. */
export function truthPage(): string {
  const counts = TRUTH.map(() => 0);
  for (const each of allCases()) {
    const line = lineFor(each);
    counts[line] = (counts[line] ?? 0) + 1;
  }
  const rows = TRUTH.map(({ when, verdict: told }, at) => {
    const cells = FACTORS.map((factor) => when[factor]?.join(' or ') ?? '');
    const verdict = ['results', 'certificate'].includes(told)
      ? `**released** by ${told}`
      : `held: \`${told}\``;
    return `| ${at + 1} | ${cells.join(' | ')} | ${verdict} | ${counts[at]} |`;
  });
  return [
    `| | ${FACTORS.join(' | ')} | verdict | of ${allCases().length} |`,
    `|---|${FACTORS.map(() => '---').join('|')}|---|---|`,
    ...rows,
    '',
  ].join('\n');
}
