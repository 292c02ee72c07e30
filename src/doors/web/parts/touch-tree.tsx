// What suspect water touched: the hold tree as a drawing, the same places as a table, and what holding them changes.
import { formatFigure, roundCoverDays } from '../../../ground/units/index.ts';
import type {
  CoverFigure,
  EffectLine,
  HoldTree as HoldTreeSheet,
  SheetFigure,
  StoreMark,
  StoresSheet,
  TouchLine,
  TraceSheet,
} from '../../../papers/index.ts';
import { fates } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { words } from '../language.ts';
import { Quantity } from './figure.tsx';
import { type HoldNode, HoldTree } from './hold-tree.tsx';
import { Phrased } from './phrased.tsx';
import { Table, Twin } from './table.tsx';

const MARKS: Readonly<Record<string, StoreMark>> = { hold: 'HOLD', conditional: 'CONDITIONAL' };

export const screen = (figure: SheetFigure): string => formatFigure(figure, { style: 'screen' });

/** Litres for a column whose heading says the unit. */
export const bareL = (figure: SheetFigure): string =>
  formatFigure(figure, { style: 'plain' }).replace(/ L$/, '');

export function TouchTree({ trace }: { readonly trace: TraceSheet }) {
  const { quality } = words();
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  const grades = new Map(stores.map(({ id, grade }) => [id, grade]));
  const nodes = nodesUnder(null, trace.touched, grades);
  return (
    <Twin
      picture={<HoldTree nodes={nodes} label={quality.treeLabel} />}
      table={<TouchTable touched={trace.touched} />}
    />
  );
}

type Grades = ReadonlyMap<string, string | null>;

/** Places whose water came straight from one; from nowhere: what was sampled. */
function nodesUnder(from: string | null, all: readonly TouchLine[], grades: Grades): readonly HoldNode[] {
  const here = all.filter((line) => (line.path.at(-1)?.from ?? null) === from);
  // What stands under one is looked for among the others only, so that no way can go round.
  const rest = all.filter((line) => !here.includes(line));
  return here.map((line) => ({
    store: line.name,
    grade: grades.get(line.name) ?? null,
    isStore: line.kind === 'store',
    came: null,
    volume: line.held ?? line.suspect,
    mark: MARKS[line.fate] ?? '',
    note: noteOf(line),
    fed: nodesUnder(line.name, rest, grades),
  }));
}

function noteOf({ isSource, fate, firstDay, path, held, suspect, share }: TouchLine): string {
  const { quality } = words();
  const hop = path.at(-1);
  const isPart = held !== null && share !== null && share < 0.995;
  return [
    isSource ? quality.sampledHere : quality.came(firstDay, hop?.hose ?? null),
    ...(isPart ? [`${screen(suspect)} ${quality.suspectOf}`] : []),
    ...(MARKS[fate] === undefined ? [fates[fate]] : []),
  ].join(', ');
}

function TouchTable({ touched }: { readonly touched: readonly TouchLine[] }) {
  const { quality } = words();
  return (
    <Table
      caption={quality.touchedTable}
      rows={touched}
      keyOf={({ kind, name }) => `${kind} ${name}`}
      columns={[
        { head: quality.store, text: ({ name }) => name },
        { head: quality.mark, text: ({ fate }) => fates[fate] },
        {
          head: quality.holds,
          right: true,
          text: ({ held }) => (held === null ? '' : bareL(held)),
          show: ({ held, name }) => (held === null ? '' : <Quantity figure={held} of={name} />),
        },
        {
          head: quality.suspect,
          right: true,
          text: ({ suspect }) => bareL(suspect),
          show: ({ suspect, name }) => <Quantity figure={suspect} of={name} />,
        },
        { head: quality.way, text: wayOf },
      ]}
    />
  );
}

function wayOf({ isSource, path }: TouchLine): string {
  if (isSource) return words().quality.sampledHere;
  return path.map(({ from, hose, ref }) => `${from}${hose === null ? '' : `, ${hose}`} (${ref})`).join(' → ');
}

/** Cuts, windows and how much was drunk: sentences beside the tree. */
export function TraceWords({ trace }: { readonly trace: TraceSheet }) {
  const { quality } = words();
  const { drunk } = trace;
  return (
    <ul className="plain">
      {trace.windows.map(({ store, since, until }) => (
        <li key={store}>{quality.window(store, since, until)}</li>
      ))}
      {trace.cuts.map(({ store, how, at, ref, cleared }) => (
        <li key={`${store} ${ref}`}>
          <Phrased text={quality.cut(store, how, at, ref, screen(cleared))} />
        </li>
      ))}
      <li>
        <Phrased
          text={
            drunk === null
              ? quality.nobodyDrank
              : quality.drunk(screen(drunk.volume), drunk.sinceDay, drunk.untilDay)
          }
        />
      </li>
    </ul>
  );
}

interface Changed {
  readonly what: string;
  readonly before: SheetFigure | string;
  readonly after: SheetFigure | string;
}

/** Free water and cover before and after, and what would be held. */
export function EffectTable({ tree }: { readonly tree: HoldTreeSheet }) {
  const { quality } = words();
  const held: readonly Changed[] = [
    { what: quality.onHold, before: '', after: withCount(tree.heldVolume, tree.hold.length) },
    ...(tree.conditional.length === 0
      ? []
      : [
          {
            what: quality.conditional,
            before: '',
            after: withCount(tree.conditionalVolume, tree.conditional.length),
          },
        ]),
  ];
  const rows = [...tree.effect.flatMap(changesOf), ...held];
  return (
    <Table
      caption={quality.changes}
      hideCaption
      rows={rows}
      keyOf={({ what }) => what}
      columns={[
        { head: quality.what, text: ({ what }) => what, show: ({ what }) => <b>{what}</b> },
        {
          head: quality.before,
          right: true,
          text: ({ before }) => said(before),
          show: (row) => shown(row, 'before'),
        },
        {
          head: quality.after,
          right: true,
          text: ({ after }) => said(after),
          show: (row) => shown(row, 'after'),
        },
      ]}
    />
  );
}

function withCount(figure: SheetFigure, count: number): string {
  return `${screen(figure)}, ${words().quality.storesCount(count)}`;
}

function changesOf({ grade, before, after }: EffectLine): readonly Changed[] {
  const { quality } = words();
  return [
    { what: quality.free(grade), before: before.free, after: after.free },
    { what: quality.lasts(grade), before: daysOf(before), after: daysOf(after) },
  ];
}

export function daysOf({ q05 }: Pick<CoverFigure, 'q05'>): string {
  const { quality } = words();
  return q05 === null ? quality.noEnd : quality.days(roundCoverDays(q05));
}

const said = (told: SheetFigure | string): string =>
  typeof told === 'string' ? told : formatFigure(told, { style: 'plain' });

function shown(row: Changed, side: 'before' | 'after') {
  const told = row[side];
  if (typeof told !== 'string') return <Quantity figure={told} of={row.what} />;
  return told === '' ? '' : <span className="qty">{told}</span>;
}
