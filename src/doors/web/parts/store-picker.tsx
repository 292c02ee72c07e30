// A store is chosen by one tap or by typing its number: c7, C07 and C-07 are the same.
import { useId, useState } from 'react';
import type { StoreLine } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { GradeBadge } from './grade.tsx';

/** Letters and the number behind them without zeros in front: `C-07` is `c7`. */
function keyOf(id: string): string {
  return id
    .toLowerCase()
    .replace(/[^\p{L}\d]/gu, '')
    .replace(/(\D|^)0+(?=\d)/g, '$1');
}

/** The one store that a text names; null where none or several could be meant. */
export function nearestId(stores: readonly Pick<StoreLine, 'id'>[], typed: string): string | null {
  const exact = stores.find(({ id }) => id === typed.trim());
  if (exact !== undefined) return exact.id;
  const key = keyOf(typed);
  const same = stores.filter(({ id }) => keyOf(id) === key);
  return key === '' || same.length !== 1 ? null : (same[0]?.id ?? null);
}

export function matching(stores: readonly StoreLine[], typed: string): readonly StoreLine[] {
  const key = keyOf(typed);
  if (key === '') return stores;
  const text = typed.trim().toLowerCase();
  const bare = text.replace(/[^\p{L}\d]/gu, '');
  return stores.filter(
    ({ id, name, place }) =>
      keyOf(id).startsWith(key) ||
      id
        .toLowerCase()
        .replace(/[^\p{L}\d]/gu, '')
        .startsWith(bare) ||
      `${name} ${place}`.toLowerCase().includes(text),
  );
}

/** More than these are behind a button: what is likely comes first. */
const MOST = 8;

interface Told {
  readonly label: string;
  readonly stores: readonly StoreLine[];
  readonly all: readonly StoreLine[];
  readonly value: string;
  readonly onChange: (store: string) => void;
  readonly first?: boolean;
  /** The field of the request that it fills. */
  readonly field?: string;
  /** What is to be known of a store before it is chosen: its content, or the room in it. */
  readonly noteOf?: (store: StoreLine) => string;
}

export function StorePicker({
  label,
  stores,
  all,
  value,
  onChange,
  noteOf,
  first = false,
  field = 'store',
}: Told) {
  const { log } = words();
  const id = useId();
  const [whole, setWhole] = useState(false);
  const chosen = nearestId(all, value);
  const found = chosen === null ? matching(stores, value) : stores;
  const shown = whole ? found : found.slice(0, MOST);
  return (
    <fieldset className="picker">
      <legend>{label}</legend>
      <label className="hidden" htmlFor={id}>
        {label}: {log.chooseStore}
      </label>
      <input
        id={id}
        className="f wide-f"
        value={value}
        placeholder={log.chooseStore}
        autoComplete="off"
        spellCheck={false}
        data-first={first || undefined}
        data-field={field}
        onChange={(event) => onChange(event.target.value)}
        onBlur={() => chosen !== null && onChange(chosen)}
      />
      <div className="flow">
        {shown.map((store) => (
          <button
            key={store.id}
            type="button"
            className="b small"
            tabIndex={-1}
            aria-pressed={store.id === chosen}
            onClick={() => onChange(store.id)}
          >
            <GradeBadge grade={store.grade} />
            <span className="nowrap">{store.id}</span>
            {noteOf !== undefined && <span className="xs soft chip-note">{noteOf(store)}</span>}
          </button>
        ))}
        {!whole && found.length > MOST && (
          <button type="button" className="b small" tabIndex={-1} onClick={() => setWhole(true)}>
            {log.allStores}
          </button>
        )}
      </div>
      {value.trim() !== '' && chosen === null && found.length === 0 && (
        <p role="alert">{log.noStore(value)}</p>
      )}
    </fieldset>
  );
}
