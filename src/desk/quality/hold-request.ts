// What a person may ask about holds: setting one, and every way out of it.

/** A treatment by a recipe of the outpost; absent, the only recipe for water of the store's grade. */
export interface TreatRequest {
  readonly act: 'treat';
  readonly store: string;
  readonly recipe?: string;
  /** What is added, with its unit: `10mL`. */
  readonly dose?: string;
}

export type HoldAct =
  /** By stores with a reason, or by a sample's trace. */
  | {
      readonly act: 'add';
      readonly stores?: readonly string[];
      readonly conditional?: readonly string[];
      readonly sample?: string;
      /** Of what a trace proposes, only these. */
      readonly only?: readonly string[];
      readonly reason?: string;
      readonly name?: string;
    }
  /** A hold and stores of it (none: all that are on it); or stores that wait for their first release. */
  | {
      readonly act: 'release';
      readonly of: readonly string[];
      readonly samples?: readonly string[];
      readonly until?: string;
    }
  | {
      readonly act: 'waive';
      readonly hold: string;
      readonly stores?: readonly string[];
      readonly reason: string;
      readonly until: string;
    }
  | { readonly act: 'downgrade'; readonly hold?: string; readonly store: string; readonly grade?: string }
  | TreatRequest
  | {
      readonly act: 'park';
      readonly hold: string;
      readonly owner: string;
      readonly until: string;
      readonly reason?: string;
    }
  | {
      readonly act: 'aside';
      readonly sample: string;
      readonly parameter?: string;
      readonly reason: string;
    };
