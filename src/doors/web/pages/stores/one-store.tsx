// One store: the answer to "may I use this water?" in words, what is in it, what it is, and its life in the book.
import { type ReactNode, useEffect } from 'react';
import type { StoreSheet, StoresSheet } from '../../../../papers/index.ts';
import { biocideFacts, lifeFacts, saidKnown, saidValue, worthText } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { FamilyTable, FamilyTree } from '../../parts/family-tree.tsx';
import { Quantity } from '../../parts/figure.tsx';
import { FindingLine } from '../../parts/finding-line.tsx';
import { GaugingPlot, GaugingTable } from '../../parts/gauging-plot.tsx';
import { GradeBadge } from '../../parts/grade.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Remedy } from '../../parts/remedy.tsx';
import { Silhouette } from '../../parts/silhouette.tsx';
import { FailedView, Working } from '../../parts/states.tsx';
import { Stave } from '../../parts/stave.tsx';
import { Mark, staveLabel, staveOf } from '../../parts/store-glyph.tsx';
import { Table, Twin } from '../../parts/table.tsx';
import { hrefOf, isPast, type Place, sheetPath } from '../../place.ts';
import { dayInSight } from '../day-steps.ts';

export function OneStore({ place, id }: { readonly place: Place; readonly id: string }) {
  const sheet = useSheet<StoreSheet>(sheetPath(`stores/${encodeURIComponent(id)}`, place));
  const { data } = sheet;
  useEffect(() => {
    if (data === undefined) return;
    document.title = words().frame.title(data.store.id, data.head.outpost);
    dayInSight.set(data.head.day);
  }, [data]);
  if (data === undefined) {
    if (sheet.failed === null) return <Working />;
    return (
      <>
        <FailedView name={id} sheet={sheet} />
        <a className="b" href={hrefOf({ ...place, item: null })}>
          {words().stores.list}
        </a>
      </>
    );
  }
  return (
    <div data-ready="store">
      <Title sheet={data} place={place} />
      <Answer sheet={data} place={place} />
      {data.findings.length > 0 && (
        <Row head={words().stores.needs}>
          <ul>
            {data.findings.map((finding) => (
              <FindingLine
                key={`${finding.code} ${finding.text}`}
                need={{ finding, alike: 1 }}
                store={data.store.id}
              />
            ))}
          </ul>
        </Row>
      )}
      {data.quality.words.length > 0 && (
        <Row head={words().quality.fitness} offPaper>
          <Fitness sheet={data} place={place} />
        </Row>
      )}
      <Row head={words().stores.family}>
        <Family sheet={data} />
      </Row>
      <Row head={words().stores.plot}>
        {data.gauging.estimates.length === 0 ? (
          <p>{words().stores.noReadings}</p>
        ) : (
          <Twin picture={<GaugingPlot sheet={data} />} table={<GaugingTable sheet={data} />} />
        )}
      </Row>
      <Row head={words().stores.facts}>
        <Facts sheet={data} />
      </Row>
      <Told
        head={words().quality.biocide(data.biocide?.biocide ?? '')}
        lines={biocideFacts(data, ON_SCREEN)}
      />
      <Told head={words().quality.life} lines={lifeFacts(data)} />
      <Row head={words().stores.history}>
        <History sheet={data} />
      </Row>
    </div>
  );
}

function Row({
  head,
  children,
  offPaper = false,
}: {
  readonly head: string;
  readonly children: ReactNode;
  /** The sheet of a store has room for one page: the answer says it there already. */
  readonly offPaper?: boolean;
}) {
  return (
    <section className={offPaper ? 'row no-print' : 'row'}>
      <h2>{head}</h2>
      <div>{children}</div>
    </section>
  );
}

function Title({ sheet, place }: { readonly sheet: StoreSheet; readonly place: Place }) {
  const { store } = sheet;
  const { stores } = words();
  const all = useSheet<StoresSheet>(sheetPath('stores', place));
  const ids = all.data?.stores.map((each) => each.id) ?? [];
  const at = ids.indexOf(store.id);
  const [before, after] = [ids[at - 1], ids[at + 1]];
  const link = (id: string | undefined, name: string) =>
    id === undefined ? null : (
      <a className="b small" href={hrefOf({ ...place, item: id })} aria-label={`${name}: ${id}`}>
        {id}
      </a>
    );
  return (
    <div className="title">
      <h1>
        <GradeBadge grade={store.grade} /> {store.id}
      </h1>
      <p className="soft">
        {stores.kinds[store.kind] ?? store.kind} {stores.of(saidValue(store.capacityL, 'L'))}, {store.place}
        {store.port !== null && `, ${stores.port(store.port)}`}
      </p>
      <div className="flow end no-print">
        {link(before, stores.previous)}
        <a className="b small" href={hrefOf({ ...place, item: null })}>
          {stores.all(ids.length)}
        </a>
        {link(after, stores.following)}
      </div>
    </div>
  );
}

function Answer({ sheet, place }: { readonly sheet: StoreSheet; readonly place: Place }) {
  const { store, answer } = sheet;
  const { stores, glyph } = words();
  const [first = '', ...rest] = answer.split(/(?<=\.) /);
  return (
    <section className="row answer">
      <h2>{stores.answer}</h2>
      <div className="lead">
        <div className="stack">
          <p className="md">
            <Phrased text={first} strong />
          </p>
          {rest.length > 0 && (
            <p>
              <Phrased text={rest.join(' ')} />
            </p>
          )}
          <Mark store={store} />
          {!isPast(place) && <Acts store={store} />}
        </div>
        <div className="store large">
          <Silhouette kind={store.kind} grade={store.grade} hold={store.held} />
          <div>
            <Quantity figure={store.volume} of={store.id} className="big" />
            <Stave facts={staveOf(store)} label={staveLabel(store)} />
            <p className="xs soft ends">
              <span>0</span>
              <span>{saidValue(store.capacityL, 'L')}</span>
            </p>
            <p className="soft">{glyph.ago(saidKnown(store))}</p>
          </div>
        </div>
      </div>
    </section>
  );
}

/** On whose word its water may be used, what holds it, and the holds to look at. */
function Fitness({ sheet, place }: { readonly sheet: StoreSheet; readonly place: Place }) {
  const { quality } = words();
  const holds = [...new Set(sheet.quality.holds.map(({ hold }) => hold))];
  return (
    <>
      <ul className="plain">
        {sheet.quality.words.map((text) => (
          <li key={text}>
            <Phrased text={text} />
          </li>
        ))}
      </ul>
      {holds.length > 0 && (
        <div className="flow no-print">
          {holds.map((hold) => (
            <a key={hold} className="b small" href={hrefOf({ ...place, page: 'quality', item: hold })}>
              {quality.holdTitle(hold)}
            </a>
          ))}
        </div>
      )}
    </>
  );
}

/** What is done to a store without an amount. */
const ACTS = ['hookup', 'empty', 'full'] as const;

/** What can be entered of it from here. */
function Acts({ store }: { readonly store: StoreSheet['store'] }) {
  const { stores, quality } = words();
  // A tank stands where it is: it is gauged, not weighed.
  const reading = store.kind === 'tank' || store.kind === 'vehicleTank' ? 'gauge' : 'weigh';
  return (
    <div className="flow no-print">
      <button type="button" className="b" onClick={() => openSheet({ kind: reading, store: store.id })}>
        {stores[reading]}
      </button>
      <button type="button" className="b" onClick={() => openSheet({ kind: 'fill', store: store.id })}>
        {stores.fill}
      </button>
      {ACTS.map((act) => (
        <button
          key={act}
          type="button"
          className="b"
          onClick={() => openSheet({ kind: act, store: store.id })}
        >
          {stores.acts[act]}
        </button>
      ))}
      <button
        type="button"
        className="b"
        onClick={() => openSheet({ kind: 'sample', of: store.id, drawn: true })}
      >
        {quality.storeActs.sample}
      </button>
      <button
        type="button"
        className="b"
        onClick={() => openSheet({ kind: 'hold-act', act: 'add', stores: [store.id] })}
      >
        {quality.storeActs.add}
      </button>
      <button type="button" className="b small" onClick={() => openSheet({ kind: 'label', store: store.id })}>
        {stores.label}
      </button>
    </div>
  );
}

const ON_SCREEN = { style: 'screen', units: 'L', width: 80, colour: false } as const;

/** Lines of facts as the papers word them. */
function Told({ head, lines }: { readonly head: string; readonly lines: ReturnType<typeof lifeFacts> }) {
  if (lines.length === 0) return null;
  return (
    <Row head={head} offPaper>
      <dl className="facts">
        {lines.map(({ name, text }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text.includes('waterwright') ? <Remedy text={text} /> : <Phrased text={text} />}</dd>
          </div>
        ))}
      </dl>
    </Row>
  );
}

function Facts({ sheet }: { readonly sheet: StoreSheet }) {
  const { stores } = words();
  return (
    <dl className="facts">
      {sheet.facts.map(({ name, text }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <Phrased text={text} />
          </dd>
        </div>
      ))}
      {sheet.worth !== null && (
        <div>
          <dt>{stores.worth}</dt>
          <dd>
            <Phrased text={worthText(sheet.worth, ON_SCREEN)} />
          </dd>
        </div>
      )}
      {sheet.gradeHistory.length > 0 && (
        <div>
          <dt>{stores.grades}</dt>
          <dd>{sheet.gradeHistory.join(', ')}</dd>
        </div>
      )}
      {sheet.biocides.length > 0 && (
        <div>
          <dt>{stores.biocides}</dt>
          <dd>{sheet.biocides.join(', ')}</dd>
        </div>
      )}
    </dl>
  );
}

function Family({ sheet }: { readonly sheet: StoreSheet }) {
  const { stores } = words();
  if (sheet.family.length === 0) return <p>{stores.noFamily}</p>;
  return (
    <>
      <Twin picture={<FamilyTree parts={sheet.family} />} table={<FamilyTable parts={sheet.family} />} />
      <p className="xs soft">{stores.familyNote}</p>
    </>
  );
}

function History({ sheet }: { readonly sheet: StoreSheet }) {
  const { stores } = words();
  if (sheet.history.length === 0) return <p>{stores.noHistory}</p>;
  return (
    <>
      <Table
        caption={stores.history}
        hideCaption
        className="history-table"
        rows={[...sheet.history].reverse()}
        keyOf={({ id }) => id}
        columns={[
          {
            head: stores.when,
            text: ({ stamp }) => stamp,
            show: ({ stamp }) => <span className="nowrap">{stamp}</span>,
          },
          { head: stores.what, text: ({ text }) => text, show: (event) => <Event event={event} /> },
          {
            head: stores.entry,
            text: ({ ref }) => ref,
            show: ({ ref }) => <span className="nowrap">{ref}</span>,
          },
        ]}
      />
      {sheet.olderEvents > 0 && <p className="xs soft">{stores.older(sheet.olderEvents)}</p>}
    </>
  );
}

function Event({ event }: { readonly event: StoreSheet['history'][number] }) {
  const { daybook } = words();
  const text = <Phrased text={event.text} />;
  return (
    <>
      {event.undoneBy === null ? text : <s>{text}</s>}
      {event.undoneBy !== null && <span className="xs mark-word">{daybook.undoneBy(event.undoneBy)}</span>}
      {event.correctedBy !== null && (
        <span className="xs mark-word">{daybook.correctedBy(event.correctedBy)}</span>
      )}
      {event.now !== null && <p className="xs">{daybook.nowCounts(event.now)}</p>}
    </>
  );
}
