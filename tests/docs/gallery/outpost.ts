// Table of outpost files with one fault each: when every finding about such a file comes.
import { type OutpostFindingCode, readOutpost } from '../../../src/outpost/index.ts';
import { FAILING_SAMPLES } from '../../outpost/failing-samples.ts';
import { SMALL_OUTPOST } from '../../outpost/small-outpost.ts';
import { changedLines } from './changed-lines.ts';
import { failure, type Sample, type Samples, sample } from './sample.ts';

const WHEN: Readonly<Record<OutpostFindingCode, string>> = {
  'file-too-large': 'The file is larger than any outpost file can be.',
  'file-control-sign':
    'A sign that nobody sees stands in the file, here one that turns the direction of writing.',
  'file-too-many-parts': 'More keys and values than an outpost file can have.',
  'file-too-deep': 'Sections or brackets nest deeper than any outpost file needs.',
  'file-scalar-too-long': 'One text is far too long; often a quote was not closed.',
  'yaml-alias': 'An anchor or an alias of YAML.',
  'yaml-tag': 'A tag of YAML.',
  'yaml-directive': 'A line that begins with %.',
  'yaml-merge-key': 'The merge key of older YAML.',
  'yaml-more-than-one-document': 'A second document follows in the same file.',
  'yaml-duplicate-key': 'One key twice in one section: which of them counts would be a guess.',
  'yaml-tab-indent': 'A line is indented with a tab.',
  'yaml-broken': 'Quotes, brackets, colons or indents do not fit together.',
  'file-empty': 'Nothing is in the file.',
  'key-forbidden': 'A key that has a meaning for programs.',
  'key-not-text': 'A key that is no text.',
  'number-not-finite': 'A number without an end, or none at all.',
  'number-spelling': 'A number that programs read in different ways.',
  'key-unknown': 'A key that this section does not have, often a slip of the pen.',
  'key-missing': 'A key without which the section says too little.',
  'value-wrong-kind': 'A text where a number belongs, a list where a text belongs, and the like.',
  'value-not-in-list': 'A word that is none of those that may stand here.',
  'value-out-of-range': 'A figure that cannot be.',
  'value-wrong-form': 'A text that does not have the form of its field.',
  'list-too-short': 'A list with fewer items than it needs.',
  'flow-end-unclear': 'An end of a way of water that is two places at once, or none.',
  'id-twice': 'Two things of one sort with the same id, capitals or not.',
  'id-unknown': 'A key names something that is not in the file.',
  'store-id-or-ids': 'A group of stores has both id and ids, or neither.',
  'store-needs-key': 'A store of this kind, or gauged in this way, needs one more key.',
  'store-key-not-for-kind': 'A key that means nothing for a store of this kind.',
  'amount-order': 'Two amounts stand in an order that cannot be, such as a fill above the capacity.',
  'floor-over-reserve': 'The floor of the reserve is higher than what the reserve can give.',
  'reserve-not-marked': 'The policy counts a store as reserve that is not marked as one.',
  'reserve-not-counted': 'A store is marked as reserve and the policy does not count it.',
  'gauge-measures-other': 'A store is gauged by an instrument that does not measure content.',
  'sum-differs': 'A figure that is the sum or the product of others, and is not.',
  'date-not-real': 'A day that is not in the calendar.',
  'limit-without-figure': 'A limit says neither at most nor at least.',
  'limit-from-memory-on': 'A limit that was written down from memory is switched on.',
  'table-not-rising': 'A gauge table that does not rise from row to row.',
  'instrument-needs-key': 'An instrument of this kind needs one more key.',
  'route-twice': 'An instrument has a way of its own although the unit that it meters has one.',
  'grade-flow-uphill': 'Water of a lower grade may flow into a higher one.',
  'biocides-flow-together': 'Two grades may flow together whose biocides must not meet.',
  'rating-order': 'A coupling or a hose is rated below what it may be pushed with.',
  'findings-cut': 'More findings than help anybody: the last one says that there are more.',
};

/** The finding that the file was made for; the last one where it earns many. */
function failing(code: OutpostFindingCode): Sample {
  return sample(WHEN[code], () => {
    const text = FAILING_SAMPLES[code];
    const { findings } = readOutpost(text, { file: 'outpost.yaml' });
    return failure(
      changedLines(SMALL_OUTPOST, text),
      findings.findLast((each) => each.code === code),
    );
  });
}

const codes = Object.keys(WHEN) as OutpostFindingCode[];

export const outpostSamples = Object.fromEntries(
  codes.map((code) => [code, failing(code)]),
) as Samples<OutpostFindingCode>;
