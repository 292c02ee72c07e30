// The table that a run of the benches prints.
import type { BenchRow } from './bench-row.ts';

interface Measured {
  readonly bench: string;
  readonly seconds: number;
  readonly rows: readonly BenchRow[];
}

export function benchTable(runs: readonly Measured[]): string {
  const rows = [
    ['bench', 'figure', 'value', 'unit', 'goal', 'met'],
    ...runs.flatMap(({ bench, rows: figures }) => figures.map((figure) => cells(bench, figure))),
  ];
  const widths = [0, 1, 2, 3, 4, 5].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  const placed = (cell: string, column: number): string =>
    column === 2 ? cell.padStart(widths[column] ?? 0) : cell.padEnd(widths[column] ?? 0);
  return rows.map((row) => row.map(placed).join('  ').trimEnd()).join('\n');
}

function cells(bench: string, { name, value, unit, goal, ratioOf, ok }: BenchRow): readonly string[] {
  const figure = ratioOf === undefined ? name : `${name} (ratio to ${ratioOf})`;
  return [
    bench,
    figure,
    threeDigits(value),
    unit,
    goalText(goal),
    goal === undefined ? '' : ok ? 'yes' : 'NO',
  ];
}

function goalText(goal: BenchRow['goal']): string {
  if (goal === undefined) return '';
  return 'most' in goal ? `≤ ${grouped(goal.most)}` : `≥ ${grouped(goal.least)}`;
}

function threeDigits(value: number): string {
  return grouped(Number(value.toPrecision(3)));
}

/** Groups of three by a thin space, so that 200000 and 20000 are told apart at a glance. */
function grouped(value: number): string {
  const [whole = '', fraction] = String(value).split('.');
  const parted = whole.replace(/\B(?=(\d{3})+$)/g, ' ');
  return fraction === undefined ? parted : `${parted}.${fraction}`;
}
