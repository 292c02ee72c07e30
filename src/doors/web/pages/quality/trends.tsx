// Trends: one parameter at one place over the days, as a control chart and as a table.
import { useState } from 'react';
import { formatFigure } from '../../../../ground/units/index.ts';
import type { Trend, TrendParameter, TrendSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { Failed, Working } from '../../parts/states.tsx';
import { Table, Twin } from '../../parts/table.tsx';
import { TrendPlot } from '../../parts/trend-plot.tsx';
import { type Place, sheetPath } from '../../place.ts';
import { Row } from './row.tsx';

interface Chosen {
  readonly parameter: string;
  /** `point product`, `store C-13`; empty: everywhere. */
  readonly place: string;
}

export function Trends({ place }: { readonly place: Place }) {
  const { quality } = words();
  const list = useSheet<TrendSheet>(sheetPath('quality/trend', place));
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const known = list.data?.parameters ?? [];
  const shown = chosen ?? firstOf(known);
  return (
    <Row head={quality.trends} className="trend-row">
      {list.data === undefined && (list.failed === null ? <Working /> : <Failed sheet={list} />)}
      {list.data !== undefined && known.length === 0 && <p>{quality.noTrend}</p>}
      {shown !== null && (
        <>
          <Choose known={known} shown={shown} onChange={setChosen} />
          <OneTrend chosen={shown} place={place} />
        </>
      )}
    </Row>
  );
}

/** What was measured most often at one place: there a trend is worth looking at. */
function firstOf(known: readonly TrendParameter[]): Chosen | null {
  const all = known.flatMap(({ parameter, places }) => places.map((at) => ({ parameter, at })));
  const [first] = [...all].sort((a, b) => b.at.results - a.at.results);
  return first === undefined
    ? null
    : { parameter: first.parameter, place: `${first.at.kind} ${first.at.name}` };
}

function Choose(told: {
  readonly known: readonly TrendParameter[];
  readonly shown: Chosen;
  readonly onChange: (chosen: Chosen) => void;
}) {
  const { known, shown, onChange } = told;
  const { quality } = words();
  const places = known.find(({ parameter }) => parameter === shown.parameter)?.places ?? [];
  const choose = (parameter: string) => {
    const [first] = known.find((each) => each.parameter === parameter)?.places ?? [];
    onChange({ parameter, place: first === undefined ? '' : `${first.kind} ${first.name}` });
  };
  return (
    <div className="trend-choose no-print">
      <label>
        <span>{quality.parameter}</span>
        <select className="f" value={shown.parameter} onChange={({ target }) => choose(target.value)}>
          {known.map(({ parameter, results }) => (
            <option key={parameter} value={parameter}>
              {parameter} ({results})
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>{quality.place}</span>
        <select
          className="f"
          value={shown.place}
          onChange={({ target }) => onChange({ parameter: shown.parameter, place: target.value })}
        >
          {places.map(({ kind, name, results }) => (
            <option key={`${kind} ${name}`} value={`${kind} ${name}`}>
              {name} ({results})
            </option>
          ))}
          <option value="">{quality.everywhere}</option>
        </select>
      </label>
    </div>
  );
}

function OneTrend({ chosen, place }: { readonly chosen: Chosen; readonly place: Place }) {
  const [kind = '', ...name] = chosen.place.split(' ');
  const at = chosen.place === '' ? {} : { [kind]: name.join(' ') };
  const sheet = useSheet<TrendSheet>(
    sheetPath('quality/trend', place, { parameter: chosen.parameter, ...at }),
  );
  const trend = sheet.data?.trend ?? null;
  if (trend === null) return sheet.failed === null ? <Working /> : <Failed sheet={sheet} />;
  return (
    <>
      <p className="print-only">
        <b>{trend.parameter}</b> {trend.place.name}
      </p>
      <Twin picture={<TrendPlot trend={trend} />} table={<TrendTable trend={trend} />} />
      <Said trend={trend} />
    </>
  );
}

function Said({ trend }: { readonly trend: Trend }) {
  const { quality } = words();
  const { chart } = trend;
  return (
    <ul className="plain">
      {chart.limits === null && chart.why === 'few results' && (
        <li>{quality.noControl(chart.results, chart.least)}</li>
      )}
      {trend.limits
        .filter(({ isOff }) => isOff)
        .map(({ row }) => (
          <li key={row}>{quality.offRow(row)}</li>
        ))}
      {trend.gaps.map(({ fromDay, toDay, everyDays }) => (
        <li key={fromDay}>{quality.gap(Math.floor(fromDay), Math.floor(toDay), everyDays)}</li>
      ))}
      {trend.methodChanges.map(({ day, from, to }) => (
        <li key={day}>{quality.method(Math.floor(day), from, to)}</li>
      ))}
    </ul>
  );
}

function TrendTable({ trend }: { readonly trend: Trend }) {
  const { quality, stores } = words();
  return (
    <Table
      caption={`${trend.parameter}, ${trend.unit}`}
      rows={[...trend.points].reverse()}
      keyOf={({ id, sample, day }) => `${id} ${sample} ${day}`}
      columns={[
        { head: quality.when, text: ({ day }) => quality.onDay(Math.floor(day)) },
        { head: quality.place, text: ({ place }) => place?.name ?? '' },
        { head: quality.sampleField, text: ({ sample }) => sample },
        { head: quality.value, right: true, text: toldOf },
        { head: quality.state, text: ({ against }) => quality.against[against] },
        { head: stores.entry, text: ({ ref }) => ref },
      ]}
    />
  );
}

function toldOf({ told, figure }: Trend['points'][number]): string {
  const sign = told.censored === 'below' ? '<' : told.censored === 'above' ? '>' : '';
  return `${sign}${formatFigure({ ...figure, u95: null }, { style: 'screen' })}`;
}
