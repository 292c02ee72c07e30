// A fault in a formula: what it is, and in which column of the formula, counted from 1.
import type { FindingData } from '../../../ground/units/index.ts';

export type FormulaFaultCode =
  | 'formula-too-long'
  | 'formula-too-deep'
  | 'formula-sign-unknown'
  | 'formula-unit-unknown'
  | 'formula-unexpected'
  | 'formula-name-unknown'
  | 'formula-name-too-early'
  | 'formula-function-unknown'
  | 'formula-arguments'
  | 'formula-dimension'
  | 'formula-point'
  | 'formula-result';

export interface FormulaFault {
  readonly code: FormulaFaultCode;
  readonly column: number;
  readonly data: FindingData;
}

/** Thrown inside the reader of formulas and caught at its door, so that the grammar reads like a grammar. */
export class FaultInFormula extends Error {
  readonly fault: FormulaFault;

  constructor(code: FormulaFaultCode, column: number, data: FindingData = {}) {
    super(code);
    this.fault = { code, column, data };
  }
}
