// The axes of a plot over days: values at the left with their unit, days below.
import type { ScaleLinear } from 'd3-scale';
import { words } from '../language.ts';
import type { PlotSize } from './plot-size.ts';

export const MARGIN = { top: 18, right: 16, bottom: 30, left: 52 };

type Scale = ScaleLinear<number, number>;

export function ValueAxis({
  y,
  size,
  unit,
}: {
  readonly y: Scale;
  readonly size: PlotSize;
  readonly unit: string;
}) {
  const ticks = y.ticks(5);
  const say = y.tickFormat(5);
  return (
    <>
      {ticks.map((value) => (
        <g key={value}>
          <line
            x1={MARGIN.left}
            x2={size.width - MARGIN.right}
            y1={y(value)}
            y2={y(value)}
            className="grid"
          />
          <text x={MARGIN.left - 8} y={y(value) + 5} textAnchor="end" className="xs">
            {say(value)}
          </text>
        </g>
      ))}
      <text x={2} y={size.height - 8} className="xs">
        {unit}
      </text>
    </>
  );
}

export function DayAxis({ x, size }: { readonly x: Scale; readonly size: PlotSize }) {
  const { today } = words();
  const bottom = size.height - MARGIN.bottom;
  return x
    .ticks(Math.max(2, Math.floor(size.width / 130)))
    .filter((day) => Number.isInteger(day) && x(day) > MARGIN.left + 50)
    .map((day) => (
      <g key={day}>
        <line x1={x(day)} x2={x(day)} y1={bottom} y2={bottom + 5} className="thin" />
        <text x={Math.min(x(day), size.width - 28)} y={size.height - 8} textAnchor="middle" className="xs">
          {today.dayWord} {day}
        </text>
      </g>
    ));
}
