// Every drawn thing on one sheet: for checks in grey, for the colour-blind, dim and on paper.
import type { ReactNode } from 'react';
import type { SheetFigure } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { NamedQuantity, Quantity } from '../parts/figure.tsx';
import { LevelSign } from '../parts/finding-line.tsx';
import { GradeBadge } from '../parts/grade.tsx';
import { type HoldNode, HoldTree } from '../parts/hold-tree.tsx';
import { Silhouette } from '../parts/silhouette.tsx';
import { Stave, type StaveFacts } from '../parts/stave.tsx';
import { Mark } from '../parts/store-glyph.tsx';

const litres = (value: number, u95: number | null): SheetFigure => ({
  value,
  u95,
  unit: 'L',
  because: { entries: [], method: 'estimator', inputs: [] },
});

const at = (value: number, u95: number): Pick<StaveFacts, 'value' | 'low' | 'high' | 'capacity'> => ({
  value,
  low: Math.max(0, value - u95),
  high: value + u95,
  capacity: 22,
});

const STAVES: readonly (readonly [keyof ReturnType<typeof words>['parts']['states'], StaveFacts])[] = [
  ['nothing', { ...at(0, 0.4), grade: 'drinking' }],
  ['one', { ...at(0.22, 0.2), grade: 'drinking' }],
  ['half', { ...at(11, 0.2), grade: 'technical' }],
  ['old', { ...at(11, 4), grade: 'raw', unchecked: true }],
  ['nearly', { ...at(21.8, 0.2), grade: 'waste' }],
  ['full', { ...at(22, 0.3), high: 22, grade: 'drinking' }],
  ['over', { ...at(22.6, 0.3), grade: 'drinking' }],
  ['unknown', { value: null, low: 0, high: 22, capacity: 22, grade: null, unchecked: true }],
  ['wide', { ...at(11, 14), grade: 'drinking' }],
  ['floor', { value: 352, low: 339, high: 365, capacity: 366, grade: 'drinking', floor: 300 }],
];

const KINDS: readonly (readonly [string, string | null])[] = [
  ['tank', 'drinking'],
  ['container', 'drinking'],
  ['container', 'technical'],
  ['softBag', 'technical'],
  ['buffer', 'raw'],
  ['vehicleTank', 'waste'],
  ['wasteContainer', 'waste'],
  ['container', 'brine'],
  ['container', null],
];

const TREE: readonly HoldNode[] = [
  {
    store: 'C-07',
    grade: 'drinking',
    came: null,
    volume: litres(21.4, 0.4),
    mark: 'HOLD',
    fed: [
      {
        store: 'C-09',
        grade: 'drinking',
        came: litres(4.2, 0.2),
        volume: litres(8, 0.5),
        mark: 'HOLD',
        fed: [
          {
            store: 'Bag-2',
            grade: 'drinking',
            came: litres(1, 0.1),
            volume: litres(2, 0.2),
            mark: 'HOLD',
            fed: [],
          },
        ],
      },
    ],
  },
];

export function Specimens() {
  const { parts, stores } = words();
  return (
    <div data-ready="parts">
      <div className="title">
        <h1>{words().pages.parts}</h1>
        <p className="soft">{parts.note}</p>
      </div>
      <Row head={parts.stave} note={parts.staveNote}>
        <ul className="rack">
          {STAVES.map(([state, facts]) => (
            <li key={state} data-state={state}>
              <Stave facts={facts} label={parts.states[state]} />
              <p className="xs">{parts.states[state]}</p>
            </li>
          ))}
        </ul>
      </Row>
      <Row head={parts.silhouette} note={parts.silhouetteNote}>
        <ul className="flow kinds">
          {[false, true].flatMap((hold) =>
            KINDS.filter(([, grade]) => !hold || grade !== null).map(([kind, grade]) => (
              <li key={`${kind} ${grade} ${hold}`}>
                <Silhouette kind={kind} grade={grade} hold={hold} />
                <p className="xs">
                  <GradeBadge grade={grade} /> {stores.kinds[kind] ?? kind}
                </p>
                {hold && <Mark store={{ mark: 'HOLD' }} />}
              </li>
            )),
          )}
        </ul>
      </Row>
      <Small />
      <Row head={parts.tree}>
        <HoldTree nodes={TREE} label={parts.tree} />
      </Row>
    </div>
  );
}

function Small() {
  const { parts } = words();
  return (
    <>
      <Row head={parts.levels}>
        <div className="flow">
          {(['error', 'act-now', 'act-today', 'know'] as const).map((severity) => (
            <LevelSign key={severity} severity={severity} />
          ))}
        </div>
      </Row>
      <Row head={parts.quantities}>
        <div className="flow">
          {[
            litres(194.3, 6),
            litres(0.27, 0.19),
            litres(12345.6, 20),
            litres(-1.9, 1.3),
            litres(3, null),
          ].map((figure) => (
            <Quantity key={figure.value} figure={figure} of={parts.quantities} />
          ))}
          <NamedQuantity figure={litres(56.2, 1.2)} of={parts.quantities} name={parts.quantities} />
        </div>
      </Row>
      <Row head={parts.press}>
        <div className="flow">
          <button type="button" className="b main">
            {parts.primary}
          </button>
          <button type="button" className="b">
            {parts.other}
          </button>
          <button type="button" className="b small">
            {parts.small}
          </button>
          <button type="button" className="b" disabled>
            {parts.other}
          </button>
        </div>
      </Row>
    </>
  );
}

function Row({
  head,
  note,
  children,
}: {
  readonly head: string;
  readonly note?: string;
  readonly children: ReactNode;
}) {
  return (
    <section className="row">
      <div className="margin">
        <h2>{head}</h2>
        {note !== undefined && <p className="xs">{note}</p>}
      </div>
      <div>{children}</div>
    </section>
  );
}
