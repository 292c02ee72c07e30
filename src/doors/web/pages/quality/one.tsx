// One hold, or one sample: whichever the address names.
import '../../style/quality.css';
import { useEffect } from 'react';
import type { HoldSheet, SampleSheet, SheetHead } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { FailedView, Working } from '../../parts/states.tsx';
import { hrefOf, type Place, sheetPath } from '../../place.ts';
import { dayInSight } from '../day-steps.ts';
import { OneHold } from './one-hold.tsx';
import { OneSample } from './one-sample.tsx';

export function OneOfQuality({ place, id }: { readonly place: Place; readonly id: string }) {
  const hold = useSheet<HoldSheet>(sheetPath(`holds/${encodeURIComponent(id)}`, place));
  const isNoHold = hold.failed?.status === 404;
  const sample = useSheet<SampleSheet>(
    isNoHold ? sheetPath(`samples/${encodeURIComponent(id)}`, place) : null,
  );
  useHead(id, hold.data?.head ?? sample.data?.head);
  if (hold.data !== undefined) return <OneHold sheet={hold.data} place={place} />;
  if (sample.data !== undefined) return <OneSample sheet={sample.data} place={place} />;
  if (hold.failed !== null && (!isNoHold || sample.failed !== null)) {
    const failed = isNoHold ? sample : hold;
    return (
      <>
        <FailedView name={id} sheet={failed} />
        {isNoHold && <p>{words().quality.notThere(id)}</p>}
        <a className="b" href={hrefOf({ ...place, item: null })}>
          {words().quality.allOf}
        </a>
      </>
    );
  }
  return <Working />;
}

function useHead(id: string, head: SheetHead | undefined): void {
  useEffect(() => {
    if (head === undefined) return;
    document.title = words().frame.title(id, head.outpost);
    dayInSight.set(head.day);
  }, [id, head]);
}
