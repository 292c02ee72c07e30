// The codes of what can be wrong with a card's file beyond its shape, and of why a card does not start.
import type { Finding } from '../../ground/units/index.ts';
import type { OutpostFindingCode } from '../outpost-finding.ts';
import type { FormulaFaultCode } from './formula/formula-fault.ts';

/** Faults of a file. */
type FileCode =
  | FormulaFaultCode
  | 'card-choice-keys'
  | 'card-input-needs'
  | 'card-expect-not-for-input'
  | 'card-act-form'
  | 'card-must-pass-cannot-fail'
  | 'card-must-pass-two-persons'
  | 'card-must-pass-missing'
  | 'card-hazard-missing'
  | 'card-hazard-unused'
  | 'card-hazard-number'
  | 'card-hazard-word'
  | 'card-rating-not-asked'
  | 'card-group-too-long'
  | 'card-flow-order'
  | 'card-post-needs';

/** Why a card that was read does not start. */
type StartCode =
  | 'card-choice-missing'
  | 'card-choice-unknown'
  | 'card-choice-kind'
  | 'card-choice-same'
  | 'card-form-not-there'
  | 'card-rating-missing'
  | 'card-must-pass-unknown'
  | 'card-condition-fails'
  | 'card-condition-unknown'
  | 'card-source-held'
  | 'card-source-unreleased'
  | 'card-grades-clash'
  | 'card-biocides-clash';

export type CardFindingCode = FileCode | StartCode;
/** A card is read like an outpost file and shares the faults of its text and shape. */
export type CardFinding = Finding<CardFindingCode | OutpostFindingCode>;
export type CardStartFinding = Finding<StartCode>;
export type CardStartCode = StartCode;
