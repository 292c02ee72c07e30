// What a choice of limits or a typed figure does, or would, as a text: stores, litres, cover, rows that are off, what cannot be met.
import { roundCoverDays } from '../../ground/units/index.ts';
import type {
  LimitClash,
  LimitHold,
  LimitsChosenSheet,
  LimitsEffect,
  LimitTypedSheet,
} from '../sheets/limits.ts';
import { choiceLabels as labels, limitLabels } from '../words/en/limits-sheet.ts';
import { amountOf, fieldsOf, said } from './figures.ts';
import { findingRecords } from './finding-records.ts';
import { findingLines } from './findings.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { hanging, wrap } from './wrap.ts';

export function limitsChosenText(sheet: LimitsChosenSheet, options: TextOptions): string {
  const { kept, ref, by, reason, effect, findings, beside } = sheet;
  if (options.style === 'plain') return page(plainChosen(sheet), options);
  const names = sheet.asked.map((id) => sheet.sets.find((set) => set.id === id)?.name ?? id);
  return page(
    [
      ...prose(labels.chosen(names, kept, beside), options),
      ...(ref === null ? [] : prose(labels.entry(ref, by, reason), options)),
      ...(sheet.exposureDays === null ? [] : prose(limitLabels.exposure(sheet.exposureDays), options)),
      '',
      ...effectLines(effect, kept, options),
      '',
      ...prose(kept ? labels.undo(ref) : labels.nothing, options),
      ...findingLines(findings, options),
    ],
    options,
  );
}

export function limitTypedText(sheet: LimitTypedSheet, options: TextOptions): string {
  const { kept, ref, by, effect, findings } = sheet;
  if (options.style === 'plain') return page(plainTyped(sheet), options);
  const changes = effect === null ? prose(labels.notInForce, options) : effectLines(effect, kept, options);
  return page(
    [
      ...prose(labels.typed(sheet), options),
      ...(ref === null ? [] : prose(labels.entry(ref, by, null), options)),
      '',
      ...changes,
      '',
      ...prose(kept ? labels.undo(ref) : labels.nothingTyped, options),
      ...findingLines(findings, options),
    ],
    options,
  );
}

const prose = (text: string, options: TextOptions): string[] =>
  text === '' ? [] : wrap(signed(text, options.style), proseWidth(options));

function effectLines(effect: LimitsEffect, kept: boolean, options: TextOptions): string[] {
  const { ends, grades, clashes, noMore } = effect;
  const gone = noMore.map(({ row }) => row);
  return [
    ...clashes.flatMap((clash) => clashLines(clash, options)),
    ...(clashes.length === 0 ? [] : ['']),
    ...holdLines(effect, kept, options),
    ...(ends.length === 0 ? [] : prose(labels.ends(ends, kept), options)),
    ...grades.flatMap((grade) => gradeLines(grade, doseFails(grade, clashes), options)),
    ...(gone.length === 0 ? [] : prose(kept ? labels.isNoMore(gone) : labels.noMore(gone), options)),
  ];
}

const INDENT = 15;

function clashLines({ kind, text }: LimitClash, options: TextOptions): string[] {
  const head = kind === 'part-of-policy-fails' ? labels.partClash : labels.clash;
  return hanging(head, signed(text, options.style), { width: proseWidth(options), indent: INDENT });
}

const isOff = (grades: LimitsEffect['grades']) => grades.some(({ off }) => off.length > 0);

function holdLines({ holds, held, grades }: LimitsEffect, kept: boolean, options: TextOptions): string[] {
  const fresh = holds.filter(({ already }) => !already).length;
  // Where no water is counted on at all, that is said below.
  if (holds.length === 0) return isOff(grades) ? [] : prose(labels.none(kept), options);
  return [
    ...prose(labels.holds(fresh, said(amountOf(held, options), options), kept), options),
    ...table(holdColumns(options), holds, { ...options, width: proseWidth(options) - 2 }).lines.map(
      (line) => `  ${line}`,
    ),
  ];
}

function holdColumns(options: TextOptions): readonly Column<LimitHold>[] {
  const { columns } = limitLabels;
  return [
    { head: columns.store, align: 'left', priority: 0, cell: ({ store }) => store },
    {
      head: columns.volume.replace('L', options.units),
      align: 'figure',
      priority: 0,
      cell: ({ volume }) => {
        const { value, u95 } = amountOf(volume, options);
        return { value, u95 };
      },
    },
    { head: columns.fails, align: 'left', priority: 0, cell: ({ failed }) => failed.join(', '), least: 10 },
    {
      head: columns.mark,
      align: 'left',
      priority: 1,
      cell: ({ already }) => (already ? labels.already : ''),
    },
  ];
}

type Grade = LimitsEffect['grades'][number];

/** Biocides by which water of the grade fails although it is dosed right. */
function doseFails({ grade }: Grade, clashes: readonly LimitClash[]): readonly string[] {
  const sure = clashes.filter(({ kind }) => kind === 'dose-above' || kind === 'dose-below');
  return [...new Set(sure.flatMap((clash) => (clash.grade === grade ? [clash.biocide] : [])))];
}

function gradeLines(
  { grade, freeBefore, freeAfter, ...rest }: Grade,
  fails: readonly string[],
  options: TextOptions,
): string[] {
  const [before, after] = [freeBefore, freeAfter].map((figure) => said(amountOf(figure, options), options));
  const { off, notMeasured } = rest;
  const cover = labels.cover(days(rest.coverBefore), days(rest.coverAfter));
  const stays = labels.free(grade, before ?? '', after ?? '');
  return [
    ...prose(`${stays}${cover === '' ? '.' : cover}`, options),
    ...(off.length === 0
      ? []
      : prose(
          labels.off(
            grade,
            off.map(({ row }) => row),
          ),
          options,
        )),
    ...(notMeasured === null
      ? []
      : prose(
          labels.notMeasured(grade, {
            parameters: notMeasured.parameters,
            stores: notMeasured.stores.length,
            volume: said(amountOf(notMeasured.volume, options), options),
            fails: fails.filter((biocide) => notMeasured.parameters.includes(biocide)),
          }),
          options,
        )),
  ];
}

const days = (value: number | null): string | null => (value === null ? null : roundCoverDays(value));

const plain = (fields: readonly (string | number | null | undefined)[]): string =>
  record(fields.map((field) => signed(`${field ?? ''}`, 'plain')));

/** chosen or would-choose ref id happened by reason beside exposure · set id name rows · … */
function plainChosen(sheet: LimitsChosenSheet): string[] {
  const { kept, ref, id, happened, by, reason, beside, exposureDays } = sheet;
  const how = beside ? 'beside' : 'instead';
  return [
    plain([kept ? 'chosen' : 'would-choose', ref, id, happened, by, reason, how, exposureDays]),
    ...sheet.sets.map((set) => plain(['set', set.id, set.name, set.rows.length])),
    ...plainEffect(sheet.effect),
    ...findingRecords(sheet.findings, 'finding'),
  ];
}

/** typed or would-type ref id happened by set row at-least at-most unit basis copy · … */
function plainTyped({
  kept,
  ref,
  id,
  happened,
  by,
  copy,
  set,
  row,
  effect,
  findings,
}: LimitTypedSheet): string[] {
  const { atLeast, atMost } = row.limit ?? {};
  const told = [set, row.id, atLeast, atMost, row.unit, row.basis, copy];
  return [
    plain([kept ? 'typed' : 'would-type', ref, id, happened, by, ...told]),
    ...(effect === null ? [] : plainEffect(effect)),
    ...findingRecords(findings, 'finding'),
  ];
}

/**
 * clash kind text · hold store L ± fails already · ends store · free grade L ± L-before ± cover cover-before ·
 * off grade set row · not-measured grade parameter · no-more set row.
 */
function plainEffect({ clashes, holds, ends, grades, noMore }: LimitsEffect): string[] {
  return [
    ...clashes.map(({ kind, text }) => plain(['clash', kind, text])),
    ...holds.map(({ store, volume, failed, already }) =>
      plain(['hold', store, ...fieldsOf(volume), failed.join(', '), already ? 'already' : '']),
    ),
    ...ends.map((store) => plain(['ends', store])),
    ...grades.flatMap(({ grade, freeAfter, freeBefore, coverAfter, coverBefore, off, notMeasured }) => [
      plain([
        ...['free', grade, ...fieldsOf(freeAfter), ...fieldsOf(freeBefore)],
        ...[days(coverAfter), days(coverBefore)],
      ]),
      ...off.map(({ set, row }) => plain(['off', grade, set, row])),
      ...(notMeasured?.parameters ?? []).map((parameter) => plain(['not-measured', grade, parameter])),
    ]),
    ...noMore.map(({ set, row }) => plain(['no-more', set, row])),
  ];
}
