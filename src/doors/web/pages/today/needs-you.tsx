// What needs somebody: the gravest first, those alike together; a button that leads to the store or does the first act.
import { useState } from 'react';
import { firstThought, needsOf, type StoreLine, type WordedFinding } from '../../../../papers/index.ts';
import { enter } from '../../entering.ts';
import { words } from '../../language.ts';
import { FindingLine, Sign } from '../../parts/finding-line.tsx';
import { hrefOf, isPast, type Place } from '../../place.ts';

/** More than these are not read on a first view; they open on request. */
const MOST = 5;

export function NeedsYou({
  findings,
  stores,
  place,
}: {
  readonly findings: readonly WordedFinding[];
  readonly stores: readonly StoreLine[];
  readonly place: Place;
}) {
  const { today } = words();
  const [all, setAll] = useState(false);
  const needs = needsOf(findings);
  const shown = all ? needs : needs.slice(0, MOST);
  return (
    <section className="row">
      <div className="margin">
        <h2 id={NEEDS} tabIndex={-1}>
          {today.needs}
        </h2>
        {needs.length > 0 && <p className="xs">{today.needsCount(needs.length)}</p>}
      </div>
      <div>
        {needs.length === 0 && <p>{today.nothing}</p>}
        <ul>
          {shown.map((need) => (
            <FindingLine
              key={`${need.finding.code} ${need.finding.text}`}
              need={need}
              forbids={forbidden(need.finding, stores)}
              store={storeOf(need.finding, stores)}
              act={<FirstAct finding={need.finding} store={storeOf(need.finding, stores)} place={place} />}
            />
          ))}
        </ul>
        {needs.length > MOST && (
          <button type="button" className="b small no-print" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? today.fewer : today.more(needs.length - MOST)}
          </button>
        )}
        {needs.length > shown.length && (
          <p className="xs print-only">{today.moreOnScreen(needs.length - shown.length)}</p>
        )}
      </div>
    </section>
  );
}

const NEEDS = 'needs-you';

/** Said on the first screen: how many lines need somebody, and the way to them. */
export function NeedsStrip({ findings }: { readonly findings: readonly WordedFinding[] }) {
  const { today } = words();
  const needs = needsOf(findings);
  const [gravest] = needs;
  if (gravest === undefined) return null;
  const counted = (severity: WordedFinding['severity']) =>
    needs.filter(({ finding }) => finding.severity === severity).length;
  const toNeeds = () => {
    const head = document.getElementById(NEEDS);
    head?.scrollIntoView({ block: 'start' });
    head?.focus({ preventScroll: true });
  };
  return (
    <div className="needs-strip no-print">
      <Sign severity={gravest.finding.severity} />
      <button type="button" className="link" onClick={toNeeds}>
        {today.needsNow(counted('act-now'), counted('act-today'), counted('know'))}
      </button>
    </div>
  );
}

/** The store that a finding is about: the one that it says, else the only one that its first sentence names. */
function storeOf({ where, text }: WordedFinding, stores: readonly StoreLine[]): string | undefined {
  if (where.store !== undefined) return where.store;
  const said = new Set(firstThought(text).split(/[^\p{L}\d-]+/u));
  const named = stores.filter(({ id }) => said.has(id));
  return named.length === 1 ? named[0]?.id : undefined;
}

/** Findings that tell of a hold or of a condition: their line says what must not be done as well. */
const OF_A_HOLD: ReadonlySet<string> = new Set(['hold-open', 'conditional-reserve']);

function forbidden({ code }: WordedFinding, stores: readonly StoreLine[]): string | null {
  if (!OF_A_HOLD.has(code)) return null;
  const { forbids } = words().stores;
  if (code === 'hold-open') return stores.some(({ held }) => held) ? forbids.held : null;
  return stores.some(({ conditional }) => conditional) ? forbids.conditional : null;
}

/** What the page can do of the first act; the rest stands in the remedy. */
function FirstAct({
  finding,
  store,
  place,
}: {
  readonly finding: WordedFinding;
  readonly store: string | undefined;
  readonly place: Place;
}) {
  const pair = pairIn(finding);
  const { at, asOf } = place;
  if (pair !== null && !isPast(place)) return <Decide pair={pair} />;
  if (finding.code === 'unit-doubt' || finding.code === 'lines-waiting') {
    return (
      <a className="b small" href={hrefOf({ page: 'inbox' })}>
        {words().finding.inbox}
      </a>
    );
  }
  if (store === undefined) return null;
  return (
    <a className="b small" href={hrefOf({ page: 'stores', item: store, at, asOf })}>
      {words().finding.open(store)}
    </a>
  );
}

function Decide({ pair }: { readonly pair: readonly [string, string] }) {
  const { finding } = words();
  const decide = (decision: 'merge' | 'both are true') =>
    void enter({ what: 'decide', first: pair[0], second: pair[1], decision });
  return (
    <>
      <button type="button" className="b small" onClick={() => decide('merge')}>
        {finding.decideMerge}
      </button>
      <button type="button" className="b small" onClick={() => decide('both are true')}>
        {finding.decideBoth}
      </button>
    </>
  );
}

/** The two entries of a proposed pair, as its remedy names them. */
function pairIn({ code, remedy }: WordedFinding): readonly [string, string] | null {
  if (code !== 'duplicate-proposed') return null;
  const [, first, second] = /log decide (\S+) (\S+)/.exec(remedy) ?? [];
  return first === undefined || second === undefined ? null : [first, second];
}
