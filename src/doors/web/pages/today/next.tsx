// What comes next: visits, the nearest first; and which reading is worth its minutes.
import { type TodaySheet, worthDoing, worthText } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { Phrased } from '../../parts/phrased.tsx';

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

/** Readings that would make a cover better known, the best bargain of crew minutes first. */
export function WorthReading({
  sheet,
  canEnter,
}: {
  readonly sheet: TodaySheet;
  readonly canEnter: boolean;
}) {
  const { today } = words();
  const best = worthDoing(sheet.readings);
  if (best.length === 0) return null;
  return (
    <section className="row">
      <h2>{today.worth}</h2>
      <ul className="stack">
        {best.map((worth) => {
          const whole = worthText(worth, { style: 'screen', units: 'L', width: 80, colour: false });
          // Only figures stay in one piece: `look at the glass of PB` may take two lines.
          const text = whole.replace(/^[^,]*/, (act) => act.replaceAll('\u00A0', ' '));
          return (
            <li key={`${worth.store} ${worth.way}`}>
              {canEnter ? (
                <button
                  type="button"
                  className="b worth"
                  onClick={() =>
                    openSheet({ kind: worth.way === 'weighing' ? 'weigh' : 'gauge', store: worth.store })
                  }
                >
                  <span>
                    <Phrased text={text} />
                  </span>
                </button>
              ) : (
                <p>
                  <Phrased text={text} />
                </p>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
