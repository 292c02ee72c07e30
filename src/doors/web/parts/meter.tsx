// One meter of the day line: its field, its last value and what is expected, and a mark in words where it is not that.
import type { KeyboardEvent } from 'react';
import type { DayFormItem } from '../../../desk/index.ts';
import { roundFigure, unitSign } from '../../../ground/units/index.ts';
import { words } from '../language.ts';
import { type MeterMark, markOf } from '../meter-mark.ts';

interface Told {
  readonly item: DayFormItem;
  readonly first: boolean;
  readonly value: string;
  readonly onFocus?: () => void;
  readonly onChange: (value: string) => void;
  /** Without its last value: it is told anew. */
  readonly bare?: boolean;
}

export function Meter({ item, first, value, onFocus, onChange, bare = false }: Told) {
  const { log } = words();
  const id = `meter-${item.instrument}`;
  const mark = markOf(item, value);
  const said = saidMark(mark, item);
  return (
    <li className="meter">
      <label htmlFor={id}>{nameOfMeter(item)}</label>
      <input
        id={id}
        className="f"
        inputMode="decimal"
        autoComplete="off"
        value={value}
        aria-describedby={`${id}-last${said === null ? '' : ` ${id}-mark`}`}
        aria-invalid={mark === 'no number'}
        data-first={first || undefined}
        data-field={item.instrument}
        onFocus={onFocus}
        onKeyDown={nextOnEnter}
        onChange={(event) => onChange(event.target.value)}
      />
      <span className="unit">{unitSign(item.unit)}</span>
      <div className="meter-note xs">
        <p className="soft" id={`${id}-last`}>
          {!bare && (item.last === null ? log.noLast : `${log.last} ${digits(item.last)}`)}
          {item.low !== null && item.high !== null && (
            <>
              ,{' '}
              <span className="nowrap">
                {log.expected} {range(item)}
              </span>
            </>
          )}
        </p>
        {said !== null && (
          <p className={mark === 'no reading' ? 'soft' : 'off'} id={`${id}-mark`}>
            {said}
          </p>
        )}
      </div>
    </li>
  );
}

/** A meter that has no name of its own in the outpost file goes by the words of its id. */
export function nameOfMeter({ name, instrument }: Pick<DayFormItem, 'name' | 'instrument'>): string {
  return name === instrument ? name.replaceAll('-', ' ') : name;
}

function saidMark(mark: MeterMark, item: DayFormItem): string | null {
  const { log } = words();
  if (mark === 'fine') return null;
  if (mark === 'no reading') return log.marks.noReading;
  return mark === 'no number' ? log.marks.noNumber : log.marks[mark](range(item));
}

function range({ low, high, resolution }: DayFormItem): string {
  return `${digits(low ?? 0, resolution)}–${digits(high ?? 0, resolution)}`;
}

/** Enter goes on to the next field, as Tab does; only the last one saves. */
function nextOnEnter(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'Enter') return;
  const fields = [...(event.currentTarget.form?.querySelectorAll<HTMLInputElement>('.meter input') ?? [])];
  const next = fields[fields.indexOf(event.currentTarget) + 1];
  if (next === undefined) return;
  event.preventDefault();
  next.focus();
}

/** To the step of the meter, as it will be read off. */
function digits(value: number, resolution: number | null = null): string {
  const stepped = resolution === null ? value : Math.round(value / resolution) * resolution;
  return roundFigure({ value: stepped, u95: resolution === null ? null : resolution * 3.1 }).value;
}
