// The frame around every view: head, pages, time, the log bar, the strip, and whichever dialog is open.
import { lazy, Suspense, useEffect } from 'react';
import { opened } from './open.ts';
import { Patterns } from './parts/grade.tsx';
import { UndoStrip } from './parts/undo-strip.tsx';
import { Footer } from './frame/footer.tsx';
import { Header } from './frame/header.tsx';
import { LogBar } from './frame/log-bar.tsx';
import { useKeys } from './keys.ts';
import { words } from './language.ts';
import { Page } from './pages/page.tsx';
import { usePlace } from './place.ts';

/** The dialogs come with the first of them that is opened, and in a quiet moment before that. */
const loadSheets = () => import('./sheets/sheet.tsx');
const OpenSheet = lazy(async () => ({ default: (await loadSheets()).Sheet }));

export function App() {
  const place = usePlace();
  const sheet = opened.use();
  useKeys(place);
  useEffect(() => {
    const quiet = window.setTimeout(() => void loadSheets(), 1200);
    return () => window.clearTimeout(quiet);
  }, []);
  return (
    <>
      <Patterns />
      <a className="skip" href="#main" onClick={toMain}>
        {words().frame.skip}
      </a>
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
      {sheet !== null && (
        <Suspense fallback={null}>
          <OpenSheet sheet={sheet} place={place} />
        </Suspense>
      )}
    </>
  );
}

/** The address after the # names the view, so the jump is done by hand. */
function toMain(event: { preventDefault: () => void }): void {
  event.preventDefault();
  document.getElementById('main')?.focus();
}
