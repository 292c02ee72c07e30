// Table of sets, choices and typed limits with one fault each.
import {
  chosenRows,
  type LimitChoice,
  type LimitFindingCode,
  type LimitSet,
  readLimitSet,
  switchedOn,
  type TypedLimit,
} from '../../../src/outpost/index.ts';
import { changedLimits, SMALL_LIMIT_SET } from '../../outpost/small-limit-set.ts';
import { changedLines } from './changed-lines.ts';
import { failure, type Samples, sample } from './sample.ts';

const FILE = { file: 'limits.yaml' };

function small(): LimitSet {
  const read = readLimitSet(SMALL_LIMIT_SET, FILE);
  if (!read.ok) throw new Error('the small set of limits is at fault');
  return read.set;
}

const file = (from: string, to: string) => () => {
  const text = changedLimits(from, to);
  return failure(changedLines(SMALL_LIMIT_SET, text), readLimitSet(text, FILE).findings[0]);
};

const choice = (asked: LimitChoice) => () => {
  const chosen = chosenRows(small(), asked);
  const rows = asked.rows === undefined ? '' : `, rows ${asked.rows.join(', ')}`;
  return failure(
    [`for ${asked.use}, ${asked.exposureDays} days${rows}`],
    chosen.ok ? undefined : chosen.findings[0],
  );
};

const TYPED: TypedLimit = {
  atMost: 70,
  unit: 'µg/L',
  basis: 'as itself',
  by: 'medic',
  copy: 'edition 3, page 4',
  atMs: 0,
};

const typed =
  (change: Partial<TypedLimit>, id = 'nickel 10 d') =>
  () => {
    const row = small().rows.find((each) => each.id === id);
    if (row === undefined) throw new Error(`the small set has no row ${id}`);
    const { atMost, ...rest } = { ...TYPED, ...change };
    const asked = Number.isNaN(atMost) ? rest : { ...rest, ...(atMost !== undefined && { atMost }) };
    const on = switchedOn(row, asked);
    const limit = Number.isNaN(atMost) ? 'nothing' : `at most ${atMost} ${rest.unit} ${rest.basis}`;
    return failure(
      [`${id}: ${limit}, typed by "${rest.by}" from "${rest.copy}"`],
      on.ok ? undefined : on.findings[0],
    );
  };

export const limitSamples: Samples<LimitFindingCode> = {
  'row-from-memory-in-force': sample(
    'A figure that somebody remembered is switched on.',
    file('    status: off', '    status: on'),
  ),
  'row-remembered-not-memory': sample(
    'A row that was seen has its figure where only remembered ones stand.',
    file('    atMost: 20\n', '    remembered: { atMost: 20 }\n'),
  ),
  'row-without-figure': sample(
    'A row says neither at most nor at least.',
    file('    atLeast: 0.02\n    atMost: 0.1\n', ''),
  ),
  'row-unit-and-basis': sample(
    'A row is told on a basis that means nothing in its unit.',
    file('    basis: as itself', '    basis: grown at 22 °C'),
  ),
  'limit-row-unknown': sample(
    'A choice requires a row that the set does not have.',
    choice({ use: 'drink', exposureDays: 5, rows: ['silver rang'] }),
  ),
  'limit-use-unknown': sample(
    'A set is chosen for a use that it was not made for.',
    choice({ use: 'electrolyser', exposureDays: 5 }),
  ),
  'limit-exposure-uncovered': sample(
    'The water will be drunk for longer than any row of the parameter holds.',
    choice({ use: 'drink', exposureDays: 200 }),
  ),
  'typed-limit-not-off': sample('A value is typed for a row in force.', typed({}, 'nickel 100 d')),
  'typed-limit-side': sample('A side of the limit was not typed.', typed({ atMost: Number.NaN })),
  'typed-limit-unit': sample(
    'The unit or the basis of what was typed does not measure the same.',
    typed({ unit: 'CFU/mL' }),
  ),
  'typed-limit-range': sample('A figure that no water can have.', typed({ atMost: 1e12 })),
  'typed-limit-copy': sample('Nobody said from which copy.', typed({ copy: ' ' })),
};
