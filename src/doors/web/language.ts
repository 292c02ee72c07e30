// The words of the page in the language of this device; one that is twice as long stands in for those to come.
import { type PageWords, pageWords } from '../../papers/index.ts';

const NAME = 'waterwright-language';
let chosen: PageWords = pageWords;

/** Read once, before anything is drawn; tests and translators set it. */
export async function chooseLanguage(): Promise<void> {
  if (kept() === 'pseudo') chosen = (await import('./pseudo.ts')).twiceAsLong(pageWords);
  document.documentElement.lang = chosen.language;
}

function kept(): string | null {
  try {
    return window.localStorage.getItem(NAME);
  } catch {
    return null;
  }
}

export function words(): PageWords {
  return chosen;
}
