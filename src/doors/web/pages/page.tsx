// Which view an address shows; what is not the first view comes when it is asked for.
import { words } from '../language.ts';
import { lazily } from '../lazily.tsx';
import { Working } from '../parts/states.tsx';
import { hrefOf, type Place } from '../place.ts';
import { Today } from './today/today.tsx';

const Daybook = lazily(async () => (await import('./daybook/daybook.tsx')).Daybook, <Working />);
const Stores = lazily(async () => (await import('./stores/stores.tsx')).Stores, <Working />);
const OneStore = lazily(async () => (await import('./stores/one-store.tsx')).OneStore, <Working />);
const Quality = lazily(async () => (await import('./quality/quality.tsx')).Quality, <Working />);
const OneOfQuality = lazily(async () => (await import('./quality/one.tsx')).OneOfQuality, <Working />);
const Inbox = lazily(async () => (await import('./inbox/inbox.tsx')).Inbox, <Working />);
const Reckon = lazily(async () => (await import('./reckon/reckon.tsx')).Reckon, <Working />);
const Specimens = lazily(async () => (await import('./specimens.tsx')).Specimens, <Working />);

export async function loadPages(): Promise<void> {
  const all = [Daybook, Stores, OneStore, Quality, OneOfQuality, Inbox, Reckon];
  await Promise.all(all.map((each) => each.load()));
}

export function Page({ place }: { readonly place: Place }) {
  return viewOf(place);
}

function viewOf(place: Place) {
  switch (place.page) {
    case 'today':
      return <Today place={place} />;
    case 'daybook':
      return <Daybook place={place} />;
    case 'stores':
      return place.item === null ? <Stores place={place} /> : <OneStore place={place} id={place.item} />;
    case 'quality':
      return place.item === null ? <Quality place={place} /> : <OneOfQuality place={place} id={place.item} />;
    case 'inbox':
      return <Inbox />;
    case 'reckon':
      return <Reckon place={place} />;
    case 'parts':
      return <Specimens />;
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
