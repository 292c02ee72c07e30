// A sheet with a plot comes in one form at a time: as a picture, as a table for spreadsheets, for programs, or as a text.
import type { Call } from './call.ts';

export function holdPlotForms(call: Call): void {
  const forms = ['svg', 'csv', 'json', 'plain'] as const;
  forms.forEach((first, k) => {
    for (const second of forms.slice(k + 1))
      if (second !== 'plain' || first !== 'json') call.holdApart(first, second);
  });
}
