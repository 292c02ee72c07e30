// One hold: what its water touched, where it came from, what waits on it, and every way out as a sheet.
import { roundCoverDays } from '../../../../ground/units/index.ts';
import type { HeldStore, HoldSheet } from '../../../../papers/index.ts';
import { saidLacks } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { type HoldActName, openSheet } from '../../open.ts';
import { Quantity } from '../../parts/figure.tsx';
import { FindingLine } from '../../parts/finding-line.tsx';
import { GradeBadge } from '../../parts/grade.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Table } from '../../parts/table.tsx';
import { bareL, screen, TouchTree, TraceWords } from '../../parts/touch-tree.tsx';
import { hrefOf, isPast, type Place } from '../../place.ts';
import { Row } from './row.tsx';

export function OneHold({ sheet, place }: { readonly sheet: HoldSheet; readonly place: Place }) {
  const { quality } = words();
  const { hold, trace } = sheet;
  return (
    <div data-ready="hold">
      <div className="title">
        <h1>{quality.holdTitle(hold.hold)}</h1>
        <p className="soft">{quality.since(hold.since, hold.reason)}</p>
        <a className="b small end no-print" href={hrefOf({ ...place, item: null })}>
          {quality.allOf}
        </a>
      </div>
      <Row head={quality.onIt2} className="first" note={<Waits sheet={sheet} />}>
        {hold.stores.length === 0 ? <p>{quality.holdEnded}</p> : <Stores sheet={sheet} place={place} />}
        {hold.parked !== null && (
          <p>
            {quality.parked} {quality.parkedWith(hold.parked.owner, hold.parked.until, hold.parked.over)}.
          </p>
        )}
        {hold.leftFree.length > 0 && <p>{quality.leftFree(hold.leftFree.join(', '))}</p>}
      </Row>
      {sheet.findings.length > 0 && (
        <Row head={words().stores.needs}>
          <ul>
            {sheet.findings.map((finding) => (
              <FindingLine key={`${finding.code} ${finding.text}`} need={{ finding, alike: 1 }} />
            ))}
          </ul>
        </Row>
      )}
      {hold.open && (
        <Row head={quality.waysOut}>
          <Ways sheet={sheet} place={place} />
        </Row>
      )}
      <Row head={quality.touched}>
        {trace === null ? (
          <p>{quality.noTrace}</p>
        ) : (
          <>
            {sheet.sampleIsGuess && trace.sample !== null && <p>{quality.guess(trace.sample)}</p>}
            <TouchTree trace={trace} />
            <TraceWords trace={trace} />
            {!isPast(place) && trace.drunk !== null && (
              <button
                type="button"
                className="b no-print"
                onClick={() => openSheet({ kind: 'drank', hold: hold.hold })}
              >
                {quality.whoButton}
              </button>
            )}
          </>
        )}
      </Row>
      {sheet.origins.length > 0 && (
        <Row head={quality.origins}>
          <Origins sheet={sheet} />
        </Row>
      )}
    </div>
  );
}

function Waits({ sheet }: { readonly sheet: HoldSheet }) {
  const { quality } = words();
  return (
    <>
      {sheet.waits.map(({ grade, volume, days }) => (
        <p key={grade}>
          <Phrased
            text={quality.waitsOn(screen(volume), days === null ? null : quality.days(roundCoverDays(days)))}
          />
        </p>
      ))}
    </>
  );
}

function Stores({ sheet, place }: { readonly sheet: HoldSheet; readonly place: Place }) {
  const { quality } = words();
  return (
    <Table
      caption={quality.onIt2}
      hideCaption
      rows={sheet.hold.stores}
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
          text: ({ as }) => quality.why[as],
          show: ({ as }) => <span className="mark">{quality.why[as]}</span>,
        },
        {
          head: quality.volume,
          right: true,
          text: ({ volume }) => bareL(volume),
          show: ({ store, volume }) => <Quantity figure={volume} of={store} />,
        },
        { head: quality.lacks, text: lacksOf },
      ]}
    />
  );
}

function lacksOf({ lacks, until }: HeldStore): string {
  const { quality } = words();
  const said = lacks.length === 0 ? quality.ready : saidLacks(lacks);
  return until === null ? said : `${said}; ${quality.until.toLowerCase()} ${until}`;
}

/** What a way of the sheet opens here; what has no line there is offered as well. */
const MORE: readonly HoldActName[] = ['treat'];

function Ways({ sheet, place }: { readonly sheet: HoldSheet; readonly place: Place }) {
  const { quality } = words();
  const { hold, ways, trace } = sheet;
  const lacking = hold.stores.filter(({ lacks, as }) => lacks.length > 0 && as !== 'waived');
  const [first] = lacking;
  const open = (act: string) => {
    if (act === 'sample')
      openSheet({ kind: 'sample', drawn: true, ...(first !== undefined && { of: first.store }) });
    else openSheet({ kind: 'hold-act', act: act as HoldActName, hold: hold.hold });
  };
  // A release is asked for although nothing proves it: the refusal says why, and what is told as a fact is kept.
  const hasRelease = ways.some(({ act }) => act === 'release');
  return (
    <ul className="ways">
      {ways.map(({ act, text }) => (
        <Way key={act} act={act} text={text} onOpen={isPast(place) ? null : () => open(act)} />
      ))}
      {!hasRelease && (
        <Way
          act="release"
          text={quality.actNote.release}
          onOpen={isPast(place) ? null : () => open('release')}
        />
      )}
      {MORE.map((act) => (
        <Way
          key={act}
          act={act}
          text={quality.wayNotes.treat}
          onOpen={isPast(place) ? null : () => open(act)}
        />
      ))}
      {trace?.sample != null && (
        <Way
          act="aside"
          text={quality.wayNotes.aside}
          onOpen={
            isPast(place)
              ? null
              : () => openSheet({ kind: 'hold-act', act: 'aside', sample: trace.sample ?? '' })
          }
        />
      )}
    </ul>
  );
}

function Way(told: { readonly act: string; readonly text: string; readonly onOpen: (() => void) | null }) {
  const { quality } = words();
  const name = quality.ways[told.act as keyof typeof quality.ways];
  return (
    <li>
      {told.onOpen === null ? (
        <b className="no-print">{name}</b>
      ) : (
        <button type="button" className="b no-print" onClick={told.onOpen}>
          {name}
        </button>
      )}
      <p>
        <b className="print-only">{name}: </b>
        {told.text}
      </p>
    </li>
  );
}

function Origins({ sheet }: { readonly sheet: HoldSheet }) {
  const { quality } = words();
  const rows = sheet.origins.flatMap(({ store, parts }) => parts.map((part) => ({ store, ...part })));
  return (
    <Table
      caption={quality.origins}
      hideCaption
      rows={rows}
      keyOf={({ store, kind, name, since }) => `${store} ${kind} ${name} ${since}`}
      columns={[
        { head: quality.store, text: ({ store }) => store },
        {
          head: quality.origin,
          text: ({ name, visit }) => (visit === null ? name : `${name}, ${visit}`),
        },
        {
          head: quality.volume,
          right: true,
          text: ({ volume }) => bareL(volume),
          show: ({ volume, store, name }) => <Quantity figure={volume} of={`${store}, ${name}`} />,
        },
        { head: quality.share, right: true, text: ({ share }) => `${Math.round(share * 1000) / 10}\u00A0%` },
        { head: words().stores.came, text: ({ since }) => since },
      ]}
    />
  );
}
