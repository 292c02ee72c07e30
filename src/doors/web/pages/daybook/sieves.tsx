// What of the daybook is in sight: a text, a store, a kind.
import type { BookLine, StoresSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { type Place, sheetPath } from '../../place.ts';

export interface Sieve {
  readonly text: string;
  readonly store: string;
  readonly kind: string;
}

/** Kinds that people look for; the others are found by their words. */
const KINDS = [
  'day-line',
  'movement',
  'weigh',
  'gauge',
  'declared-empty',
  'declared-full',
  'hookup',
  'sample',
  'result',
  'hold',
  'release',
  'note',
  'undo',
  'correction',
  'day-close',
];

export function Sieves({
  sieve,
  onChange,
  place,
  day,
}: {
  readonly sieve: Sieve;
  readonly onChange: (sieve: Sieve) => void;
  readonly place: Place;
  /** Null: all days. */
  readonly day: number | null;
}) {
  const { daybook } = words();
  const stores = useSheet<StoresSheet>(sheetPath('stores', place));
  return (
    <search className="sieves no-print">
      <label>
        <span>{day === null ? daybook.findInBook : daybook.findIn(day)}</span>
        <input
          className="f"
          type="search"
          value={sieve.text}
          onChange={(event) => onChange({ ...sieve, text: event.target.value })}
        />
      </label>
      <label>
        <span>{daybook.store}</span>
        <select
          className="f"
          value={sieve.store}
          onChange={(event) => onChange({ ...sieve, store: event.target.value })}
        >
          <option value="">{daybook.anyStore}</option>
          {(stores.data?.stores ?? []).map(({ id }) => (
            <option key={id}>{id}</option>
          ))}
        </select>
      </label>
      <label>
        <span>{daybook.kind}</span>
        <select
          className="f"
          value={sieve.kind}
          onChange={(event) => onChange({ ...sieve, kind: event.target.value })}
        >
          <option value="">{daybook.anyKind}</option>
          {KINDS.map((kind) => (
            <option key={kind}>{kind}</option>
          ))}
        </select>
      </label>
    </search>
  );
}

function wordsIn(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
}

/** What the whole book is asked for; the other words are looked for in what it gives. */
export function longestWord(text: string): string {
  return wordsIn(text).reduce((longest, word) => (word.length > longest.length ? word : longest), '');
}

/** Lines that hold every word of the text, in whatever column. */
export function sieved(lines: readonly BookLine[], { text }: Sieve): readonly BookLine[] {
  const wanted = wordsIn(text);
  return lines.filter((line) => {
    const { ref, fileRef, id, kind, happened, text: said, now, by, note, source } = line;
    const whole = [ref, ref.replace(' ', ':'), fileRef, id, kind, happened, said, now, by, note, source]
      .join(' ')
      .replaceAll('\u00A0', ' ')
      .toLowerCase();
    return wanted.every((word) => whole.includes(word));
  });
}
