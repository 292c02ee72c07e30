// What a change of the limits would do: stores that it holds, what stays free and for how long, and what cannot be met.
import { roundCoverDays } from '../../../../ground/units/index.ts';
import type { LimitsEffect, WordedFinding } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { Quantity } from '../../parts/figure.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Table } from '../../parts/table.tsx';
import { bareL, screen } from '../../parts/touch-tree.tsx';

interface Told {
  readonly effect: LimitsEffect | null;
  readonly findings: readonly WordedFinding[];
}

export function LimitsWould({ effect, findings }: Told) {
  const { quality } = words();
  return (
    <div className="will-hold" aria-live="polite">
      {findings.map(({ text }) => (
        <p key={text} className="off">
          <Phrased text={text} />
        </p>
      ))}
      {effect !== null && (
        <>
          <h3>{quality.would}</h3>
          <Sentences effect={effect} />
          <Grades effect={effect} />
          {effect.holds.length > 0 && <Holds effect={effect} />}
        </>
      )}
    </div>
  );
}

function Sentences({ effect }: { readonly effect: LimitsEffect }) {
  const { quality } = words();
  const fresh = effect.holds.filter(({ already }) => !already);
  const off = [...new Set(effect.grades.flatMap((grade) => grade.off.map(({ parameter }) => parameter)))];
  const said = [
    ...effect.clashes.map(({ text }) => text),
    fresh.length === 0 ? quality.wouldHoldNone : quality.wouldHold(fresh.length, screen(effect.held)),
    ...(off.length === 0 ? [] : [quality.rowsOff(off.join(', '))]),
    ...effect.grades.flatMap(({ notMeasured }) =>
      notMeasured === null
        ? []
        : [quality.notMeasured(notMeasured.parameters.join(', '), notMeasured.stores.join(', '))],
    ),
    ...(effect.ends.length === 0 ? [] : [quality.ends(effect.ends.join(', '))]),
    ...(effect.noMore.length === 0
      ? []
      : [quality.noMore(effect.noMore.map(({ parameter }) => parameter).join(', '))]),
  ];
  return (
    <ul className="plain">
      {[...new Set(said)].map((text) => (
        <li key={text}>
          <Phrased text={text} />
        </li>
      ))}
    </ul>
  );
}

const daysOf = (value: number | null): string =>
  value === null ? words().quality.noEnd : words().quality.days(roundCoverDays(value));

function Grades({ effect }: { readonly effect: LimitsEffect }) {
  const { quality } = words();
  const rows = effect.grades.flatMap(({ grade, freeBefore, freeAfter, coverBefore, coverAfter }) => [
    { what: quality.free(grade), before: screen(freeBefore), after: screen(freeAfter) },
    { what: quality.lasts(grade), before: daysOf(coverBefore), after: daysOf(coverAfter) },
  ]);
  return (
    <Table
      caption={quality.changes}
      rows={rows}
      keyOf={({ what }) => what}
      columns={[
        { head: quality.what, text: ({ what }) => what },
        {
          head: quality.before,
          right: true,
          text: ({ before }) => before,
          show: ({ before }) => <span className="qty">{before}</span>,
        },
        {
          head: quality.after,
          right: true,
          text: ({ after }) => after,
          show: ({ after }) => <b className="qty">{after}</b>,
        },
      ]}
    />
  );
}

function Holds({ effect }: { readonly effect: LimitsEffect }) {
  const { quality } = words();
  return (
    <Table
      caption={quality.stores}
      rows={effect.holds}
      keyOf={({ store }) => store}
      columns={[
        { head: quality.store, text: ({ store }) => store },
        {
          head: quality.volume,
          right: true,
          text: ({ volume }) => bareL(volume),
          show: ({ store, volume }) => <Quantity figure={volume} of={store} />,
        },
        { head: quality.failed, text: ({ failed }) => failed.join(', ') },
        { head: quality.state, text: ({ already }) => (already ? quality.already : '') },
      ]}
    />
  );
}
