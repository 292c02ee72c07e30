// What a paper is before it is put on paper: a title, parts in their order, and the foot that says from which book it came.
import type { SheetFigure } from '../sheets/figure.ts';
import type { SheetHead } from '../sheets/today.ts';

/** The state of the book that a paper was made from. */
export interface BookSeal {
  /** Entries that are kept; those that the paper looked at stand in its head. */
  readonly kept: number;
  /** `corrie 104`: the last entry of each site. */
  readonly last: readonly string[];
  /** One digest for the whole book. */
  readonly digest: string;
}

/** A value as somebody told it: no ± is known of it, and what is censored stays so. */
export interface ToldCell {
  readonly told: number;
  readonly censored: 'no' | 'below' | 'above';
}

/** `null` is a place to write on. */
export type DocumentCell = string | SheetFigure | ToldCell | null;

export interface DocumentColumn {
  readonly head: string;
  /** Name in a table for spreadsheets, without its unit. */
  readonly key: string;
  /** The one unit of its figures. */
  readonly unit?: string;
  /** Figures stand on their decimal points, texts to the left. */
  readonly align: 'left' | 'figure';
  /** A text for which the column may be narrowed to so many signs. */
  readonly least?: number;
}

export interface DocumentTable {
  readonly part: 'table';
  /** What a file of it is called. */
  readonly name: string;
  readonly columns: readonly DocumentColumn[];
  readonly rows: readonly (readonly DocumentCell[])[];
  /** Said in its place where it has no row. */
  readonly empty: string;
}

/** A hazard box cannot stand alone: it has the step that it belongs to. */
export interface DocumentHazard {
  readonly part: 'hazard';
  /** WARNING: grave injury. CAUTION: slight injury. NOTICE: equipment. */
  readonly signal: 'WARNING' | 'CAUTION' | 'NOTICE';
  readonly text: string;
  readonly step: readonly [DocumentPart, ...DocumentPart[]];
}

export type DocumentPart =
  | { readonly part: 'verdict'; readonly word: string; readonly text: string }
  | { readonly part: 'heading'; readonly text: string }
  | { readonly part: 'text'; readonly text: string }
  | { readonly part: 'list'; readonly items: readonly string[] }
  | { readonly part: 'facts'; readonly facts: readonly { readonly name: string; readonly said: string }[] }
  | {
      readonly part: 'tree';
      /** Depth 0 is a root; each node stands under the one that it came from. */
      readonly nodes: readonly { readonly depth: number; readonly text: string }[];
    }
  | DocumentTable
  | DocumentHazard
  | {
      readonly part: 'drawing';
      /** SVG of our own making, its texts escaped. */
      readonly svg: string;
      /** The same in words, where no picture can be shown. */
      readonly says: string;
    }
  | { readonly part: 'lines'; readonly label: string; readonly count: number }
  | { readonly part: 'ticks'; readonly items: readonly string[] }
  | {
      readonly part: 'signatures';
      readonly people: readonly { readonly office: string; readonly says: string }[];
    };

export interface PaperDocument {
  /** Its name by `report list`, and what it is of. */
  readonly paper: string;
  readonly of: string;
  readonly language: 'en';
  readonly title: string;
  /** Printed across the page: a picture needs the room for its letters. */
  readonly isWide: boolean;
  readonly head: SheetHead;
  readonly book: BookSeal;
  readonly parts: readonly DocumentPart[];
}

/** All parts with those inside hazard boxes, in the order in which they are read. */
export function partsOf(parts: readonly DocumentPart[]): readonly DocumentPart[] {
  return parts.flatMap((part) => (part.part === 'hazard' ? [part, ...partsOf(part.step)] : [part]));
}

/** A table without the columns that have nothing in any row; a place to write on is something. */
export function used(table: DocumentTable): DocumentTable {
  const { columns, rows } = table;
  const isUsed = columns.map((_, k) => rows.length === 0 || rows.some((row) => row[k] !== ''));
  const of = <T>(cells: readonly T[]) => cells.filter((_, k) => isUsed[k] === true);
  return { ...table, columns: of(columns), rows: rows.map(of) };
}

export function tablesOf({ parts }: Pick<PaperDocument, 'parts'>): readonly DocumentTable[] {
  return partsOf(parts).flatMap((part) => (part.part === 'table' ? [part] : []));
}
