// The limits in force, set by set: each row with its figure or without one, its cause and its first act.
import type { LimitLine, LimitSides, LimitsSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { FindingLine } from '../../parts/finding-line.tsx';
import { Failed, Working } from '../../parts/states.tsx';
import { Table } from '../../parts/table.tsx';
import { isPast, type Place, sheetPath } from '../../place.ts';
import { Row } from './row.tsx';

export function Limits({ place }: { readonly place: Place }) {
  const { quality } = words();
  const sheet = useSheet<LimitsSheet>(sheetPath('limits', place));
  const { data } = sheet;
  if (data === undefined)
    return <Row head={quality.limits}>{sheet.failed === null ? <Working /> : <Failed sheet={sheet} />}</Row>;
  return (
    <Row head={quality.limits} note={chosenBy(data)}>
      {data.findings.length > 0 && (
        <ul>
          {data.findings.map((finding) => (
            <FindingLine key={finding.text} need={{ finding, alike: 1 }} />
          ))}
        </ul>
      )}
      {data.sets.map((set) => (
        <div key={set.id} className="group">
          <h3>
            {set.name} <span className="soft">{set.what}</span>
          </h3>
          <LimitTable set={set} place={place} />
        </div>
      ))}
      {!isPast(place) && (
        <button type="button" className="b no-print" onClick={() => openSheet({ kind: 'choose-limits' })}>
          {quality.choose}
        </button>
      )}
    </Row>
  );
}

function chosenBy({ chosen }: LimitsSheet): string {
  const { quality } = words();
  return chosen === null ? quality.notChosen : quality.chosenBy(chosen.by, chosen.at, chosen.reason);
}

function LimitTable({ set, place }: { readonly set: LimitsSheet['sets'][number]; readonly place: Place }) {
  const { quality } = words();
  return (
    <Table
      caption={set.name}
      hideCaption
      rows={set.rows}
      keyOf={({ id }) => id}
      columns={[
        { head: quality.parameter, text: ({ parameter }) => parameter },
        {
          head: quality.limit,
          text: (row) => saidSides(row.limit, row.unit),
          show: (row) => <Limit row={row} set={set.id} past={isPast(place)} />,
        },
        {
          head: quality.forUse,
          text: ({ neededOf }) => (neededOf === 'product' ? quality.product : quality.everyStore),
        },
        { head: quality.onIt, text: ({ cause, firstAct }) => quality.causeAndAct(cause, firstAct) },
      ]}
    />
  );
}

function Limit({
  row,
  set,
  past,
}: {
  readonly row: LimitLine;
  readonly set: string;
  readonly past: boolean;
}) {
  const { quality } = words();
  if (row.limit !== null) return <span className="qty">{saidSides(row.limit, row.unit)}</span>;
  return (
    <>
      <b>{quality.noFigure}</b>{' '}
      {!past && (
        <button
          type="button"
          className="b small no-print"
          aria-label={quality.typeItOf(row.id)}
          onClick={() => openSheet({ kind: 'type-limit', set, row: row.id })}
        >
          {quality.typeIt}
        </button>
      )}
    </>
  );
}

/** `0.05 to 0.4 mg/L`, `at most 50 CFU/mL`. */
export function saidSides(limit: LimitSides | null, unit: string): string {
  const { quality } = words();
  if (limit === null) return quality.noFigure;
  const { atLeast, atMost } = limit;
  const of = unit === '' ? '' : `\u00A0${unit}`;
  return [
    ...(atLeast === undefined ? [] : [`${quality.atLeast.toLowerCase()} ${atLeast}${of}`]),
    ...(atMost === undefined ? [] : [`${quality.atMost.toLowerCase()} ${atMost}${of}`]),
  ].join(', ');
}
