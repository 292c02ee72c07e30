// The condensate of every day, inside the calculator of the condenser: what should have come, what came, what falls out.
import { formatFigure } from '../../../../ground/units/index.ts';
import {
  type CondensateLine,
  type CondensateSheet,
  condensateLabels,
  condensateSentences,
  type SheetFigure,
  saidPeople,
  saidVerdict,
} from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { Quantity } from '../../parts/figure.tsx';
import { Failed, Working } from '../../parts/states.tsx';
import { Table, Twin } from '../../parts/table.tsx';
import { type Place, sheetPath } from '../../place.ts';
import { CondensatePlot } from './condensate-plot.tsx';
import { ON_SCREEN } from './on-screen.ts';
import { StillText } from './still.tsx';

export function Condensate({ place }: { readonly place: Place }) {
  const sheet = useSheet<CondensateSheet>(sheetPath('condensate', place));
  const { series } = words().reckon;
  const { data } = sheet;
  return (
    <section className="condensate stack" aria-labelledby="reckon-series">
      <h2 id="reckon-series">{series.head}</h2>
      {data === undefined && (sheet.failed === null ? <Working /> : <Failed sheet={sheet} />)}
      {data !== undefined && data.lines.length === 0 && <p>{condensateLabels.none}</p>}
      {data !== undefined && data.lines.length > 0 && <Days sheet={data} />}
    </section>
  );
}

function Days({ sheet }: { readonly sheet: CondensateSheet }) {
  return (
    <>
      <Twin picture={<CondensatePlot lines={sheet.lines} />} table={<DayTable lines={sheet.lines} />} />
      <ul className="sayings">
        {condensateSentences(sheet, ON_SCREEN).map((sentence) => (
          <li key={sentence}>
            <StillText text={sentence} />
          </li>
        ))}
      </ul>
    </>
  );
}

function DayTable({ lines }: { readonly lines: readonly CondensateLine[] }) {
  const { reckon, today } = words();
  const figure = (head: string, of: (line: CondensateLine) => SheetFigure) => ({
    head: `${head}, L`,
    right: true,
    text: (line: CondensateLine) => formatFigure(of(line), { style: 'plain' }).replace(/ L$/, ''),
    show: (line: CondensateLine) => (
      <Quantity figure={of(line)} of={`${today.dayWord} ${line.day}, ${head}`} />
    ),
  });
  return (
    <Table
      className="day-table"
      caption={reckon.series.table}
      rows={lines}
      keyOf={({ day }) => `${day}`}
      columns={[
        { head: condensateLabels.day, text: ({ day }) => `${day}` },
        { head: condensateLabels.people, right: true, text: saidPeople },
        figure(condensateLabels.expected, ({ expected }) => expected),
        figure(condensateLabels.collected, ({ collected }) => collected),
        figure(condensateLabels.shortfall, ({ shortfall }) => shortfall),
        { head: condensateLabels.verdict, text: ({ verdict }) => saidVerdict(verdict) },
      ]}
    />
  );
}
