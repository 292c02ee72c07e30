// Which dialog is open, and what it is about.
import type { HoldAct } from '../../desk/index.ts';
import type { BookLine, KeptSheet, SheetFigure } from '../../papers/index.ts';
import { store } from './store.ts';

export type HoldActName = HoldAct['act'];

export type OpenSheet =
  | { readonly kind: 'reckoned'; readonly figure: SheetFigure; readonly of: string; readonly text: string }
  | { readonly kind: 'drink' | 'day' | 'say' | 'time' | 'who' | 'keys' | 'device' | 'find' | 'close-day' }
  | { readonly kind: 'fill' | 'weigh' | 'gauge'; readonly store?: string }
  | { readonly kind: 'hookup' | 'empty' | 'full'; readonly store?: string }
  /** A kind of entry that has no sheet of its own, field by field. */
  | { readonly kind: 'told'; readonly entryKind: string; readonly store?: string }
  | { readonly kind: 'undo-entry'; readonly entry: string }
  | { readonly kind: 'correct' | 'undo-line'; readonly line: BookLine }
  /** A result that came, or a sample that was drawn; of a sample, a store or a point. */
  | { readonly kind: 'sample'; readonly of?: string; readonly drawn?: boolean }
  | {
      readonly kind: 'hold-act';
      readonly act: HoldActName;
      readonly hold?: string;
      readonly stores?: readonly string[];
      readonly sample?: string;
    }
  | { readonly kind: 'drank'; readonly hold: string }
  | { readonly kind: 'choose-limits'; readonly set?: string }
  | { readonly kind: 'type-limit'; readonly set: string; readonly row: string }
  | { readonly kind: 'label'; readonly store: string };

export const opened = store<OpenSheet | null>(null);

export function openSheet(sheet: OpenSheet): void {
  opened.set(sheet);
}

export function closeSheet(): void {
  opened.set(null);
}

/** Something that was entered here: the strip with Undo, and the key u for ten minutes. */
export interface Entered {
  readonly sheet: KeptSheet;
  readonly atMs: number;
}

/** All that was entered here since the page was opened and not undone here, the last one last. */
export const entered = store<readonly Entered[]>([]);
/** The strip about the last of them is in sight until it is closed. */
export const stripOpen = store<boolean>(false);
/** A short word for everybody: undone, closed, nothing to undo. */
export const told = store<string | null>(null);
/** When something was saved here last, on the clock of this device. */
export const savedAt = store<string | null>(null);
