// What was typed into a form, and how it is sent: each figure with its unit, as on the command line.
import { findUnit } from '../../../../ground/units/index.ts';
import type { ReckonField, ReckonForm } from '../../../../papers/index.ts';
import { store } from '../../store.ts';

export interface Typed {
  readonly text: string;
  /** The unit that stands beside the field; null: the first that the field takes. */
  readonly unit: string | null;
}

type Draft = Readonly<Record<string, Typed>>;
export type Fields = Readonly<Record<string, string>>;

/** By calculator: who looks at another one and comes back finds what was typed. */
export const drafts = store<Readonly<Record<string, Draft>>>({});

export function type(calculator: string, change: Draft): void {
  const all = drafts.get();
  drafts.set({ ...all, [calculator]: { ...all[calculator], ...change } });
}

export function clear(calculator: string): void {
  drafts.set({ ...drafts.get(), [calculator]: {} });
}

export function fillIn({ calculator, fields, example }: ReckonForm): void {
  const filled = fields.flatMap((field) => {
    const text = Object.hasOwn(example, field.name) ? example[field.name] : undefined;
    return text === undefined ? [] : [[field.name, apart(field, { text, unit: null })] as const];
  });
  drafts.set({ ...drafts.get(), [calculator]: Object.fromEntries(filled) });
}

export function unitOf({ units }: ReckonField, { unit }: Typed): string {
  return unit ?? units[0] ?? '';
}

/** The fields that hold something, as they would be typed after their flags. */
export function sentOf({ fields }: ReckonForm, draft: Draft): Fields {
  const sent = fields.flatMap((field) => {
    const typed = draft[field.name];
    return typed === undefined || typed.text.trim() === '' ? [] : [[field.name, sent1(field, typed)]];
  });
  return Object.fromEntries(sent);
}

function sent1(field: ReckonField, typed: Typed): string {
  if (field.kind !== 'quantity') return typed.text.trim();
  const unit = unitOf(field, typed);
  return piecesOf(field, typed.text)
    .map((piece) => (piece === '' || hasUnit(piece) ? piece : `${piece}${unit}`))
    .join(',');
}

function piecesOf({ many }: ReckonField, text: string): readonly string[] {
  return many ? text.split(',').map((piece) => piece.trim()) : [text.trim()];
}

/** A letter that is not the `e` of an exponent: the unit was typed along, and goes as it stands. */
function hasUnit(text: string): boolean {
  return /[\p{L}°%]/u.test(text.replace(/(\d)e(?=-?\d)/g, '$1'));
}

const NUMBER = '[-\\u2212]?[\\d.,\\s]*\\d(?:e-?\\d+)?';
const UNIT = '[A-Za-z°µμ%][A-Za-z0-9/°µμ%³²]*';
const DOUBT = '(?:±|\\+/?[-\\u2212])';
/** `180L+-3.2`, and `180 ± 3.2 L`. */
const UNIT_FIRST = new RegExp(`^(${NUMBER})\\s*(${UNIT})\\s*(?:${DOUBT}\\s*(${NUMBER}))?$`);
const UNIT_LAST = new RegExp(`^(${NUMBER})\\s*${DOUBT}\\s*(${NUMBER})\\s*(${UNIT})$`);

/** The unit that was typed along moves to where units stand; what this cannot read stays as it was typed. */
export function apart(field: ReckonField, typed: Typed): Typed {
  if (field.kind !== 'quantity') return typed;
  const pieces = piecesOf(field, typed.text).map(pieceApart);
  const [first] = pieces;
  if (first == null || pieces.some((piece) => piece?.unit !== first.unit)) return typed;
  if (!field.units.includes(first.unit)) return typed;
  return { text: pieces.map((piece) => piece?.text).join(', '), unit: first.unit };
}

function pieceApart(piece: string): { readonly text: string; readonly unit: string } | null {
  const first = UNIT_FIRST.exec(piece);
  const last = UNIT_LAST.exec(piece);
  const [value, doubt, name] =
    first === null ? [last?.[1], last?.[2], last?.[3]] : [first[1], first[3], first[2]];
  const unit = name === undefined ? undefined : findUnit(name);
  if (value === undefined || unit === undefined) return null;
  return { text: doubt === undefined ? value.trim() : `${value.trim()} ± ${doubt.trim()}`, unit: unit.name };
}
