// English for what can be wrong with an outpost file.
import type { FindingData, Where } from '../../../ground/units/index.ts';
import type { OutpostFindingCode } from '../../../outpost/index.ts';
import type { Sentences, Words } from '../shape.ts';

const quoted = (value: FindingData[string] | undefined): string => `"${value ?? ''}"`;
const list = (value: FindingData[string] | undefined): readonly string[] =>
  Array.isArray(value) ? value : [];

/** `a`, `a or b`, `a, b or c`; a long list is cut, so that a sentence stays one. */
function anyOf(names: readonly string[], most = 12): string {
  if (names.length > most) return `${names.slice(0, most).join(', ')} … (${names.length} in all)`;
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}

const allOf = (names: readonly string[]): string => anyOf(names, 1000).replace(/ or ([^,]*)$/, ' and $1');

/** `Did you mean capacityL?`, or what else can be done. */
const meant = (near: readonly string[], otherwise: string): string =>
  near.length === 0 ? otherwise : `Did you mean ${anyOf(near)}?`;

const field = (where: Where): string => where.field ?? 'the file';

function say(text: string, expected: string, received: string, remedy: string): Sentences {
  return { text, expected, received, remedy };
}

/** Sums and amounts as a person would write them: no long tail of binary digits. */
function figure(value: FindingData[string] | undefined): string {
  if (typeof value !== 'number') return `${value ?? ''}`;
  return `${Math.round(value * 1e6) / 1e6}`;
}

const KINDS: Readonly<Record<string, string>> = {
  text: 'a text',
  number: 'a number',
  'whole-number': 'a whole number',
  'yes-no': 'true or false',
  list: 'a list',
  section: 'a section of keys',
  nothing: 'nothing',
};
const kind = (value: FindingData[string] | undefined): string => KINDS[`${value}`] ?? `${value}`;

const FORMS: Readonly<Record<string, string>> = {
  id: 'an id of up to 60 letters, digits, spaces and . _ / + - between them',
  date: 'a date such as 2147-03-01',
  'clock-time': "a time of day such as '21:00'",
  'clock-offset': "a clock offset such as '+05:30'",
  letter: 'one capital letter',
  'log-field': 'the name of a field, letters, digits and _ only',
  'formula-name': 'a name of small letters, digits and _ that begins with a letter',
  length: 'a text of 1 to 600 signs',
};

const NAMES: Readonly<Record<string, string>> = {
  normFlow: 'unmeasured flow',
  service: 'service interval',
  logField: 'field of the log',
  logMethod: 'method of the log',
  reserve: 'store counted as reserve',
};
const name = (value: FindingData[string] | undefined): string => NAMES[`${value}`] ?? `${value}`;

const YAML_REASONS: Readonly<Record<string, string>> = {
  BAD_DQ_ESCAPE: 'a backslash in double quotes starts something that YAML does not know',
  BAD_INDENT: 'the indent does not fit the lines around it, or a bracket is not closed',
  BAD_SCALAR_START: 'a text starts with a sign that YAML keeps for itself',
  BLOCK_AS_IMPLICIT_KEY: 'there are two colons on a line where one belongs',
  BLOCK_IN_FLOW: 'a comma is missing between brackets',
  KEY_OVER_1024_CHARS: 'a key is too long',
  MISSING_CHAR: 'a quote, a bracket, a comma, a colon or a space is missing',
  MULTILINE_IMPLICIT_KEY: 'a key runs over the end of its line',
  UNEXPECTED_TOKEN: 'something stands where nothing belongs, often after a quote that closed too early',
};

const textWords = {
  'file-too-large': (data) =>
    say(
      'The file is too large.',
      `at most ${data['greatestBytes']} bytes`,
      `${data['sizeBytes']} bytes`,
      'Check that this is the right file.',
    ),
  'file-control-sign': (data) =>
    say(
      `The file holds a sign that cannot be seen or that turns the direction of writing, ${data['sign']}.`,
      'plain text in UTF-8',
      `${data['sign']}`,
      'Delete the sign, or save the file again as plain UTF-8 text.',
    ),
  'file-too-many-parts': (data) =>
    say(
      'The file has too many parts.',
      `at most ${data['greatest']} keys, values and marks`,
      'more',
      'Check that this is the right file.',
    ),
  'file-too-deep': (data) =>
    say(
      'The file nests too deeply here.',
      `at most ${data['greatest']} levels`,
      'more',
      'Close the brackets, or check the indents.',
    ),
  'file-scalar-too-long': (data) =>
    say(
      'One text of the file is too long.',
      `at most ${data['greatest']} signs in a piece`,
      `${data['length']} signs`,
      'Shorten it, or look for a quote that is not closed.',
    ),
  'yaml-alias': (data) =>
    say(
      'The file uses an anchor or an alias of YAML.',
      'every value written out where it stands',
      quoted(data['written']),
      'Write the value out; stores alike are written once with ids: [C-01, C-02].',
    ),
  'yaml-tag': (data) =>
    say(
      'The file uses a tag of YAML.',
      'plain texts, numbers, true or false',
      quoted(data['written']),
      'Delete the tag; put quotes round a text that begins with an exclamation mark.',
    ),
  'yaml-directive': (data) =>
    say(
      'The file has a directive of YAML.',
      'no line that begins with %',
      quoted(data['written']),
      'Delete the line; the file is read as YAML 1.2.',
    ),
  'yaml-merge-key': () =>
    say(
      'The file uses the merge key <<.',
      'every key written out where it stands',
      '<<',
      'Write the keys out; stores alike are written once with ids: [C-01, C-02].',
    ),
  'yaml-more-than-one-document': () =>
    say(
      'The file holds more than one document.',
      'one document',
      'a second one after ---',
      'Keep one outpost in one file; delete the line --- and what follows.',
    ),
  'yaml-duplicate-key': (data, where) =>
    say(
      `The key ${data['key']} stands twice in ${field(where)}.`,
      'each key once',
      `${data['key']} again`,
      'Delete one of the two.',
    ),
  'yaml-tab-indent': () =>
    say(
      'The line is indented with a tab.',
      'spaces',
      'a tab',
      'Replace the tab by spaces, two for each level.',
    ),
  'yaml-broken': (data) =>
    say(
      `This is not YAML: ${YAML_REASONS[`${data['reason']}`] ?? 'its parts do not fit together'}.`,
      'YAML 1.2',
      quoted(data['written']),
      'Look at this line and the one before it: quotes, brackets, colons and indents.',
    ),
  'file-empty': () =>
    say(
      'The file is empty.',
      'an outpost, a set of limits, or a card',
      'nothing',
      'Start from a file that ships, such as examples/corrie/outpost.yaml.',
    ),
  'key-forbidden': (data) =>
    say(
      `The key ${data['key']} has a meaning for programs and is not taken.`,
      'keys that the file may have',
      quoted(data['key']),
      'Delete it or choose another name.',
    ),
  'key-not-text': (_data, where) =>
    say(
      `A key in ${field(where)} is not a text.`,
      'keys that the file may have',
      'a number, a list or nothing',
      'Put the key in quotes if it is meant, or look for a missing bracket.',
    ),
  'number-not-finite': (data, where) =>
    say(
      `${field(where)} is not a number that can be reckoned with.`,
      'a finite number',
      quoted(data['written']),
      'Write the figure, or leave the key out if it is not known.',
    ),
  'number-spelling': (data, where) =>
    say(
      `${field(where)} is a number that programs read in different ways.`,
      'a decimal number without leading zeros',
      quoted(data['written']),
      'Write it as a plain decimal number; put quotes round it if it is a text.',
    ),
} satisfies Partial<Words<OutpostFindingCode>>;

const shapeWords = {
  'key-unknown': (data, where) =>
    say(
      `The file has no key ${field(where)}.`,
      anyOf(list(data['known']), 40),
      quoted(data['key']),
      meant(list(data['near']), 'Delete it, or see docs/outpost-file.md for the keys of this section.'),
    ),
  'key-missing': (data, where) => {
    const allowed = list(data['allowed']);
    return say(
      `The key ${field(where)} is missing.`,
      allowed.length > 0 ? anyOf(allowed) : kind(data['kind']),
      'nothing',
      `Write ${data['key']}: and its value; a key with nothing after it counts as missing.`,
    );
  },
  'value-wrong-kind': (data, where) =>
    say(
      `${field(where)} is ${kind(data['receivedKind'])}; it must be ${kind(data['kind'])}.`,
      kind(data['kind']),
      quoted(data['received']),
      data['kind'] === 'number' || data['kind'] === 'whole-number'
        ? 'Write the figure without quotes, with a decimal point and without its unit: the unit stands in the key.'
        : `Write ${kind(data['kind'])}.`,
    ),
  'value-not-in-list': (data, where) =>
    say(
      `${field(where)} cannot be ${quoted(data['received'])}.`,
      anyOf(list(data['allowed']), 40),
      quoted(data['received']),
      meant(list(data['near']), `Write ${anyOf(list(data['allowed']), 40)}.`),
    ),
  'value-out-of-range': (data, where) => {
    const bound = `${data['inclusive'] === false ? (data['side'] === 'least' ? 'more than' : 'less than') : data['side'] === 'least' ? 'at least' : 'at most'} ${data['edge']}`;
    return say(
      `${field(where)} is out of range.`,
      bound,
      `${data['received']}`,
      'Check the figure and the unit that the key ends in.',
    );
  },
  'value-wrong-form': (data, where) =>
    say(
      `${field(where)} is not written as it should be.`,
      FORMS[`${data['form']}`] ?? 'another form',
      quoted(data['received']),
      `Write ${FORMS[`${data['form']}`] ?? 'it in that form'}.`,
    ),
  'list-too-short': (data, where) =>
    say(
      `${field(where)} has too few items.`,
      `at least ${data['edge']}`,
      `${data['received']}`,
      'Add what is missing, or delete the key.',
    ),
  'flow-end-unclear': (data, where) => {
    const has = list(data['has']);
    return say(
      `${field(where)} must say one place where water comes from or goes to.`,
      '{ store: … }, { port: … } or { pool: … }',
      has.length === 0 ? 'none of them' : allOf(has),
      'Keep one of store, port and pool.',
    );
  },
} satisfies Partial<Words<OutpostFindingCode>>;

const STORE_REASONS: Readonly<Record<string, string>> = {
  'waste-container': 'a waste container is declared full at a known amount',
  'full-at': 'a full store is a reading, and a reading has a doubt',
  'vehicle-tank': 'a vehicle tank comes and goes with its vehicle',
  'gas-injection': 'gas injection needs the volume of the tank',
  'dip-stick': 'a dip stick needs a table of depth and volume',
  gauged: 'its content is read by an instrument',
};
const INSTRUMENT_REASONS: Readonly<Record<string, string>> = {
  counted: 'it counts strokes or flushes, and a count is no amount',
  pressure: 'a pressure is absolute or over the cabin',
  quality: 'it must be known what it tells',
  doubt: 'a reading without a doubt cannot be weighed against another',
  counter: 'a counter counts the water of a unit or of a way of its own',
};
const SUM_RULES: Readonly<Record<string, string>> = {
  'tap-parts': 'the sum of tapParts',
  'reserve-basis': 'days × people × litres of its basis',
  'worked-fill': 'the amount divided by the minutes',
  'tank-volume-doubt': 'the root of the squares of its three parts',
  'stated-doubt': 'the root of the squares of the random and the calibration doubt',
  'litres-per-count': 'the figure of the unit that it meters',
};

const crossWords = {
  'id-twice': (data) =>
    say(
      `The ${name(data['what'])} ${data['id']} is there already${data['first'] === data['id'] ? '' : `, as ${data['first']}`}.`,
      'each id once, capitals or not',
      quoted(data['id']),
      'Give one of the two another id.',
    ),
  'id-unknown': (data, where) =>
    say(
      `${field(where)} names ${name(data['what'])} ${quoted(data['id'])}, which is not in this file.`,
      list(data['known']).length === 0
        ? `no ${name(data['what'])} is in this file yet`
        : anyOf(list(data['known'])),
      quoted(data['id']),
      meant(list(data['near']), `Add the ${name(data['what'])}, or name one that is there.`),
    ),
  'store-id-or-ids': (data, where) =>
    say(
      `${field(where)} must have either id or ids.`,
      'id for one store, ids for many alike',
      data['both'] === true ? 'both' : 'neither',
      data['both'] === true ? 'Delete one of the two.' : 'Write id: and the name on the label.',
    ),
  'store-needs-key': (data, where) =>
    say(
      `${field(where)} needs the key ${data['key']}: ${STORE_REASONS[`${data['why']}`]}.`,
      `${data['key']}`,
      'nothing',
      `Add ${data['key']}.`,
    ),
  'store-key-not-for-kind': (data, where) =>
    say(
      `${field(where)} means nothing for a store of kind ${data['kind']}.`,
      `${data['key']} only for ${anyOf(list(data['kinds']))}`,
      `${data['kind']}`,
      `Delete ${data['key']}, or correct the kind.`,
    ),
  'instrument-needs-key': (data, where) =>
    say(
      `${field(where)} needs the key ${data['key']}: ${INSTRUMENT_REASONS[`${data['why']}`]}.`,
      `${data['key']}`,
      'nothing',
      data['key'] === 'meters' ? 'Add meters with the id of a unit, or a route.' : `Add ${data['key']}.`,
    ),
  'gauge-measures-other': (data, where) =>
    say(
      `${field(where)} is an instrument that measures ${data['measures']}, not content.`,
      'an instrument that measures content',
      `${data['gauge']}`,
      `Name the instrument that reads the content by ${data['gaugedBy']}.`,
    ),
  'route-twice': (data, where) =>
    say(
      `${field(where)} is written although the instrument meters the unit ${data['meters']}.`,
      'meters or route',
      'both',
      'Delete the route: the way of water is that of the unit.',
    ),
  'amount-order': (data, where) =>
    say(
      `${field(where)} is ${figure(data['low'])}, ${data['low'] === data['high'] ? 'as much as' : 'more than'} ${data['larger']}.`,
      `${data['smaller']} ${data['strict'] === true ? 'less than' : 'at most'} ${figure(data['high'])}`,
      figure(data['low']),
      `Correct ${data['smaller']} or ${data['larger']}.`,
    ),
  'table-not-rising': (data, where) =>
    say(
      `${field(where)} does not rise above the row before it.`,
      `more than ${figure(data['depthBeforeMm'])} mm and more than ${figure(data['volumeBeforeL'])} L`,
      `${figure(data['depthMm'])} mm, ${figure(data['volumeL'])} L`,
      'Put the rows in order of depth and check the volumes.',
    ),
  'sum-differs': (data, where) =>
    say(
      `${field(where)} does not agree with ${SUM_RULES[`${data['rule']}`]}.`,
      `${figure(data['reckoned'])} ${data['unit']}`,
      `${figure(data['stated'])} ${data['unit']}`,
      'Correct whichever of the figures is wrong.',
    ),
  'floor-over-reserve': (data) =>
    say(
      `The reserve floor is higher than what ${allOf(list(data['counts']))} can give.`,
      `at most ${figure(data['usableL'])} L`,
      `${figure(data['floorL'])} L`,
      'Lower the floor, or count more stores as reserve.',
    ),
  'reserve-not-marked': (data) =>
    say(
      `The store ${data['store']} is counted as reserve but not marked as such.`,
      'reserve: true at the store',
      'reserve: false',
      `Mark ${data['store']} with reserve: true, or do not count it.`,
    ),
  'reserve-not-counted': (data) =>
    say(
      `The store ${data['store']} is marked as reserve but not counted as such.`,
      'reserve: true only at stores that policy.reserve counts',
      'reserve: true',
      `Add ${data['store']} to policy.reserve.counts, or delete reserve: true at the store.`,
    ),
  'grade-flow-uphill': (data) =>
    data['terminal'] === true
      ? say(
          `${data['from']} is terminal, but the file lets it flow into ${data['into']}.`,
          `${data['from']} only into ${data['from']}`,
          `${data['into']}`,
          `Delete ${data['into']} from mayFlowInto.`,
        )
      : say(
          `The file lets ${data['from']} flow into the purer ${data['into']}.`,
          'a grade of the same or a higher rank number',
          `${data['into']}`,
          `Delete ${data['into']} from mayFlowInto; the way up is a treatment or a unit.`,
        ),
  'biocides-flow-together': (data) =>
    say(
      `The file lets ${data['from']} flow into ${data['into']}, where ${allOf(list(data['biocides']))} would meet.`,
      'grades whose biocides may meet',
      `${data['into']}`,
      `Delete ${data['into']} from mayFlowInto.`,
    ),
  'limit-without-figure': (data) =>
    say(
      `The limit ${data['limit']} has no figure.`,
      'atLeast, atMost or both',
      'neither',
      'Add the figure, or delete the limit.',
    ),
  'limit-from-memory-on': (data) =>
    say(
      `The limit ${data['limit']} is from memory, yet it is in force.`,
      'status: off',
      'status: policy',
      "Set status: off, or type the outpost's own value with basis: outpost policy.",
    ),
  'rating-order': (data) =>
    say(
      `The ${data['what']} ${data['id']} bears less pressure than the push may reach.`,
      `at least ${figure(data['reliefKPa'])} kPa over cabin, where the relief opens`,
      `${figure(data['ratingKPa'])} kPa over cabin`,
      'Check the rating on its plate; set the relief no higher than the weakest part.',
    ),
  'date-not-real': (data, where) =>
    say(
      `${field(where)} is not a day of the calendar.`,
      'a date such as 2147-03-01',
      quoted(data['received']),
      'Correct the month or the day.',
    ),
  'findings-cut': (data) =>
    say(
      'There are more findings than are shown.',
      `at most ${data['most']} at a time`,
      'more',
      'Correct the first ones and read the file again.',
    ),
} satisfies Partial<Words<OutpostFindingCode>>;

export const outpostWords: Words<OutpostFindingCode> = { ...textWords, ...shapeWords, ...crossWords };
