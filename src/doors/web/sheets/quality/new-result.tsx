// A result that came: its figures against the limits as they are typed, and what a failing one would hold before it is saved.
import { type FormEvent, useEffect, useRef, useState } from 'react';
import type { ResultRequest } from '../../../../desk/index.ts';
import type { ResultSheet, SamplesSheet, StoresSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { useEntrance } from '../../entering.ts';
import { words } from '../../language.ts';
import { closeSheet } from '../../open.ts';
import { Choices, TextField } from '../../parts/fields.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { nearestId } from '../../parts/store-picker.tsx';
import { WhenField } from '../../parts/when-field.tsx';
import { Decide, WillHold } from './decide.tsx';
import { RESULTS } from './entrances.ts';
import { useAhead } from './looking-ahead.ts';
import { useFields } from './parameters.ts';
import { PlacePicker } from './place-picker.tsx';
import { Values } from './values.tsx';

export function NewResult({ named }: { readonly named: string | undefined }) {
  const { quality } = words();
  const [of, setOf] = useState(named ?? '');
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [units, setUnits] = useState<Readonly<Record<string, string>>>({});
  const [other, setOther] = useState('');
  const [how, setHow] = useState<How>({});
  const [at, setAt] = useState('');
  const values = useRef<HTMLDivElement>(null);
  const chosen = useNamed(of);
  const fields = useFields(chosen);
  const request = requestOf({ of: chosen, typed, units, other, how, unitOf: fields.unitOf });
  const ahead = useAhead(RESULTS, request, at);
  const entering = useEntrance(RESULTS);
  const { sheet } = ahead;
  const tree = sheet?.asks === true ? sheet.tree : null;
  const save = (
    hold: Pick<ResultRequest, 'hold' | 'reason'>,
    second?: Parameters<typeof entering.save>[2],
  ) => {
    if (request !== null) void entering.save({ ...request, ...hold }, at === '' ? {} : { at }, second);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    // Nothing is held that was not shown: what the fields say now has to be looked at first.
    save(tree !== null && ahead.isCurrent ? { hold: 'all' } : {});
  };
  const tap = (place: string) => {
    setOf(place);
    window.requestAnimationFrame(() => values.current?.querySelector('input')?.focus());
  };
  useFocusFirst(named, values);
  return (
    <form className="stack" onSubmit={submit}>
      <Refusal entering={entering} />
      <PlacePicker
        label={quality.of}
        value={of}
        onChange={setOf}
        onTap={tap}
        first={named === undefined}
        withSamples
        chosen={[chosen]}
      />
      <div ref={values}>
        <Values
          fields={fields}
          typed={typed}
          units={units}
          onType={(parameter, value) => setTyped({ ...typed, [parameter]: value })}
          onUnit={(parameter, unit) => setUnits({ ...units, [parameter]: unit })}
          ahead={ahead}
        />
      </div>
      <Outcome sheet={sheet} isWaiting={request !== null && !ahead.isCurrent} />
      <TextField label={quality.otherParameter} value={other} onChange={setOther} hint={quality.otherHint} />
      <details className="declare">
        <summary>{quality.more}</summary>
        <HowRead how={how} onChange={setHow} />
        <WhenField value={at} onChange={setAt} />
      </details>
      <Decide entering={entering} tree={tree} canSave={request !== null} onSave={save} onBack={closeSheet} />
    </form>
  );
}

function Outcome({ sheet, isWaiting }: { readonly sheet: ResultSheet | null; readonly isWaiting: boolean }) {
  const { quality } = words();
  return (
    <div aria-live="polite">
      {isWaiting && <p className="xs soft">{quality.lookingAhead}</p>}
      {sheet !== null && sheet.fails.length === 0 && <p>{quality.allWithin}</p>}
      {sheet !== null && sheet.tree !== null && <WillHold sheet={sheet} tree={sheet.tree} />}
    </div>
  );
}

/** A sheet that opens for a sample begins at its first value. */
function useFocusFirst(named: string | undefined, values: { readonly current: HTMLDivElement | null }): void {
  useEffect(() => {
    if (named !== undefined) values.current?.querySelector('input')?.focus();
  }, [named, values]);
}

/** `c7` is C-07, `smp-03` is SMP-03; all else stands as it was typed. */
function useNamed(typed: string): string {
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  const samples = useSheet<SamplesSheet>('/api/samples').data?.samples ?? [];
  const text = typed.trim();
  const sample = samples.find((each) => each.sample.toLowerCase() === text.toLowerCase());
  return sample?.sample ?? nearestId(stores, text) ?? text;
}

interface Filled {
  readonly of: string;
  readonly typed: Readonly<Record<string, string>>;
  readonly units: Readonly<Record<string, string>>;
  readonly other: string;
  readonly how: How;
  readonly unitOf: (parameter: string) => string;
}

function requestOf({ of, typed, units, other, how, unitOf }: Filled): ResultRequest | null {
  const figures = Object.entries(typed).flatMap(([parameter, value]) => {
    const text = value.trim();
    if (text === '' || /^[<>]$/.test(text)) return [];
    // A unit that was typed along is the one that counts.
    const isBare = !/[a-zµμ°%]/i.test(text.replace(/e[-+]?\d/i, ''));
    return [[parameter, isBare ? `${text} ${units[parameter] ?? unitOf(parameter)}`.trim() : text] as const];
  });
  const values = other.trim() === '' || !other.includes('=') ? [] : [other.replace(/\s*=\s*/, '=').trim()];
  if (of === '' || figures.length + values.length === 0) return null;
  return {
    of,
    ...(figures.length > 0 && { figures: Object.fromEntries(figures) }),
    ...(values.length > 0 && { values }),
    ...how,
  };
}

type How = Pick<ResultRequest, 'method' | 'madeAt' | 'custody' | 'preliminary' | 'degassed' | 'taken'>;

function HowRead({ how, onChange }: { readonly how: How; readonly onChange: (how: How) => void }) {
  const { quality } = words();
  const { method, taken, ...rest } = how;
  const ticks = ['preliminary', 'degassed'] as const;
  return (
    <div className="stack">
      <TextField
        label={quality.methodOf}
        value={method ?? ''}
        onChange={(text) =>
          onChange({ ...rest, ...(taken !== undefined && { taken }), ...(text !== '' && { method: text }) })
        }
      />
      <Choices
        label={quality.madeAt}
        value={how.madeAt ?? null}
        options={[
          { value: 'aboard' as const, text: quality.aboard },
          { value: 'laboratory' as const, text: quality.laboratory },
        ]}
        onChange={(madeAt) => onChange({ ...how, madeAt })}
      />
      <Choices
        label={quality.custody}
        value={how.custody ?? null}
        options={[
          { value: 'kept' as const, text: quality.kept },
          { value: 'broken' as const, text: quality.broken },
        ]}
        onChange={(custody) => onChange({ ...how, custody })}
      />
      {ticks.map((name) => (
        <label key={name} className="tick">
          <input
            type="checkbox"
            checked={how[name] === true}
            onChange={() => onChange({ ...how, [name]: how[name] !== true })}
          />
          <span>{quality[name]}</span>
        </label>
      ))}
      <TextField
        label={quality.takenAt}
        value={taken ?? ''}
        onChange={(text) =>
          onChange({ ...rest, ...(method !== undefined && { method }), ...(text !== '' && { taken: text }) })
        }
      />
    </div>
  );
}
