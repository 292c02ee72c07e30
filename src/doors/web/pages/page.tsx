// Which view an address shows; what is not the first view comes when it is asked for.
import { lazy, Suspense } from 'react';
import { words } from '../language.ts';
import { Working } from '../parts/states.tsx';
import { hrefOf, type Place } from '../place.ts';
import { Today } from './today/today.tsx';

const Daybook = lazy(async () => ({ default: (await import('./daybook/daybook.tsx')).Daybook }));
const Stores = lazy(async () => ({ default: (await import('./stores/stores.tsx')).Stores }));
const OneStore = lazy(async () => ({ default: (await import('./stores/one-store.tsx')).OneStore }));
const Parts = lazy(async () => ({ default: (await import('./specimens.tsx')).Specimens }));

export function Page({ place }: { readonly place: Place }) {
  return <Suspense fallback={<Working />}>{viewOf(place)}</Suspense>;
}

function viewOf(place: Place) {
  switch (place.page) {
    case 'today':
      return <Today place={place} />;
    case 'daybook':
      return <Daybook place={place} />;
    case 'stores':
      return place.item === null ? <Stores place={place} /> : <OneStore place={place} id={place.item} />;
    case 'parts':
      return <Parts />;
    default:
      return (
        <div className="title">
          <h1>{words().state.notFound(place.page)}</h1>
          <a className="b" href={hrefOf({ page: 'today' })}>
            {words().state.toToday}
          </a>
        </div>
      );
  }
}
