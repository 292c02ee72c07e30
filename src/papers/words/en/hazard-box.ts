// A hazard box in English: its word, its text, the figures of the outpost or a line to write them on, and whom it gives way to.
import { unitSign } from '../../../ground/units/index.ts';
import type { FilledHazard } from '../../../outpost/index.ts';

/** Every box ends with it. */
export const BOX_GIVES_WAY = 'The rules of the outpost, the maker’s limits and the medic come first.';

/** Line by line, the signal word first. */
export function hazardBox({ hazard, limits }: FilledHazard): readonly string[] {
  const figures = limits.map(({ what, figure }) => {
    const value = figure === null ? '____' : `${figure.value} ${unitSign(figure.unit)}`;
    return `${what}: limit of this outpost: ${value}`;
  });
  return [hazard.word, hazard.text, ...figures, BOX_GIVES_WAY];
}
