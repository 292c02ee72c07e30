// What comes next: visits, the nearest first.
import type { TodaySheet } from '../../../../papers/index.ts';
import { words } from '../../language.ts';

export function Next({ sheet }: { readonly sheet: TodaySheet }) {
  const { today } = words();
  return (
    <section className="row">
      <h2>{today.next}</h2>
      <div>
        {sheet.visits.length === 0 && <p>{today.noNext}</p>}
        <dl className="next">
          {sheet.visits.map((visit) => {
            const day = visit.aboard ? visit.departDay : visit.berthDay;
            return (
              <div key={visit.visit}>
                <dt>{day === null ? '' : `${today.dayWord}\u00A0${day}`}</dt>
                <dd>{said(visit, day)}</dd>
              </div>
            );
          })}
        </dl>
      </div>
    </section>
  );
}

function said({ visit, aboard }: TodaySheet['visits'][number], day: number | null): string {
  const { today } = words();
  if (!aboard) return today.berths(visit);
  return day === null ? today.here(visit) : today.leaves(visit);
}
