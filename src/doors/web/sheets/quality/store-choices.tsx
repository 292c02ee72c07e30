// Stores of which several count: every one is in sight and one tap away.
import { words } from '../../language.ts';

export function StoreChoices({
  label,
  stores,
  chosen,
  onChange,
  hint,
}: {
  readonly label: string;
  readonly stores: readonly { readonly store: string; readonly note?: string }[];
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
  readonly hint?: string;
}) {
  const toggle = (store: string) =>
    onChange(chosen.includes(store) ? chosen.filter((each) => each !== store) : [...chosen, store]);
  return (
    <fieldset className="choices">
      <legend>{label}</legend>
      <div className="flow">
        {stores.map(({ store, note }) => (
          <button
            key={store}
            type="button"
            className="b small left"
            aria-pressed={chosen.includes(store)}
            onClick={() => toggle(store)}
          >
            <span className="nowrap">{store}</span>
            {note !== undefined && <span className="xs soft chip-note">{note}</span>}
          </button>
        ))}
        {stores.length === 0 && <p>{words().quality.holdEnded}</p>}
      </div>
      {hint !== undefined && <p className="xs soft">{hint}</p>}
    </fieldset>
  );
}
