// Purifier beds: life used as a stave, the dates of the limit, advice, and what is read behind them.
import { useState } from 'react';
import type { BedLine, BedSheet, BedsSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { BedPlot, BedTable } from '../../parts/bed-plot.tsx';
import { Quantity } from '../../parts/figure.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Failed, Working } from '../../parts/states.tsx';
import { Stave } from '../../parts/stave.tsx';
import { Twin } from '../../parts/table.tsx';
import { type Place, sheetPath } from '../../place.ts';
import { Row } from './row.tsx';

export function Beds({ place }: { readonly place: Place }) {
  const { quality } = words();
  const sheet = useSheet<BedsSheet>(sheetPath('beds', place));
  const { data, failed } = sheet;
  const isNone = failed?.findings.some(({ code }) => code === 'no-beds') === true;
  return (
    <Row
      head={quality.beds}
      note={data?.spares == null ? undefined : quality.spares(data.spares.count, data.spares.part)}
    >
      {isNone && <p>{quality.noBeds}</p>}
      {data === undefined && !isNone && (failed === null ? <Working /> : <Failed sheet={sheet} />)}
      <ul className="plain beds">
        {(data?.beds ?? []).map((bed) => (
          <Bed key={bed.id} bed={bed} place={place} />
        ))}
      </ul>
    </Row>
  );
}

function Bed({ bed, place }: { readonly bed: BedLine; readonly place: Place }) {
  const { quality } = words();
  const [open, setOpen] = useState(bed.dates !== null);
  const { value, low, high } = bed.usedPercent;
  const [used, surely, may] = [Math.round(value), Math.round(low), Math.round(high)];
  return (
    <li>
      <div className="bed-head">
        <b>{bed.id}</b>
        <span>{quality.bedUsed(used, surely, may)}</span>
        <span className="soft">
          {quality.bedThrough} <Quantity figure={bed.used} of={`${bed.id}, ${quality.bedThrough}`} />,{' '}
          {quality.bedLife} <Quantity figure={bed.life} of={`${bed.id}, ${quality.bedLife}`} />
        </span>
      </div>
      <Stave
        facts={{ capacity: 100, grade: 'life', value: Math.min(value, 104), low: Math.min(low, 100), high }}
        label={quality.bedLabel(bed.id, used, surely, may)}
      />
      {bed.dates !== null && <p>{datesOf(bed)}</p>}
      <button type="button" className="b small no-print" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? quality.bedFewer : quality.bedMore(bed.id)}
      </button>
      {open && <More bed={bed.id} place={place} />}
    </li>
  );
}

function datesOf({ dates, by }: BedLine): string {
  const { quality } = words();
  const [low, middle, high] = [dates?.q10, dates?.q50, dates?.q90].map((at) =>
    at == null ? null : Math.floor(at.day),
  );
  if (low == null || middle == null || high == null) return quality.bedNoDates;
  return quality.bedDates(by ?? '', middle, low, high);
}

function More({ bed, place }: { readonly bed: string; readonly place: Place }) {
  const { quality } = words();
  const sheet = useSheet<BedSheet>(sheetPath(`beds/${encodeURIComponent(bed)}`, place));
  const { data } = sheet;
  if (data === undefined) return sheet.failed === null ? <Working /> : <Failed sheet={sheet} />;
  return (
    <div className="bed-more">
      {data.advice?.texts.map((text, k) => (
        <p key={text}>
          <Phrased text={text} strong={k === 0} />
        </p>
      ))}
      {data.plot !== null && <Twin picture={<BedPlot sheet={data} />} table={<BedTable sheet={data} />} />}
      {data.causes.length > 0 && (
        <div className="group">
          <h3>{quality.bedCauses}</h3>
          <ol className="causes">
            {data.causes.map(({ cause, evidence }) => (
              <li key={cause}>
                <b>{cause}</b>
                <ul className="plain tight">
                  {evidence.map(({ side, text }) => (
                    <li key={text}>
                      <span className="soft">{quality.evidence[side]}: </span>
                      <Phrased text={text} />
                    </li>
                  ))}
                </ul>
              </li>
            ))}
          </ol>
        </div>
      )}
    </div>
  );
}
