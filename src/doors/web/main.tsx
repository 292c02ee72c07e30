// Starts the page: styles, the trade of the launch token, then the first view.
import '@fontsource-variable/noto-sans/wght.css';
import './style/tokens.css';
import './style/frame.css';
import './style/parts.css';
import './style/pages.css';
import './style/sheets.css';
import './style/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { ask } from './api/cache.ts';
import { hearChanges } from './api/changes.ts';
import { enter } from './api/session.ts';
import { App } from './app.tsx';
import { applyDevice } from './device.ts';
import { chooseLanguage } from './language.ts';
import { parsePlace, sheetPath } from './place.ts';

async function start(): Promise<void> {
  applyDevice();
  await Promise.all([enter(), chooseLanguage()]);
  // Asked before the first view is drawn: the answer is on its way while React starts.
  const place = parsePlace(window.location.hash);
  if (place.page === 'today') ask(sheetPath('today', place));
  hearChanges();
  const root = document.getElementById('page');
  if (root === null) throw new Error('the page has no place to stand in');
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}

void start();
