// What happened to water and to what is known of it, one step after another: the memory that traces are read from.
import type { Kind } from '../../book/index.ts';

/** Place of an account in the list of a history. */
export type AccountAt = number;

interface Moment {
  readonly atMs: number;
  readonly entry: string;
}

/** Water moved. A negative amount takes back what was posted too much before. */
export interface FlowStep extends Moment {
  readonly what: 'flow';
  readonly from: AccountAt;
  readonly to: AccountAt;
  readonly massMg: number;
  /** Contents as they were believed just before. */
  readonly fromHeldMg: number;
  readonly toHeldMg: number;
  /** The receiving store stood at its usable remainder or below: a new filling begins. */
  readonly begins: boolean;
  readonly kind: Kind;
  readonly hose: string | null;
  /** Who drank or used it, where that is said: only drinks carry it on. */
  readonly person: string | null;
}

/** A content was told: by an opening, by a delivery, by a store that came aboard. */
export interface ToldStep extends Moment {
  readonly what: 'told';
  readonly account: AccountAt;
  readonly heldMg: number;
  readonly massMg: number;
  readonly kind: Kind;
  readonly visit: string | null;
}

export interface SampleStep extends Moment {
  readonly what: 'sample';
  readonly account: AccountAt;
  readonly sample: string;
  /** False: drawn somewhere on the way into the store, so that it speaks of what came and not of what was there. */
  readonly fromContents: boolean;
}

export interface ResultStep extends Moment {
  readonly what: 'result';
  readonly sample: string;
  /** The store that the result itself names. */
  readonly account: AccountAt | null;
}

/** The medic's release. */
export interface ReleaseStep extends Moment {
  readonly what: 'release';
  readonly accounts: readonly AccountAt[];
}

/** A dose or a treatment: by itself it clears nothing, a release after it does. */
export interface TreatedStep extends Moment {
  readonly what: 'treated';
  readonly accounts: readonly AccountAt[];
}

/** A port changed hands. */
export interface PortStep extends Moment {
  readonly what: 'port';
  readonly port: string;
  readonly account: AccountAt | null;
}

export type Step = FlowStep | ToldStep | SampleStep | ResultStep | ReleaseStep | TreatedStep | PortStep;

export interface TracedAccount {
  /** Stores and hoses hold water; what goes into a pool mixes with nothing that comes out again. */
  readonly kind: 'store' | 'hose' | 'pool';
  /** Id of the store, name of the run whose hose it is, name of the pool. */
  readonly name: string;
}

/** A store as it stands at the end of a history. */
export interface TracedStore {
  readonly aboard: boolean;
  readonly reserve: boolean;
  readonly waste: boolean;
  readonly grade: string | null;
}

/** Where the water of a unit is: what it feeds if that is a store, else what feeds it. */
export type UnitWater = { readonly store: string } | { readonly port: string };

export interface WaterHistory {
  readonly steps: readonly Step[];
  readonly accounts: readonly TracedAccount[];
  /** Contents at the end, by the place of the account; those of a position. */
  readonly heldMg: readonly number[];
  readonly stores: ReadonlyMap<string, TracedStore>;
  readonly units: ReadonlyMap<string, readonly UnitWater[]>;
}

/** Place of a store in a history, or −1. */
export function placeOfStore({ accounts }: Pick<WaterHistory, 'accounts'>, store: string): AccountAt {
  return accounts.findIndex(({ kind, name }) => kind === 'store' && name === store);
}
