// The biocide and the life of a store as lines of a text, and as records for programs.
import type { BiocideSheet, LifeSheet } from '../sheets/biocide.ts';
import type { SheetFigure } from '../sheets/figure.ts';
import type { StoreSheet } from '../sheets/store.ts';
import * as words from '../words/en/biocide.ts';
import { fieldsOf, said } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { record } from './page.ts';
import { signed } from './signs.ts';
import { hanging, wrap } from './wrap.ts';

/** A line of facts: what it is, and what is said of it. */
export interface Line {
  readonly name: string;
  readonly text: string;
}

const INDENT = 25;

export function biocideLines({ biocide, store }: StoreSheet, options: TextOptions): string[] {
  if (biocide === null) return [];
  const lines = block(
    words.biocideLabels.title(biocide.biocide),
    linesOf(biocide, store.id, options),
    options,
  );
  const cautions = (biocide.redose?.cautions ?? []).flatMap(({ signal, text }) =>
    hanging(`  ${signal}`, signed(text, options.style), { width: proseWidth(options), indent: INDENT }),
  );
  return [...lines, ...cautions];
}

export function lifeLines({ life }: StoreSheet, options: TextOptions): string[] {
  if (life === null) return [];
  return block(words.biocideLabels.life, lifeFacts({ life }), options);
}

function block(title: string, lines: readonly Line[], options: TextOptions): string[] {
  const width = proseWidth(options);
  return [
    ...wrap(signed(title, options.style), width),
    ...lines.flatMap(({ name, text }) =>
      hanging(`  ${signed(name, options.style)}`, signed(text, options.style), { width, indent: INDENT }),
    ),
  ];
}

function linesOf(sheet: BiocideSheet, store: string, options: TextOptions): readonly Line[] {
  const { biocideLabels } = words;
  const figure = (each: SheetFigure) => said(each, options);
  const { level, levelIs, rate, ends, age, redose, line } = sheet;
  const levelText = level === null ? words.saidNoLevel(sheet) : figure(level);
  const rateText = rate === null ? words.saidNoRate(sheet) : `${figure(rate)}, ${words.saidRateBasis(sheet)}`;
  const redoseText =
    redose === null
      ? words.saidNoRedose(sheet, store)
      : words.saidRedose(redose, { volume: figure(redose.volume), resulting: figure(redose.resulting) });
  return [
    { name: biocideLabels.results, text: words.saidResults(sheet.results) },
    { name: biocideLabels.level[levelIs], text: `${levelText} (${words.saidLimits(sheet)})` },
    { name: biocideLabels.rate, text: rateText },
    ...(ends === null ? [] : [{ name: biocideLabels.ends, text: words.saidEnds(ends) }]),
    ...(age === null ? [] : [{ name: biocideLabels.age, text: words.saidAge(age) }]),
    { name: biocideLabels.until, text: words.saidUntil(sheet) },
    { name: biocideLabels.redose, text: redoseText },
    ...(line === null ? [] : [{ name: biocideLabels.line, text: words.saidLine(line) }]),
  ];
}

/** The same lines for a door that lays them out by itself. */
export function biocideFacts({ biocide, store }: StoreSheet, options: TextOptions): readonly Line[] {
  return biocide === null ? [] : linesOf(biocide, store.id, options);
}

export function lifeFacts({ life }: Pick<StoreSheet, 'life'>): readonly Line[] {
  if (life === null) return [];
  const { fills, inUse } = words.biocideLabels;
  return [
    { name: fills, text: words.saidFills(life) },
    { name: inUse, text: words.saidUse(life) },
  ];
}

const figureFields = (figure: SheetFigure | null): readonly string[] =>
  figure === null ? ['', ''] : fieldsOf(figure);
const numberField = (value: number | null): string => (value === null ? '' : `${value}`);

/**
 * biocide-now name level-mgL ± is rate-%d ± by least-mgL most-mgL q05-day q50-day q95-day age-days most-days until-day by ·
 * biocide-result ref id stamp below value-mgL · redose volume-mL ± resulting-mgL ± most-mgL · line name last-flow days until-day ·
 * life fills cycles days of-days since what verdict.
 */
export function biocideRecords({ biocide, life }: StoreSheet): string[] {
  return [...(biocide === null ? [] : recordsOf(biocide)), ...(life === null ? [] : [lifeRecord(life)])].map(
    (fields) => record(fields.map((field) => signed(field, 'plain'))),
  );
}

function recordsOf(sheet: BiocideSheet): readonly (readonly string[])[] {
  const { level, rate, ends, age, redose, line } = sheet;
  return [
    [
      ...[
        'biocide-now',
        sheet.biocide,
        ...figureFields(level),
        sheet.levelIs,
        ...figureFields(rate),
        sheet.ratedBy,
      ],
      ...[sheet.leastMgPerL, sheet.mostMgPerL, ends?.q05 ?? null, ends?.q50 ?? null, ends?.q95 ?? null].map(
        numberField,
      ),
      ...[age === null ? null : Math.floor(age.days), age?.mostDays ?? null, sheet.untilDay].map(numberField),
      sheet.untilBy,
    ],
    ...sheet.results.map(({ ref, id, stamp, valueMgPerL, below }) => [
      ...['biocide-result', ref, id, stamp, below ? '<' : '', `${valueMgPerL}`],
    ]),
    ...(redose === null
      ? []
      : [
          [
            'redose',
            ...figureFields(redose.volume),
            ...figureFields(redose.resulting),
            numberField(redose.mostMgPerL),
          ],
        ]),
    ...(line === null
      ? []
      : [['line', line.line, line.lastFlow ?? '', `${Math.floor(line.days)}`, numberField(line.untilDay)]]),
  ];
}

function lifeRecord(life: LifeSheet): readonly string[] {
  const { fills, lifeCycles, days, lifeDays, since, sinceWhat, verdict } = life;
  return [
    'life',
    `${fills}`,
    numberField(lifeCycles),
    `${Math.floor(days)}`,
    numberField(lifeDays),
    since,
    sinceWhat,
    verdict,
  ];
}
