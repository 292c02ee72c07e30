// Today: is it old, how long it lasts, what came, what needs somebody, where it is and what for, what comes next.
import { useEffect } from 'react';
import type { TodaySheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { LevelSign } from '../../parts/finding-line.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Failed, FailedView, Working } from '../../parts/states.tsx';
import { isPast, type Place, sheetPath } from '../../place.ts';
import { dayInSight } from '../day-steps.ts';
import { HowLong } from './how-long.tsx';
import { NeedsStrip, NeedsYou } from './needs-you.tsx';
import { Next, WorthReading } from './next.tsx';
import { Since } from './since.tsx';
import { Where } from './where.tsx';

export function Today({ place }: { readonly place: Place }) {
  const sheet = useSheet<TodaySheet>(sheetPath('today', place));
  const { data } = sheet;
  useEffect(() => {
    if (data === undefined) return;
    document.title = words().frame.title(words().pages.today, data.head.outpost);
    dayInSight.set(data.head.day);
  }, [data]);
  if (data === undefined)
    return sheet.failed === null ? <Working /> : <FailedView name={words().pages.today} sheet={sheet} />;
  return (
    <div className="today" data-ready="today">
      <h1 className="hidden">{words().pages.today}</h1>
      {sheet.failed !== null && <Failed sheet={sheet} />}
      {data.silence !== null && (
        <div className="silence" role="alert">
          <LevelSign severity={data.silence.severity} />
          <p>
            <Phrased text={data.silence.text} strong />
          </p>
        </div>
      )}
      {isEmpty(data) ? <Empty /> : <Told sheet={data} place={place} />}
    </div>
  );
}

/** Before the opening nothing is known, and figures of nothing would only look like figures. */
function isEmpty({ stores, findings }: TodaySheet): boolean {
  return stores.length === 0 || findings.some(({ code }) => code === 'opening-missing');
}

function Told({ sheet, place }: { readonly sheet: TodaySheet; readonly place: Place }) {
  return (
    <>
      <NeedsStrip findings={sheet.findings} />
      <HowLong sheet={sheet} />
      {!isPast(place) && <Since at={sheet.head.at} />}
      <NeedsYou findings={sheet.findings} stores={sheet.stores} place={place} />
      <Where sheet={sheet} />
      <Next sheet={sheet} />
      <WorthReading sheet={sheet} canEnter={!isPast(place)} />
      <section className="row no-print">
        <h2>{words().today.record}</h2>
        <div>
          <button type="button" className="b small" onClick={() => openSheet({ kind: 'say' })}>
            {words().today.sayIt}
          </button>
        </div>
      </section>
    </>
  );
}

function Empty() {
  const { today } = words();
  return (
    <section className="empty">
      <p className="md">{today.empty}</p>
      <p>{today.emptyFirst}</p>
      <p className="soft">{today.emptyTry}</p>
    </section>
  );
}
