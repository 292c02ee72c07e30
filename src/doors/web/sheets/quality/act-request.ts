// What each way out of a hold needs, and how it is asked of the desk.
import type { HoldAct } from '../../../../desk/index.ts';
import type { HoldActName } from '../../open.ts';

export interface Filled {
  readonly stores: readonly string[];
  readonly sample?: string;
  readonly until?: string;
  readonly reason?: string;
  readonly owner?: string;
  readonly grade?: string;
  readonly recipe?: string;
  readonly dose?: string;
  readonly parameter?: string;
}

/** A store that can be chosen, and what has to be known of it before. */
export interface Offered {
  readonly store: string;
  readonly note?: string;
}

export type ActField =
  | 'stores'
  | 'store'
  | 'sample'
  | 'until'
  | 'reason'
  | 'owner'
  | 'grade'
  | 'recipe'
  | 'dose'
  | 'parameter';

/** In the order in which they are asked. */
export const NEEDS: Readonly<Record<HoldActName, readonly ActField[]>> = {
  add: ['stores', 'sample', 'reason'],
  release: ['stores', 'until'],
  waive: ['stores', 'until', 'reason'],
  downgrade: ['store', 'grade'],
  treat: ['store', 'recipe', 'dose'],
  park: ['owner', 'until', 'reason'],
  aside: ['sample', 'parameter', 'reason'],
};

type Asked = Filled & { readonly hold: string | undefined };

const said = (value: string | undefined): string => value?.trim() ?? '';

/** Null: something that it needs is not said yet. */
export function actOf(act: HoldActName, asked: Asked): HoldAct | null {
  return MAKE[act](asked);
}

const MAKE: { readonly [Act in HoldActName]: (asked: Asked) => HoldAct | null } = {
  add: ({ stores, ...told }) => {
    const [sample, reason] = [said(told.sample), said(told.reason)];
    const why = optional('reason', reason);
    if (sample !== '') return { act: 'add', sample, ...why, ...(stores.length > 0 && { only: stores }) };
    return stores.length === 0 || reason === '' ? null : { act: 'add', stores, reason };
  },
  release: ({ stores, hold, until }) => {
    const of = [...(hold === undefined ? [] : [hold]), ...stores];
    return of.length === 0 ? null : { act: 'release', of, ...optional('until', until) };
  },
  waive: ({ stores, hold, ...told }) => {
    const [until, reason] = [said(told.until), said(told.reason)];
    if (hold === undefined || until === '' || reason === '') return null;
    return { act: 'waive', hold, reason, until, ...(stores.length > 0 && { stores }) };
  },
  downgrade: ({ stores: [store], hold, grade }) =>
    store === undefined
      ? null
      : { act: 'downgrade', store, ...optional('hold', hold), ...optional('grade', grade) },
  treat: ({ stores: [store], recipe, dose }) =>
    store === undefined
      ? null
      : { act: 'treat', store, ...optional('recipe', recipe), ...optional('dose', dose) },
  park: ({ hold, reason, ...told }) => {
    const [owner, until] = [said(told.owner), said(told.until)];
    if (hold === undefined || owner === '' || until === '') return null;
    return { act: 'park', hold, owner, until, ...optional('reason', reason) };
  },
  aside: ({ parameter, ...told }) => {
    const [sample, reason] = [said(told.sample), said(told.reason)];
    if (sample === '' || reason === '') return null;
    return { act: 'aside', sample, reason, ...optional('parameter', parameter) };
  },
};

function optional<Name extends string>(
  name: Name,
  value: string | undefined,
): { readonly [K in Name]?: string } {
  return (said(value) === '' ? {} : { [name]: said(value) }) as { readonly [K in Name]?: string };
}
