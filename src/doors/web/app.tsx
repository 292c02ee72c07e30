// The frame around every view: head, pages, time, the log bar, the strip, and whichever dialog is open.
import { useEffect } from 'react';
import { Footer } from './frame/footer.tsx';
import { Header } from './frame/header.tsx';
import { LogBar } from './frame/log-bar.tsx';
import { useKeys } from './keys.ts';
import { words } from './language.ts';
import { lazily } from './lazily.tsx';
import { type OpenSheet, opened } from './open.ts';
import { loadPages, Page } from './pages/page.tsx';
import { Patterns } from './parts/grade.tsx';
import { UndoStrip } from './parts/undo-strip.tsx';
import { type Place, usePlace } from './place.ts';
import { useTopOfView } from './view-top.ts';

/** The dialogs come with the first of them that is opened, and in a quiet moment before that. */
const Sheet = lazily(async () => (await import('./sheets/sheet.tsx')).Sheet);
/** After the first view stands, what is likely to be opened next is fetched. */
const QUIET_MS = 600;

export function App() {
  const place = usePlace();
  useKeys(place);
  useTopOfView(place);
  useEffect(() => {
    const quiet = window.setTimeout(() => void Sheet.load().then(loadPages), QUIET_MS);
    return () => window.clearTimeout(quiet);
  }, []);
  return (
    <>
      <Patterns />
      <button type="button" className="skip" onClick={() => document.getElementById('main')?.focus()}>
        {words().frame.skip}
      </button>
      <div className="wrap">
        <Header place={place} />
        <main id="main" className="sheet" tabIndex={-1}>
          <Page key={`${place.page}/${place.item ?? ''}`} place={place} />
        </main>
        <Footer />
      </div>
      <div className="bottom no-print">
        <UndoStrip />
        <LogBar place={place} />
      </div>
      <OpenDialog place={place} />
    </>
  );
}

/** Apart from the frame: a dialog that opens or closes draws nothing else anew. */
function OpenDialog({ place }: { readonly place: Place }) {
  const sheet = opened.use();
  return sheet === null ? null : <Sheet key={keyOf(sheet)} sheet={sheet} place={place} />;
}

/** Another sheet, and the same sheet about another store, begins anew. */
function keyOf(sheet: OpenSheet): string {
  return ['store', 'entryKind', 'entry', 'of', 'act', 'hold', 'stores', 'set', 'row'].reduce(
    (key, name) => `${key} ${name in sheet ? String(sheet[name as keyof OpenSheet]) : ''}`,
    sheet.kind as string,
  );
}
