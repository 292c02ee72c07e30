// The page Quality: what is held, what waits for the medic, samples, trends, beds and limits.
import '../../style/quality.css';
import { useEffect } from 'react';
import type { HoldsSheet, QualitySheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { FindingLine } from '../../parts/finding-line.tsx';
import { FailedView, Working } from '../../parts/states.tsx';
import { isPast, type Place, sheetPath } from '../../place.ts';
import { dayInSight } from '../day-steps.ts';
import { Beds } from './beds.tsx';
import { Due } from './due.tsx';
import { Held } from './held.tsx';
import { Limits } from './limits.tsx';
import { Queue } from './queue.tsx';
import { Samples } from './samples.tsx';
import { Trends } from './trends.tsx';

export function Quality({ place }: { readonly place: Place }) {
  const sheet = useSheet<QualitySheet>(sheetPath('quality', place));
  const holds = useSheet<HoldsSheet>(sheetPath('holds', place));
  const { data } = sheet;
  useEffect(() => {
    if (data === undefined) return;
    document.title = words().frame.title(words().pages.quality, data.head.outpost);
    dayInSight.set(data.head.day);
  }, [data]);
  if (data === undefined)
    return sheet.failed === null ? <Working /> : <FailedView name={words().pages.quality} sheet={sheet} />;
  return (
    <div data-ready="quality">
      <div className="title">
        <h1>{words().pages.quality}</h1>
        {!isPast(place) && <Enter />}
      </div>
      {data.findings.length > 0 && (
        <ul>
          {data.findings.map((finding) => (
            <FindingLine key={`${finding.code} ${finding.text}`} need={{ finding, alike: 1 }} />
          ))}
        </ul>
      )}
      <Held sheet={holds} place={place} />
      <Queue sheet={data} place={place} />
      <Due due={data.due} place={place} />
      <Samples place={place} />
      <Trends place={place} />
      <Beds place={place} />
      <Limits place={place} />
    </div>
  );
}

function Enter() {
  const { quality } = words();
  return (
    <div className="flow end no-print">
      <button type="button" className="b main" onClick={() => openSheet({ kind: 'sample' })}>
        {quality.newResult}
      </button>
      <button type="button" className="b" onClick={() => openSheet({ kind: 'sample', drawn: true })}>
        {quality.newSample}
      </button>
      <button type="button" className="b" onClick={() => openSheet({ kind: 'hold-act', act: 'add' })}>
        {quality.ways.add}
      </button>
    </div>
  );
}
