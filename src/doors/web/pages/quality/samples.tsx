// Samples: what was drawn, what came back, and how each stands.
import { useState } from 'react';
import type { SampleLine, SamplesSheet } from '../../../../papers/index.ts';
import { figureVerdicts, saidFigure, sampleStates } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { Phrased } from '../../parts/phrased.tsx';
import { Failed, Working } from '../../parts/states.tsx';
import { Table } from '../../parts/table.tsx';
import { hrefOf, isPast, type Place, sheetPath } from '../../place.ts';
import { Row } from './row.tsx';

/** The youngest come first; the others are on request. */
const MOST = 8;

export function Samples({ place }: { readonly place: Place }) {
  const { quality } = words();
  const [all, setAll] = useState(false);
  const sheet = useSheet<SamplesSheet>(sheetPath('samples', place));
  const { data } = sheet;
  if (data === undefined)
    return <Row head={quality.samples}>{sheet.failed === null ? <Working /> : <Failed sheet={sheet} />}</Row>;
  const youngest = [...data.samples].reverse();
  const shown = all ? youngest : youngest.slice(0, MOST);
  return (
    <Row head={quality.samples}>
      {shown.length === 0 ? <p>{quality.noSamples}</p> : <SampleTable samples={shown} place={place} />}
      {youngest.length > MOST && (
        <button type="button" className="b small no-print" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? quality.showFewer : quality.showAllSamples(youngest.length)}
        </button>
      )}
      {data.older > 0 && <p className="xs soft">{quality.olderSamples(data.older)}</p>}
    </Row>
  );
}

function SampleTable({ samples, place }: { readonly samples: readonly SampleLine[]; readonly place: Place }) {
  const { quality } = words();
  return (
    <Table
      caption={quality.samples}
      hideCaption
      rows={samples}
      keyOf={({ sample }) => sample}
      columns={[
        {
          head: quality.sampleField,
          text: ({ sample }) => sample,
          show: ({ sample }) => (
            <a className="link" href={hrefOf({ ...place, item: sample })}>
              {sample}
            </a>
          ),
        },
        { head: quality.place, text: ({ place: at }) => at },
        {
          head: quality.drawn,
          text: ({ taken }) => taken,
          show: ({ taken }) => <span className="nowrap">{taken}</span>,
        },
        {
          head: quality.state,
          text: ({ state }) => sampleStates[state],
          show: ({ state }) => <b>{sampleStates[state]}</b>,
        },
        { head: quality.found, text: foundOf, show: (line) => <Phrased text={foundOf(line)} /> },
        ...(isPast(place)
          ? []
          : [
              {
                head: quality.enterResult,
                pressed: true,
                text: () => '',
                show: (line: SampleLine) => <Act line={line} />,
              },
            ]),
      ]}
    />
  );
}

export function foundOf({ figures, open }: SampleLine): string {
  const found = figures.map((figure) => {
    const isTold = figure.verdict === 'within' || figure.verdict === 'no limit';
    return isTold ? saidFigure(figure) : `${saidFigure(figure)} ${figureVerdicts[figure.verdict]}`;
  });
  return [...found, ...(open.length > 0 ? [words().quality.waitsFor(open.join(', '))] : [])].join('; ');
}

function Act({ line }: { readonly line: SampleLine }) {
  const { quality } = words();
  if (line.state !== 'waits' && line.state !== 'late' && line.open.length === 0) return null;
  return (
    <button
      type="button"
      className="b small"
      aria-label={quality.enterResultOf(line.sample)}
      onClick={() => openSheet({ kind: 'sample', of: line.sample })}
    >
      {quality.enterResult}
    </button>
  );
}
