// The medic's queue: what waits for a word and what waits on that, what is not back, parked, ends soon or is off.
import { roundCoverDays } from '../../../../ground/units/index.ts';
import type { QualitySheet, WaitingStore } from '../../../../papers/index.ts';
import { saidLacks } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { Quantity } from '../../parts/figure.tsx';
import { GradeBadge } from '../../parts/grade.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Table } from '../../parts/table.tsx';
import { bareL, screen } from '../../parts/touch-tree.tsx';
import { hrefOf, isPast, type Place } from '../../place.ts';
import { Row } from './row.tsx';

export function Queue({ sheet, place }: { readonly sheet: QualitySheet; readonly place: Place }) {
  const { quality } = words();
  const { waiting, results, parked, ending, off } = sheet;
  const isEmpty = [waiting, results, parked, ending, off].every(({ length }) => length === 0);
  return (
    <Row head={quality.queue} note={<Counts sheet={sheet} />}>
      {isEmpty && <p>{quality.queueEmpty}</p>}
      {waiting.length > 0 && <Waiting sheet={sheet} place={place} />}
      {results.length > 0 && <ResultsOut sheet={sheet} place={place} />}
      {parked.length > 0 && (
        <Listed head={quality.parked}>
          {parked.map(({ hold, parked: at }) => (
            <li key={hold}>
              <a className="link" href={hrefOf({ ...place, item: hold })}>
                {quality.holdTitle(hold)}
              </a>{' '}
              {at !== null && quality.parkedWith(at.owner, at.until, at.over)}
            </li>
          ))}
        </Listed>
      )}
      {ending.length > 0 && (
        <Listed head={quality.ending}>
          {ending.map(({ store, kind, by, until, days }) => (
            <li key={`${store} ${kind}`}>
              <b>{store}</b>: {quality.endingOf[kind](by)}, {quality.endsIn(until, days)}
            </li>
          ))}
        </Listed>
      )}
      {off.length > 0 && (
        <Listed head={quality.off}>
          {off.map(({ set, row, parameter }) => (
            <li key={`${set} ${row}`}>
              {parameter}: {row} ({set})
            </li>
          ))}
          <li className="xs soft">{quality.offNote}</li>
        </Listed>
      )}
    </Row>
  );
}

function Counts({ sheet }: { readonly sheet: QualitySheet }) {
  const { counts } = words().quality;
  const overdue = sheet.due.filter(({ overdueDays }) => overdueDays > 0).length;
  return (
    <ul className="plain tight">
      <li>{counts.due(sheet.due.length)}</li>
      {overdue > 0 && (
        <li>
          <b>{counts.overdue(overdue)}</b>
        </li>
      )}
      {sheet.results.length > 0 && <li>{counts.results(sheet.results.length)}</li>}
      {sheet.waiting.length > 0 && <li>{counts.waiting(sheet.waiting.length)}</li>}
    </ul>
  );
}

function Listed({ head, children }: { readonly head: string; readonly children: React.ReactNode }) {
  return (
    <div className="group">
      <h3>{head}</h3>
      <ul className="plain">{children}</ul>
    </div>
  );
}

function Waiting({ sheet, place }: { readonly sheet: QualitySheet; readonly place: Place }) {
  const { quality } = words();
  return (
    <div className="group">
      <h3>{quality.waits}</h3>
      {sheet.waits.map(({ grade, volume, days }) => (
        <p key={grade}>
          <b>
            <Phrased
              text={quality.waitsOn(
                screen(volume),
                days === null ? null : quality.days(roundCoverDays(days)),
              )}
            />
          </b>{' '}
          <span className="soft">({grade})</span>
        </p>
      ))}
      <Table
        caption={quality.waits}
        hideCaption
        rows={sheet.waiting}
        keyOf={({ store }) => store}
        columns={[
          {
            head: quality.store,
            text: ({ store }) => store,
            show: ({ store, grade }) => (
              <a
                className="store-name"
                href={hrefOf({ page: 'stores', item: store, at: place.at, asOf: place.asOf })}
              >
                <GradeBadge grade={grade} />
                <b>{store}</b>
              </a>
            ),
          },
          {
            head: quality.mark,
            text: ({ why }) => quality.why[why],
            show: ({ why }) => <span className="mark">{quality.why[why]}</span>,
          },
          {
            head: quality.volume,
            right: true,
            text: ({ volume }) => bareL(volume),
            show: ({ store, volume }) => <Quantity figure={volume} of={store} />,
          },
          { head: quality.lacks, text: lacksOf },
          ...(isPast(place)
            ? []
            : [
                {
                  head: quality.release,
                  pressed: true,
                  text: () => '',
                  show: (line: WaitingStore) => <Act line={line} />,
                },
              ]),
        ]}
      />
    </div>
  );
}

function lacksOf({ lacks }: WaitingStore): string {
  return lacks.length === 0 ? words().quality.ready : saidLacks(lacks);
}

/** Where results prove it the medic releases here; where they do not, a sample is what helps. */
function Act({ line }: { readonly line: WaitingStore }) {
  const { quality } = words();
  const { store, hold } = line;
  if (line.lacks.length > 0) {
    return (
      <button
        type="button"
        className="b small"
        aria-label={`${quality.ways.sample}: ${store}`}
        onClick={() => openSheet({ kind: 'sample', of: store, drawn: true })}
      >
        {quality.ways.sample}
      </button>
    );
  }
  return (
    <button
      type="button"
      className="b small strong-b"
      aria-label={quality.releaseOf(store)}
      onClick={() =>
        openSheet({ kind: 'hold-act', act: 'release', stores: [store], ...(hold !== null && { hold }) })
      }
    >
      {quality.release}
    </button>
  );
}

function ResultsOut({ sheet, place }: { readonly sheet: QualitySheet; readonly place: Place }) {
  const { quality } = words();
  return (
    <Listed head={quality.resultsOut}>
      {sheet.results.map(({ sample, place: at, taken, open, state }) => (
        <li key={sample} className="line-with-act">
          <p>
            <a className="link" href={hrefOf({ ...place, item: sample })}>
              {sample}
            </a>{' '}
            {at}, {quality.drawn.toLowerCase()} {taken}
            {state === 'late' && <b> {quality.counts.overdue(1).replace(/^\d+\s/, '')}</b>}
            {open.length > 0 && <span className="soft">: {open.join(', ')}</span>}
          </p>
          {!isPast(place) && (
            <button
              type="button"
              className="b small no-print"
              aria-label={quality.enterResultOf(sample)}
              onClick={() => openSheet({ kind: 'sample', of: sample })}
            >
              {quality.enterResult}
            </button>
          )}
        </li>
      ))}
    </Listed>
  );
}
