// One sample: its figures against the limits, what a failing one touched, and what can be done with it.
import type { FigureLine, SampleSheet } from '../../../../papers/index.ts';
import { figureVerdicts, saidFigure, saidLimits, sampleStates } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { Phrased } from '../../parts/phrased.tsx';
import { Table } from '../../parts/table.tsx';
import { EffectTable, TouchTree, TraceWords } from '../../parts/touch-tree.tsx';
import { hrefOf, isPast, type Place } from '../../place.ts';
import { Row } from './row.tsx';

export function OneSample({ sheet, place }: { readonly sheet: SampleSheet; readonly place: Place }) {
  const { quality } = words();
  const { sample, tree } = sheet;
  return (
    <div data-ready="sample">
      <div className="title">
        <h1>{quality.sampleTitle(sample.sample)}</h1>
        <p className="soft">
          {sample.place}, {quality.drawn.toLowerCase()} {sample.taken}
        </p>
        <a className="b small end no-print" href={hrefOf({ ...place, item: null })}>
          {quality.allOf}
        </a>
      </div>
      <Row head={quality.figures} className="first" note={<b>{sampleStates[sample.state]}</b>}>
        {sample.figures.length === 0 ? (
          <p>{quality.nothingFound}</p>
        ) : (
          <FigureTable figures={sample.figures} />
        )}
        {sample.open.length > 0 && <p>{quality.waitsFor(sample.open.join(', '))}</p>}
        {!isPast(place) && (
          <div className="flow no-print">
            <button
              type="button"
              className="b"
              onClick={() => openSheet({ kind: 'sample', of: sample.sample })}
            >
              {quality.enterResult}
            </button>
            {sample.figures.length > 0 && (
              <button
                type="button"
                className="b"
                onClick={() => openSheet({ kind: 'hold-act', act: 'aside', sample: sample.sample })}
              >
                {quality.ways.aside}
              </button>
            )}
            {tree !== null && (
              <button
                type="button"
                className="b"
                onClick={() => openSheet({ kind: 'hold-act', act: 'add', sample: sample.sample })}
              >
                {quality.ways.add}
              </button>
            )}
          </div>
        )}
      </Row>
      {tree !== null && (
        <Row head={quality.touched}>
          <TouchTree trace={tree.trace} />
          <TraceWords trace={tree.trace} />
          <EffectTable tree={tree} />
        </Row>
      )}
      <Row head={quality.sampleFacts}>
        <Facts sheet={sheet} />
      </Row>
    </div>
  );
}

export function FigureTable({ figures }: { readonly figures: readonly FigureLine[] }) {
  const { quality } = words();
  return (
    <Table
      caption={quality.figures}
      hideCaption
      rows={figures}
      keyOf={({ parameter, ref }) => `${parameter} ${ref ?? ''}`}
      columns={[
        { head: quality.parameter, text: ({ parameter }) => parameter },
        {
          head: quality.found,
          right: true,
          text: foundOf,
          show: (figure) => <span className="qty">{foundOf(figure)}</span>,
        },
        { head: quality.limit, text: limitOf, show: (figure) => <Phrased text={limitOf(figure)} /> },
        {
          head: quality.state,
          text: verdictOf,
          show: (figure) => (figure.verdict === 'within' ? verdictOf(figure) : <b>{verdictOf(figure)}</b>),
        },
      ]}
    />
  );
}

function foundOf(figure: FigureLine): string {
  return saidFigure(figure).slice(figure.parameter.length + 1);
}

function limitOf(figure: FigureLine): string {
  return saidLimits(figure) || words().quality.noLimitFor;
}

function verdictOf({ verdict, setAside }: FigureLine): string {
  return setAside ? `${figureVerdicts[verdict]}, ${words().quality.setAside}` : figureVerdicts[verdict];
}

function Facts({ sheet }: { readonly sheet: SampleSheet }) {
  const { quality } = words();
  const { sample } = sheet;
  const rows: readonly (readonly [string, string])[] = [
    [quality.speaksOf, sample.speaksOf.join(', ')],
    [quality.drawnFrom, sample.drawnFrom ?? ''],
    [quality.tests, sample.tests.join(', ')],
    [quality.bottles, sample.bottles.join(', ')],
    [quality.batch, sample.batch ?? ''],
    [quality.duplicateOf, sample.duplicateOf ?? ''],
    [quality.methodOf, sheet.method.join(', ')],
    [quality.entries, [...(sample.ref === null ? [] : [sample.ref]), ...sample.resultRefs].join(', ')],
  ];
  return (
    <dl className="facts">
      {rows
        .filter(([, text]) => text !== '')
        .map(([name, text]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <Phrased text={text} />
            </dd>
          </div>
        ))}
    </dl>
  );
}
