// What a line tells of a store, against what the outpost file says, and as the book keeps a store that comes aboard.
import type { Body } from '../../../book/index.ts';
import type { Store } from '../../../outpost/index.ts';
import type { LineAt } from './line-at.ts';

/** The part that an opening, a berthing and a docking have in common. */
export interface ToldStore {
  readonly id: string;
  readonly capacity_L: number;
  readonly residual_L: number;
  readonly fill_L?: number;
  readonly full_at_L?: number;
  readonly waste_limit_L?: number;
  readonly grade: string;
  readonly litres: number;
  readonly sd_L: number;
  readonly loaded_mass_kg?: number | null;
}

const TWINS = [
  ['capacity_L', 'capacityL'],
  ['residual_L', 'usableRemainderL'],
  ['fill_L', 'fillL'],
  ['full_at_L', 'fullAtL'],
  ['waste_limit_L', 'wasteLimitL'],
] as const satisfies readonly (readonly [keyof ToldStore, keyof Store])[];

/** The account reckons with the outpost file; where the line says otherwise somebody has to look. */
export function compareWithFile(told: ToldStore, field: string, at: LineAt): void {
  const written = at.index.stores.get(told.id);
  if (written === undefined) return;
  for (const [logField, fileKey] of TWINS) {
    const said = told[logField];
    if (said === undefined || said === written[fileKey]) continue;
    const data = { store: told.id, said, written: written[fileKey] ?? null, key: fileKey };
    at.say('log-store-differs', `${field}.${logField}`, data, 'know');
  }
}

type NewStore = Body<'visit-berth'>['stores'][number];

/**
 * A store that comes aboard. Its kind is that of the outpost file; of one that the file does not name, `otherwise`.
 */
export function broughtStore(told: ToldStore, field: string, at: LineAt, otherwise: Store['kind']): NewStore {
  compareWithFile(told, field, at);
  return {
    store: told.id,
    kind: at.index.stores.get(told.id)?.kind ?? otherwise,
    capacityL: told.capacity_L,
    usableRemainderL: told.residual_L,
    ...(told.fill_L !== undefined && { fillL: told.fill_L }),
    ...(told.waste_limit_L !== undefined && { wasteLimitL: told.waste_limit_L }),
    grade: at.gradeOrNone(told.grade, `${field}.grade`),
    amount: at.amounts.litres(told.litres, told.sd_L),
    ...(told.loaded_mass_kg != null && { loadedMassMg: at.amounts.mgOfKilograms(told.loaded_mass_kg) }),
  };
}
