// English for what the desk finds about beds and about figures of one sample.
import { formatFigure } from '../../../ground/units/index.ts';
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Words } from '../shape.ts';
import { numberOf, textOf } from './data.ts';
import { saidValueAt } from './said.ts';
import { say } from './say.ts';

export const bedFindingWords = {
  'no-beds': () =>
    say(
      'The outpost file tells of no purifier with beds.',
      'a unit of the kind purifier with its section beds',
      'none',
      'Add positions, nominalL, capacityDoubtL and leadThroughputOnDayOneL as docs/outpost-file.md shows, and put the file into the book: waterwright book outpost FILE.',
    ),
  'figures-contradict': (data) => {
    const unit = textOf(data, 'unit');
    const [measured, expected] = [numberOf(data, 'measured'), numberOf(data, 'expected')];
    const difference = { value: measured - expected, u95: numberOf(data, 'u95'), unit };
    const said = formatFigure(difference, { style: 'screen' });
    const shown = saidValueAt(measured, 0, unit);
    const isHardness = textOf(data, 'of') === 'hardness';
    const by = isHardness ? 'its calcium and magnesium' : 'its ions';
    const least = data['isWhole'] === true ? '' : ' at the least';
    return say(
      `Figures of sample ${textOf(data, 'sample')} (${textOf(data, 'place')}) contradict one another: ${textOf(data, 'of')} ${shown}, by ${by} ${saidValueAt(expected, 0, unit)}${least}; the difference is ${said}.`,
      `${saidValueAt(expected, 0, unit)}${least === '' ? '' : ' or more'}`,
      shown,
      'Read the sample again. If both stand, look at the unit of each figure, at a mineral dose that was missed or doubled, and at the meter.',
    );
  },
} satisfies Partial<Words<DeskFindingCode>>;
