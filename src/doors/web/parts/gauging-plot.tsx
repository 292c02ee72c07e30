// What was believed of a store's content over the days, and what was read: a line with its ±, rings with theirs.
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import { useRef } from 'react';
import { formatFigure } from '../../../ground/units/index.ts';
import {
  bandWithin,
  type EstimatePoint,
  type GaugingPoint,
  plotRange,
  type StoreSheet,
} from '../../../papers/index.ts';
import { words } from '../language.ts';
import { Quantity } from './figure.tsx';
import { type PlotSize, usePlotSize } from './plot-size.ts';
import { Table } from './table.tsx';

const MARGIN = { top: 12, right: 16, bottom: 30, left: 44 };
export function GaugingPlot({ sheet }: { readonly sheet: StoreSheet }) {
  const ref = useRef<HTMLDivElement>(null);
  const size = usePlotSize(ref);
  const { width, height } = size;
  const { capacityL, readings, estimates } = sheet.gauging;
  const { stores } = words();
  const days = [...estimates.map(({ day }) => day), sheet.head.day + 1];
  const x = scaleLinear()
    .domain([Math.min(...days), Math.max(...days)])
    .range([MARGIN.left, width - MARGIN.right]);
  const y = scaleLinear()
    .domain(plotRange(sheet.gauging))
    .range([height - MARGIN.bottom, MARGIN.top])
    .clamp(true);
  const band = area<EstimatePoint>()
    .x(({ day }) => x(day))
    .y0(({ volume }) => y(bandWithin(volume, capacityL).low))
    .y1(({ volume }) => y(bandWithin(volume, capacityL).high));
  const believed = line<EstimatePoint>()
    .x(({ day }) => x(day))
    .y(({ volume }) => y(volume.value));
  return (
    <div ref={ref}>
      <svg
        className="plot"
        width={width}
        height={height}
        role="img"
        aria-label={stores.plotLabel(sheet.store.id, readings.length)}
      >
        <Axes x={x} y={y} size={size} />
        <line
          x1={MARGIN.left}
          x2={width - MARGIN.right}
          y1={y(capacityL)}
          y2={y(capacityL)}
          className="limit"
        />
        <path d={band(estimates) ?? ''} className="band" />
        <path d={believed(estimates) ?? ''} className="believed" />
        {readings.map((reading) => (
          <Reading key={reading.id} reading={reading} x={x(reading.day)} y={y} />
        ))}
      </svg>
      <p className="xs soft">{readings.length === 0 ? stores.noReadings : stores.plotNote}</p>
    </div>
  );
}

type Scale = ScaleLinear<number, number>;

function Axes({ x, y, size }: { readonly x: Scale; readonly y: Scale; readonly size: PlotSize }) {
  const { today } = words();
  const { width, height } = size;
  return (
    <>
      {y.ticks(5).map((litres) => (
        <g key={litres}>
          <line x1={MARGIN.left} x2={width - MARGIN.right} y1={y(litres)} y2={y(litres)} className="grid" />
          <text x={MARGIN.left - 8} y={y(litres) + 5} textAnchor="end" className="xs">
            {litres}
          </text>
        </g>
      ))}
      <text x={4} y={height - 8} className="xs">
        L
      </text>
      {x
        .ticks(Math.max(2, Math.floor(width / 120)))
        .filter(Number.isInteger)
        .map((day) => (
          <g key={day}>
            <line
              x1={x(day)}
              x2={x(day)}
              y1={height - MARGIN.bottom}
              y2={height - MARGIN.bottom + 5}
              className="thin"
            />
            <text x={x(day)} y={height - 8} textAnchor="middle" className="xs">
              {today.dayWord} {day}
            </text>
          </g>
        ))}
    </>
  );
}

function Reading({
  reading,
  x,
  y,
}: {
  readonly reading: GaugingPoint;
  readonly x: number;
  readonly y: (litres: number) => number;
}) {
  const { value, u95 } = reading.read;
  const [high, low] = [y(value + (u95 ?? 0)), y(value - (u95 ?? 0))];
  return (
    <g className="reading">
      <line x1={x} x2={x} y1={high} y2={low} />
      <line x1={x - 5} x2={x + 5} y1={high} y2={high} />
      <line x1={x - 5} x2={x + 5} y1={low} y2={low} />
      <circle cx={x} cy={y(value)} r="5" />
    </g>
  );
}

export function GaugingTable({ sheet }: { readonly sheet: StoreSheet }) {
  const { stores } = words();
  const { readings } = sheet.gauging;
  const plain = (figure: GaugingPoint['believed']) =>
    figure === null ? '' : formatFigure(figure, { style: 'plain' }).replace(/ L$/, '');
  const shown = (figure: GaugingPoint['believed'], of: string) =>
    figure === null ? null : <Quantity figure={figure} of={of} />;
  return (
    <Table
      caption={stores.plot}
      rows={[...readings].reverse()}
      keyOf={({ id }) => id}
      columns={[
        {
          head: stores.when,
          text: ({ stamp }) => stamp,
          show: ({ stamp }) => <span className="nowrap">{stamp}</span>,
        },
        { head: stores.how, text: ({ how }) => how },
        {
          head: stores.read,
          right: true,
          text: ({ read }) => plain(read),
          show: ({ read }) => shown(read, stores.read),
        },
        {
          head: stores.believed,
          right: true,
          text: ({ believed }) => plain(believed),
          show: ({ believed }) => shown(believed, stores.believed),
        },
        {
          head: stores.off,
          right: true,
          text: ({ difference }) => plain(difference),
          show: ({ difference }) => shown(difference, stores.off),
        },
        { head: stores.entry, text: ({ ref }) => ref },
      ]}
    />
  );
}
