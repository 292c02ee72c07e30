// The tree of a hold as lines: each place that the water touched, and what holding it changes; before or after it is kept.
import { roundCoverDays } from '../../ground/units/index.ts';
import type { SheetFigure } from '../sheets/figure.ts';
import type { EffectLine, HoldTree, TouchLine, TraceSheet } from '../sheets/holds.ts';
import { fates, holdLabels } from '../words/en/holds.ts';
import { dropped, saidDays } from '../words/en/labels.ts';
import { saidValueAt } from '../words/en/said.ts';
import { amountOf, fieldsOf, said } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { wrap } from './wrap.ts';

const { columns } = holdLabels;

/** @param how.isAhead nothing of it is kept yet */
export function treeLines(
  tree: HoldTree,
  options: TextOptions,
  { isAhead }: { readonly isAhead: boolean },
): string[] {
  const { hold, conditional, heldVolume, conditionalVolume, trace, effect } = tree;
  const sums = [
    ...(hold.length === 0 ? [] : [holdLabels.sum(hold.length, said(amountOf(heldVolume, options), options))]),
    ...(conditional.length === 0
      ? []
      : [
          holdLabels.touchedWaits(
            `${conditional.join(', ')} ${said(amountOf(conditionalVolume, options), options)}`,
          ),
        ]),
  ];
  const head = isAhead ? holdLabels.willHold : holdLabels.wouldHold;
  return [
    ...wrap(
      signed(sums.length === 0 ? head : `${head}: ${sums.join('; ')}`, options.style),
      proseWidth(options),
    ),
    ...traceLines(trace, options),
    ...effectLines(effect, options, isAhead),
  ];
}

export function traceLines(trace: TraceSheet, options: TextOptions): string[] {
  const touched = table(touchColumns(options), trace.touched, options);
  const say = (sentence: string) => wrap(signed(sentence, options.style), proseWidth(options));
  return [
    ...touched.lines,
    ...(touched.dropped.length === 0 ? [] : say(dropped(touched.dropped))),
    ...trace.windows.flatMap(({ store, opened, since, until }) =>
      say(holdLabels.window(store, opened, since, until)),
    ),
    ...trace.cuts.flatMap(({ store, how, at, ref, cleared }) =>
      say(holdLabels.cut(store, how, at, ref, saidBare(cleared, options))),
    ),
    ...say(saidDrunk(trace, options)),
  ];
}

function saidDrunk({ drunk }: TraceSheet, options: TextOptions): string {
  if (drunk === null) return holdLabels.nobodyDrank;
  return holdLabels.drunk(saidBare(drunk.volume, options), drunk.sinceDay, drunk.untilDay);
}

/** A traced amount to a hundredth of a litre: it has no ± of its own, and how surely the water mixed is not in it. */
export function saidBare(figure: SheetFigure, options: TextOptions): string {
  const { value, unit } = amountOf(figure, options);
  return saidValueAt(value, -2, unit);
}

function touchColumns(options: TextOptions): readonly Column<TouchLine>[] {
  return [
    { head: columns.store, align: 'left', priority: 0, cell: ({ name }) => name, least: 8 },
    { head: columns.mark, align: 'left', priority: 0, cell: ({ fate }) => fates[fate], least: 11 },
    {
      head: columns.water,
      align: 'figure',
      priority: 4,
      cell: ({ held }) => (held === null ? '' : amountOf(held, options)),
    },
    {
      head: columns.suspect,
      align: 'figure',
      priority: 0,
      cell: ({ suspect }) => amountOf(suspect, options),
    },
    { head: columns.share, align: 'right', priority: 3, cell: ({ share }) => shareOf(share) },
    { head: columns.came, align: 'left', priority: 2, cell: ({ firstDay }) => `Day\u00A0${firstDay}` },
    { head: columns.way, align: 'left', priority: 1, cell: wayOf, least: 16 },
  ];
}

function shareOf(share: number | null): string {
  if (share === null) return '';
  const percent = Math.round(share * 1000) / 10;
  return `${percent === 0 && share > 0 ? '<0.1' : percent}\u00A0%`;
}

/** `FA, H-1 (corrie 21)`: each store on the way, and by what it left. */
function wayOf({ path, isSource }: TouchLine): string {
  if (isSource) return 'sampled';
  return path
    .map(({ from, hose, ref }) => `${from}${hose === null ? '' : `, ${hose}`} (${ref})`)
    .join(' \u2192 ');
}

function effectLines(effect: readonly EffectLine[], options: TextOptions, isAhead: boolean): string[] {
  const say = (sentence: string) => wrap(signed(sentence, options.style), proseWidth(options));
  const days = (value: number | null) => (value === null ? 'no end' : saidDays(roundCoverDays(value)));
  return effect.flatMap(({ grade, before, after }) => [
    ...say(
      holdLabels.free(
        isAhead,
        grade,
        said(amountOf(before.free, options), options),
        said(amountOf(after.free, options), options),
      ),
    ),
    ...say(holdLabels.cover(isAhead, grade, days(before.q05), days(after.q05))),
  ]);
}

/** hold store · conditional store · touched kind name fate held ± suspect ± share first path · cut … · drunk L since until · effect grade free ± free ± q05 q05 */
export function treeRecords(tree: HoldTree): string[] {
  return [
    ...tree.hold.map((store) => record(['proposed', 'hold', signed(store, 'plain')])),
    ...tree.conditional.map((store) => record(['proposed', 'conditional', signed(store, 'plain')])),
    ...traceRecords(tree.trace),
    ...tree.effect.map(({ grade, before, after }) =>
      record([
        'effect',
        signed(grade, 'plain'),
        ...fieldsOf(before.free),
        ...fieldsOf(after.free),
        before.q05 === null ? '' : roundCoverDays(before.q05),
        after.q05 === null ? '' : roundCoverDays(after.q05),
      ]),
    ),
  ];
}

export function traceRecords(trace: TraceSheet): string[] {
  const plain = (fields: readonly string[]) => record(fields.map((field) => signed(field, 'plain')));
  const { drunk } = trace;
  return [
    ...trace.windows.map(({ store, opened, since, until, ref }) =>
      plain(['window', store, opened, since, until, ref ?? '']),
    ),
    ...trace.touched.map((line) =>
      plain([
        'touched',
        line.kind,
        line.name,
        line.fate,
        ...(line.held === null ? ['', ''] : fieldsOf(line.held)),
        ...fieldsOf(line.suspect),
        line.share === null ? '' : `${line.share}`,
        line.first,
        line.path.map(({ from, ref }) => `${from} ${ref}`).join('; '),
      ]),
    ),
    ...trace.cuts.map(({ store, how, at, ref, cleared }) =>
      plain(['cut', store, how, at, ref, ...fieldsOf(cleared)]),
    ),
    ...(drunk === null
      ? []
      : [plain(['drunk', fieldsOf(drunk.volume)[0], `D${drunk.sinceDay}`, `D${drunk.untilDay}`])]),
  ];
}
