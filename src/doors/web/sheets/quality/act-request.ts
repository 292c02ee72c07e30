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

export type ActField = 'stores' | 'store' | 'sample' | 'until' | 'reason' | 'owner' | 'grade' | 'recipe' | 'dose' | 'parameter';

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

/** Null: something that it needs is not said yet. */
export function actOf(act: HoldActName, filled: Filled & { readonly hold: string | undefined }): HoldAct | null {
  const { stores, hold } = filled;
  const text = (value: string | undefined) => value?.trim() ?? '';
  const [until, reason, sample] = [text(filled.until), text(filled.reason), text(filled.sample)];
  const [first] = stores;
  switch (act) {
    case 'add':
      if (sample !== '') return { act, sample, ...(stores.length > 0 && { only: stores }), ...(reason !== '' && { reason }) };
      return stores.length === 0 || reason === '' ? null : { act, stores, reason };
    case 'release': {
      const of = [...(hold === undefined ? [] : [hold]), ...stores];
      return of.length === 0 ? null : { act, of, ...(until !== '' && { until }) };
    }
    case 'waive':
      if (hold === undefined || until === '' || reason === '') return null;
      return { act, hold, reason, until, ...(stores.length > 0 && { stores }) };
    case 'downgrade':
      if (first === undefined) return null;
      return { act, store: first, ...(hold !== undefined && { hold }), ...optional('grade', filled.grade) };
    case 'treat':
      if (first === undefined) return null;
      return { act, store: first, ...optional('recipe', filled.recipe), ...optional('dose', filled.dose) };
    case 'park':
      if (hold === undefined || text(filled.owner) === '' || until === '') return null;
      return { act, hold, owner: text(filled.owner), until, ...(reason !== '' && { reason }) };
    case 'aside':
      if (sample === '' || reason === '') return null;
      return { act, sample, reason, ...optional('parameter', filled.parameter) };
  }
}

function optional<Name extends string>(name: Name, value: string | undefined): { readonly [K in Name]?: string } {
  const said = value?.trim() ?? '';
  return (said === '' ? {} : { [name]: said }) as { readonly [K in Name]?: string };
}
