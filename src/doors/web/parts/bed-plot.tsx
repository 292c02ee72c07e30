// What is read behind a purifier's beds, the fit through it, what is ahead as a band, and the limit.
import { scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import { useRef } from 'react';
import { formatFigure, roundFigure } from '../../../ground/units/index.ts';
import type { BedReading, BedSheet } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { DayAxis, MARGIN, ValueAxis } from './plot-axes.tsx';
import { usePlotSize } from './plot-size.ts';
import { Table } from './table.tsx';

export function BedPlot({ sheet }: { readonly sheet: BedSheet }) {
  const ref = useRef<HTMLDivElement>(null);
  const size = usePlotSize(ref);
  const { quality } = words();
  const { plot, readings } = sheet;
  if (plot === null) return null;
  const shown = readings.filter(({ parameter }) => parameter === plot.parameter);
  const days = [...plot.curve.map(({ day }) => day), ...shown.map(({ day }) => day)];
  const x = scaleLinear()
    .domain([Math.min(...days), Math.max(...days) + 0.5])
    .range([MARGIN.left, size.width - MARGIN.right]);
  const y = scaleLinear()
    .domain([0, plot.limit * 1.35])
    .range([size.height - MARGIN.bottom, MARGIN.top])
    .clamp(true);
  type Point = (typeof plot.curve)[number];
  const band = area<Point>()
    .x(({ day }) => x(day))
    .y0(({ q10 }) => y(q10))
    .y1(({ q90 }) => y(q90));
  const middle = line<Point>()
    .x(({ day }) => x(day))
    .y(({ q50 }) => y(q50));
  return (
    <div ref={ref}>
      <svg
        className="plot"
        width={size.width}
        height={size.height}
        role="img"
        aria-label={quality.bedPlotLabel(plot.parameter)}
      >
        <ValueAxis y={y} size={size} unit={plot.unit} />
        <DayAxis x={x} size={size} />
        <path d={band(plot.curve) ?? ''} className="band" />
        <path d={middle(plot.curve) ?? ''} className="believed" />
        <line
          x1={MARGIN.left}
          x2={size.width - MARGIN.right}
          y1={y(plot.limit)}
          y2={y(plot.limit)}
          className="limit"
        />
        <text x={MARGIN.left + 4} y={y(plot.limit) - 5} className="xs">
          {quality.limitLine(
            'at most',
            `${roundFigure({ value: plot.limit, u95: null }).value} ${plot.unit}`,
          )}
        </text>
        {shown.map((reading) => (
          <g key={`${reading.id} ${reading.day}`} className="reading">
            <line
              x1={x(reading.day)}
              x2={x(reading.day)}
              y1={y(reading.value + reading.u95)}
              y2={y(Math.max(0, reading.value - reading.u95))}
            />
            <circle cx={x(reading.day)} cy={y(reading.value)} r="5" />
          </g>
        ))}
      </svg>
      <p className="xs soft">{quality.bedPlotNote}</p>
    </div>
  );
}

export function BedTable({ sheet }: { readonly sheet: BedSheet }) {
  const { quality, stores } = words();
  return (
    <Table
      caption={quality.bedReadings}
      rows={[...sheet.readings].reverse()}
      keyOf={({ id, parameter }) => `${id} ${parameter}`}
      columns={[
        {
          head: quality.when,
          text: ({ stamp }) => stamp,
          show: ({ stamp }) => <span className="nowrap">{stamp}</span>,
        },
        { head: quality.parameter, text: ({ parameter }) => parameter },
        { head: quality.value, right: true, text: readValue },
        { head: quality.throughput, right: true, text: ({ throughputL }) => `${Math.round(throughputL)}` },
        { head: stores.entry, text: ({ ref }) => ref },
      ]}
    />
  );
}

function readValue({ value, u95, unit, below }: BedReading): string {
  return `${below ? '<' : ''}${formatFigure({ value, u95: below ? null : u95, unit }, { style: 'screen' })}`;
}
