// What one line of a table comes to: requests that make its entries, or the reasons why it waits.
import type { FindingData, Instant } from '../../ground/units/index.ts';
import type { PlainRequest } from '../log/make.ts';
import type { CellFault } from './cell-number.ts';
import type { Role } from './meaning.ts';
import type { Sheet } from './sheet.ts';
import type { TableRow } from './table.ts';

/** Why a line waits; the column counts from 1 and is absent where the whole line is meant. */
export interface RowFault {
  readonly code: string;
  readonly column: number | null;
  readonly data: FindingData;
}

/** A bare number as it would be in a unit, beside what the store can hold. */
export interface Possible {
  readonly received: string;
  readonly unit: string;
  readonly massMg: number;
  readonly store?: string;
  readonly capacityMg?: number;
}

export interface RowRequest {
  readonly request: PlainRequest;
  readonly happened: Instant;
  /** Fields that the request has no word for, put into the body as they are. */
  readonly beside: Readonly<Record<string, string>>;
}

const NONE: readonly never[] = [];

/** Collects what is understood of a line, and every fault of it. */
export class RowReading {
  readonly sheet: Sheet;
  readonly row: TableRow;
  /** Most lines have none of these, or one: lists are made when something is put into them. */
  faults: readonly RowFault[] = NONE;
  possible: readonly Possible[] = NONE;
  requests: readonly RowRequest[] = NONE;
  /** The date of a line that does not write its year, for telling it from the same line of another year. */
  writtenDays: number | null = null;
  /** The date as it is written, as days since 1970-01-01. */
  days: number | null = null;
  /** What is noted beside it, and the office that says so, where the line names one. */
  note: string | undefined;
  /** It has happened, whatever speaks against it: what only looks wrong is not said. */
  isFact = false;
  office: string | undefined;

  constructor(sheet: Sheet, row: TableRow) {
    this.sheet = sheet;
    this.row = row;
  }

  cell(column: number): string {
    return column < 0 ? '' : (this.row.cells[column] ?? '');
  }

  of(role: Role): string {
    return this.cell(this.sheet.at[role]);
  }

  say(code: string, column: number, data: FindingData = {}): void {
    this.faults = [...this.faults, { code, column: column < 0 ? null : column + 1, data }];
  }

  ask(request: RowRequest): void {
    this.requests = [...this.requests, request];
  }

  sayFault(fault: CellFault, column: number): void {
    this.say(fault.code, column, fault.data);
  }

  sayMissing(role: Role, means: string = role): void {
    this.say('cell-missing', this.sheet.at[role], { means });
  }
}
