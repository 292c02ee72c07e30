// The list of papers as a text.
import { reportNames } from '../words/en/labels.ts';
import type { TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { hanging } from './wrap.ts';

export function reportsText(names: readonly (keyof typeof reportNames)[], options: TextOptions): string {
  const width = options.width;
  return page(
    names.flatMap((name) =>
      options.style === 'plain'
        ? [record([name, reportNames[name]])]
        : hanging(`  ${name}`, reportNames[name], { width, indent: 16 }),
    ),
    options,
  );
}
