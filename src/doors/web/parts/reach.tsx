// When it runs out: one stave of days for each thing, on one axis. Solid: it lasts that long in 19 of 20 outcomes.
import { ticks } from 'd3-array';
import { roundCoverDays } from '../../../ground/units/index.ts';
import type { TodaySheet } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { GradeBadge, rankOf } from './grade.tsx';
import { Table } from './table.tsx';

export interface RunOut {
  readonly name: string;
  readonly grade: string;
  readonly q05: number | null;
  readonly q50: number | null;
  readonly q95: number | null;
}

/** Run-outs that are known so far: of each grade that is drawn on, and of the reserve down to its floor. */
export function runOutsOf({ cover }: TodaySheet): readonly RunOut[] {
  return Object.entries(cover).flatMap(([grade, each]) => {
    if (each.basis === 'not enough data') return [];
    const own = { name: grade, grade, q05: each.q05, q50: each.q50, q95: each.q95 };
    if (each.toFloor === null) return [own];
    return [own, { name: words().today.reserveFloorName, grade, ...each.toFloor }];
  });
}

interface Axis {
  readonly day: number;
  readonly days: number;
}

function axisOf(sheet: TodaySheet, runs: readonly RunOut[]): Axis {
  const ends = runs.flatMap(({ q05, q50, q95 }) => [q95 ?? q50 ?? q05 ?? 0]);
  const visits = sheet.visits.flatMap(({ berthDay, departDay }) => [berthDay, departDay ?? berthDay]);
  const soon = visits.map((day) => day - sheet.head.day).filter((days) => days > 0);
  const longest = Math.max(4, ...ends, ...(soon.length === 0 ? [] : [Math.min(...soon)]));
  return { day: sheet.head.day, days: longest * 1.08 };
}

export function Reach({ sheet, runs }: { readonly sheet: TodaySheet; readonly runs: readonly RunOut[] }) {
  const axis = axisOf(sheet, runs);
  const visits = visitMarks(sheet, axis);
  const { today } = words();
  return (
    <div className="reach">
      {namesOf(visits).map((visit) => (
        <div key={visit.text} className="reach-row reach-axis" aria-hidden="true">
          <span />
          <p className="visit-name xs">
            <svg width={`${visit.x}%`} height="1" aria-hidden="true" />
            <span>{visit.text}</span>
          </p>
        </div>
      ))}
      {runs.map((run) => (
        <ReachRow key={run.name} run={run} axis={axis} marks={visits.map(({ x }) => x)} />
      ))}
      <div className="reach-row reach-axis" aria-hidden="true">
        <span />
        <svg className="reach-line axis" aria-hidden="true">
          <text x="0" y="16" className="xs">
            {today.today}
          </text>
          {dayTicks(axis).map((day) => (
            <text key={day} x={`${part(day - axis.day, axis)}%`} y="16" className="xs" textAnchor="middle">
              {today.dayWord} {day}
            </text>
          ))}
        </svg>
      </div>
      <p className="xs soft">{today.whenNote}</p>
    </div>
  );
}

/** Round days, not so near to the first word that they run into it, nor cut off at the end. */
function dayTicks(axis: Axis): readonly number[] {
  const days = ticks(axis.day, axis.day + axis.days, 4);
  return days.filter((day) => {
    const x = part(day - axis.day, axis);
    return Number.isInteger(day) && x > 22 && x < 93;
  });
}

function part(days: number, axis: Axis): number {
  return (100 * Math.min(days, axis.days)) / axis.days;
}

interface VisitMark {
  readonly x: number;
  readonly text: string;
}

/** Berthings and departures that are still to come, the next ones first; a day that is past marks nothing. */
function visitMarks(sheet: TodaySheet, axis: Axis): readonly VisitMark[] {
  const { today } = words();
  return sheet.visits
    .flatMap(({ visit, berthDay, departDay, aboard }) => [
      ...(aboard ? [] : [{ day: berthDay, said: today.berths(visit) }]),
      ...(departDay === null ? [] : [{ day: departDay, said: today.leaves(visit) }]),
    ])
    .filter(({ day }) => day >= axis.day && day - axis.day <= axis.days)
    .sort((a, b) => a.day - b.day)
    .slice(0, MOST_MARKS)
    .map(({ day, said }) => ({
      x: part(day - axis.day, axis),
      text: `${said}, ${today.dayWord}\u00A0${day}`,
    }));
}

const MOST_MARKS = 2;
/** In parts of a hundred of the axis: marks that are nearer to each other have one line of names. */
const NEAR = 30;

function namesOf([first, second]: readonly VisitMark[]): readonly VisitMark[] {
  if (first === undefined) return [];
  if (second === undefined) return [first];
  return second.x - first.x > NEAR
    ? [first, second]
    : [{ x: first.x, text: `${first.text} · ${second.text}` }];
}

function ReachRow({
  run,
  axis,
  marks,
}: {
  readonly run: RunOut;
  readonly axis: Axis;
  readonly marks: readonly number[];
}) {
  const sure = run.q05 === null ? 100 : part(run.q05, axis);
  const may = run.q95 === null ? 100 : part(run.q95, axis);
  const rank = rankOf(run.grade);
  return (
    <div className="reach-row">
      <span className="reach-name">
        <GradeBadge grade={run.grade} /> {run.name}
      </span>
      <svg className="reach-line" role="img" aria-label={sentenceOf(run, axis)}>
        {marks.map((x) => (
          <line key={x} x1={`${x}%`} x2={`${x}%`} y1="0" y2="34" className="visit-mark" />
        ))}
        <line x1="0" x2="100%" y1="25" y2="25" className="rule" />
        {ticks(0, axis.days, 20).map((days) => (
          <line
            key={days}
            x1={`${part(days, axis)}%`}
            x2={`${part(days, axis)}%`}
            y1="25"
            y2="29"
            className="thin"
          />
        ))}
        <rect x="0" y="12" width={`${Math.max(0.4, sure)}%`} height="10" className={`g${rank}`} />
        {rank > 1 && <rect x="0" y="12" width={`${sure}%`} height="10" fill={`url(#p${rank})`} />}
        <rect
          x={`${sure}%`}
          y="12"
          width={`${Math.max(0.8, may - sure)}%`}
          height="10"
          className="open-zone"
        />
        {run.q50 !== null && (
          <svg x={`${part(run.q50, axis)}%`} y="0" overflow="visible" aria-hidden="true">
            <path d="M-6 1h12l-6 9z" className="notch" />
          </svg>
        )}
      </svg>
    </div>
  );
}

function sentenceOf(run: RunOut, axis: Axis): string {
  const { today } = words();
  const said = cells(run, axis);
  return `${run.name}: ${today.outBy} ${said[0]}, ${today.outMiddle} ${said[1]}, ${today.outLate} ${said[2]}`;
}

function cells(run: RunOut, axis: Axis): readonly string[] {
  const { today } = words();
  return [run.q05, run.q50, run.q95].map((days) =>
    days === null
      ? '∞'
      : `${today.days(roundCoverDays(days))}, ${today.dayWord}\u00A0${axis.day + Math.floor(days)}`,
  );
}

/** The same as a table. */
export function ReachTable({
  sheet,
  runs,
}: {
  readonly sheet: TodaySheet;
  readonly runs: readonly RunOut[];
}) {
  const axis = axisOf(sheet, runs);
  const { today } = words();
  const column = (k: number, head: string) => ({ head, text: (run: RunOut) => cells(run, axis)[k] ?? '' });
  return (
    <Table
      caption={today.when}
      rows={runs}
      keyOf={({ name }) => name}
      columns={[
        { head: today.thing, text: ({ name }) => name },
        column(0, today.outBy),
        column(1, today.outMiddle),
        column(2, today.outLate),
      ]}
    />
  );
}
