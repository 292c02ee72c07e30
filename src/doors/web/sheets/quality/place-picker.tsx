// What a sample or a result is of: a sample that waits, a sampling point or a store, by one tap or by typing.
import { useId, useState } from 'react';
import type { SamplesSheet, StoresSheet, TrendSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { GradeBadge } from '../../parts/grade.tsx';
import { matching } from '../../parts/store-picker.tsx';

interface Told {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** A tap: what comes next can be typed at once. */
  readonly onTap: (value: string) => void;
  readonly first: boolean;
  /** Samples that wait are offered for a result, and not for a new sample. */
  readonly withSamples: boolean;
  readonly chosen: readonly string[];
}

const MOST = 8;

export function PlacePicker({ label, value, onChange, onTap, first, withSamples, chosen }: Told) {
  const { quality, log } = words();
  const id = useId();
  const [whole, setWhole] = useState(false);
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  const samples = useSheet<SamplesSheet>('/api/samples').data?.samples ?? [];
  const trend = useSheet<TrendSheet>('/api/quality/trend').data;
  const waiting = withSamples
    ? samples.filter(({ state, open }) => state === 'waits' || state === 'late' || open.length > 0)
    : [];
  const points = [
    ...new Set(
      (trend?.parameters ?? []).flatMap(({ places }) =>
        places.flatMap(({ kind, name }) => (kind === 'point' ? [name] : [])),
      ),
    ),
  ];
  const [open, setOpen] = useState(value === '');
  const isOne =
    withSamples &&
    [...stores.map((store) => store.id), ...samples.map(({ sample }) => sample), ...points].includes(
      chosen[0] ?? '',
    );
  const found = chosen.length > 0 && (isOne || !withSamples) ? stores : matching(stores, value);
  const shown = whole ? found : found.filter(({ emptied }) => !emptied).slice(0, MOST);
  const chip = (name: string, note: string | null, grade?: string | null) => (
    <button
      key={name}
      type="button"
      className="b small"
      tabIndex={-1}
      aria-pressed={chosen.includes(name)}
      onClick={() => {
        setOpen(!withSamples);
        onTap(name);
      }}
    >
      {grade !== undefined && <GradeBadge grade={grade} />}
      <span className="nowrap">{name}</span>
      {note !== null && <span className="xs soft chip-note">{note}</span>}
    </button>
  );
  return (
    <fieldset className="picker">
      <legend>{label}</legend>
      <label className="hidden" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="f wide-f"
        value={value}
        placeholder={withSamples ? quality.ofHint : quality.ofDrawnHint}
        autoComplete="off"
        spellCheck={false}
        data-first={first || undefined}
        data-field="of"
        onChange={({ target }) => onChange(target.value)}
      />
      {isOne && !open ? (
        <button type="button" className="b small" onClick={() => setOpen(true)}>
          {quality.another}
        </button>
      ) : (
        <>
          {waiting.length > 0 && (
            <Chips head={quality.ofWaiting}>
              {waiting.map(({ sample, place, taken }) => chip(sample, `${place}, ${taken}`))}
            </Chips>
          )}
          <Chips head={quality.ofStores}>
            {shown.map(({ id: name, grade, mark }) =>
              chip(name, mark === '' || mark === 'EMPTY' ? null : mark, grade),
            )}
            {!whole && found.length > shown.length && (
              <button type="button" className="b small" tabIndex={-1} onClick={() => setWhole(true)}>
                {log.allStores}
              </button>
            )}
          </Chips>
          {points.length > 0 && (
            <Chips head={quality.ofPoints}>{points.map((name) => chip(name, null))}</Chips>
          )}
        </>
      )}
    </fieldset>
  );
}

function Chips({ head, children }: { readonly head: string; readonly children: React.ReactNode }) {
  return (
    <div className="chips">
      <p className="xs soft">{head}</p>
      <div className="flow">{children}</div>
    </div>
  );
}
