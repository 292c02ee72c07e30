// What a look ahead into an act on holds says against it: results that do not prove, a recipe that is not for this water, a grade that goes up.
import type { AccountFinding } from '../../account/index.ts';
import type { Finding, FindingData } from '../../ground/units/index.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Ahead } from '../log/keep-together.ts';

/** The account keeps such an entry as a fact and says so; before the act it is a refusal with the way out. */
export function refusals({ fold, entries }: Ahead, act: string): readonly Finding[] {
  const ids = new Set(entries.map(({ id }) => id));
  const own = fold.findings.filter(({ where }) => ids.has(where.entry ?? ''));
  return [...unproven(own), ...own.flatMap((finding) => refusalOf(finding, act))];
}

/** One refusal with the reasons of every store. */
function unproven(own: readonly AccountFinding[]): readonly Finding[] {
  const found = own.filter(({ code }) => code === 'release-unproven');
  if (found.length === 0) return [];
  const listIn = (data: FindingData, key: string) => (data[key] as readonly string[] | undefined) ?? [];
  const stores = found.flatMap(({ data }) => listIn(data, 'stores'));
  const reasons = found.flatMap(({ data }) =>
    listIn(data, 'stores').flatMap((store) => listIn(data, 'reasons').map((reason) => `${store}: ${reason}`)),
  );
  return [deskFinding('intention-refused', { rule: 'release', stores, reasons })];
}

function refusalOf({ code, data, where }: AccountFinding, act: string): readonly Finding[] {
  const store = where.store ?? '';
  switch (code) {
    case 'treatment-not-allowed': {
      const { recipe, why, neverHeld } = data;
      return [
        deskFinding('intention-refused', { rule: 'treatment', store, recipe, why, neverHeld } as FindingData),
      ];
    }
    case 'grade-went-up': {
      const { fromGrade, toGrade } = data;
      return act === 'downgrade'
        ? [deskFinding('intention-refused', { rule: 'grade-up', store, fromGrade, toGrade } as FindingData)]
        : [];
    }
    case 'biocides-meet': {
      const { from, to, comes, meets, residue } = data;
      return [
        deskFinding('intention-refused', { rule: 'biocide', from, to, comes, meets, residue } as FindingData),
      ];
    }
    default:
      return [];
  }
}
