// What a sample or a result is of: a sample that waits, a sampling point or a store, by one tap or by typing.
import { type ReactNode, useId, useState } from 'react';
import type {
  SampleLine,
  SamplesSheet,
  StoreLine,
  StoresSheet,
  TrendSheet,
} from '../../../../papers/index.ts';
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

export function PlacePicker(told: Told) {
  const { label, value, onChange, onTap, first, withSamples, chosen } = told;
  const { quality } = words();
  const id = useId();
  const [open, setOpen] = useState(value === '');
  const places = usePlaces(withSamples);
  const isKnown = withSamples && places.all.includes(chosen[0] ?? '');
  const tap = (name: string) => {
    setOpen(!withSamples);
    onTap(name);
  };
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
      {isKnown && !open ? (
        <button type="button" className="b small" onClick={() => setOpen(true)}>
          {quality.another}
        </button>
      ) : (
        <Offered
          places={places}
          // Several are tapped one after the other; one that is typed is looked for.
          typed={isKnown || !withSamples ? '' : value}
          chosen={chosen}
          onTap={tap}
        />
      )}
    </fieldset>
  );
}

interface Places {
  readonly waiting: readonly SampleLine[];
  readonly stores: readonly StoreLine[];
  readonly points: readonly string[];
  readonly all: readonly string[];
}

function usePlaces(withSamples: boolean): Places {
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  const samples = useSheet<SamplesSheet>('/api/samples').data?.samples ?? [];
  const measured = useSheet<TrendSheet>('/api/quality/trend').data?.parameters ?? [];
  const places = measured.flatMap((each) => each.places).filter(({ kind }) => kind === 'point');
  const points = [...new Set(places.map(({ name }) => name))];
  const waits = ({ state, open }: SampleLine) => state === 'waits' || state === 'late' || open.length > 0;
  return {
    waiting: withSamples ? samples.filter(waits) : [],
    stores,
    points,
    all: [...stores.map(({ id }) => id), ...samples.map(({ sample }) => sample), ...points],
  };
}

function Offered(told: {
  readonly places: Places;
  readonly typed: string;
  readonly chosen: readonly string[];
  readonly onTap: (name: string) => void;
}) {
  const { places, typed, chosen, onTap } = told;
  const { quality, log } = words();
  const [whole, setWhole] = useState(false);
  const found = matching(places.stores, typed);
  const shown = whole ? found : found.filter(({ emptied }) => !emptied).slice(0, MOST);
  const chip = (name: string, note: string | null, grade?: string | null) => (
    <button
      key={name}
      type="button"
      className="b small"
      tabIndex={-1}
      aria-pressed={chosen.includes(name)}
      onClick={() => onTap(name)}
    >
      {grade !== undefined && <GradeBadge grade={grade} />}
      <span className="nowrap">{name}</span>
      {note !== null && <span className="xs soft chip-note">{note}</span>}
    </button>
  );
  return (
    <>
      {places.waiting.length > 0 && (
        <Chips head={quality.ofWaiting}>
          {places.waiting.map(({ sample, place, taken }) => chip(sample, `${place}, ${taken}`))}
        </Chips>
      )}
      <Chips head={quality.ofStores}>
        {shown.map(({ id, grade, mark }) => chip(id, mark === '' || mark === 'EMPTY' ? null : mark, grade))}
        {!whole && found.length > shown.length && (
          <button type="button" className="b small" tabIndex={-1} onClick={() => setWhole(true)}>
            {log.allStores}
          </button>
        )}
      </Chips>
      {places.points.length > 0 && (
        <Chips head={quality.ofPoints}>{places.points.map((name) => chip(name, null))}</Chips>
      )}
    </>
  );
}

function Chips({ head, children }: { readonly head: string; readonly children: ReactNode }) {
  return (
    <div className="chips">
      <p className="xs soft">{head}</p>
      <div className="flow">{children}</div>
    </div>
  );
}
