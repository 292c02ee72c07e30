// The dose that would bring a store back to what its grade is dosed to: the calculator of doses, filled from the book.
import { type BiocideState, biocideLimits, type Position, type StorePosition } from '../../account/index.ts';
import type { BiocideSheet, ReckonResult, RedoseSheet, SheetFigure } from '../../papers/index.ts';
import { reckon } from '../reckon/reckon.ts';
import { presentLevel } from './present-level.ts';

export function redoseOf(
  position: Position,
  store: StorePosition,
  state: BiocideState,
): Pick<BiocideSheet, 'redose' | 'noRedose'> {
  const none = (noRedose: BiocideSheet['noRedose']) => ({ redose: null, noRedose });
  const limits = biocideLimits(position.index, state.biocide, store.grade);
  if (limits.targetMgPerL === null) return none('no target');
  if (store.massMg <= store.facts.remainderMg) return none('nothing inside');
  const present = presentLevel(position.index, state);
  if (present !== null && present.mgPerL >= limits.targetMgPerL) return none('not needed');
  const answer = reckon(
    { what: 'dose', fields: { store: store.facts.id } },
    { position, runs: [], lastGauging: null, biocide: state },
  );
  if (!answer.ok) return none(answer.problem === 'refused' ? 'refused' : 'no concentrate told');
  const { results, cautions } = answer.value;
  const figure = (name: string): SheetFigure => figureOf(results, name);
  const redose: RedoseSheet = {
    volume: figure('stock-volume'),
    resulting: figure('resulting'),
    mostMgPerL: limits.doseMostMgPerL,
    assumesNothingLeft: present === null,
    cautions,
  };
  return { redose, noRedose: null };
}

function figureOf(results: readonly ReckonResult[], name: string): SheetFigure {
  const found = results.find((result) => result.name === name);
  if (found === undefined) throw new Error(`the calculator of doses gives no ${name}`);
  const { value, u95, unit, because } = found;
  return { value, u95, unit, because };
}
