// English for what can be wrong with a card's file, and for why a card does not start.
import type { FindingData } from '../../../ground/units/index.ts';
import type { CardFindingCode } from '../../../outpost/index.ts';
import type { Words } from '../shape.ts';
import { say } from './say.ts';

const list = (value: FindingData[string] | undefined): readonly string[] =>
  Array.isArray(value) ? value : [];
const quoted = (value: FindingData[string] | undefined): string => `"${value ?? ''}"`;

function anyOf(names: readonly string[], most = 12): string {
  if (names.length > most) return `${names.slice(0, most).join(', ')} … (${names.length} in all)`;
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}

const meant = (data: FindingData, otherwise: string): string =>
  list(data['near']).length === 0 ? otherwise : `Did you mean ${anyOf(list(data['near']))}?`;
const column = (data: FindingData): string => `column ${data['column']} of the formula`;

const formulaWords = {
  'formula-too-long': (data) =>
    say(
      'The formula is too long to be read at a glance.',
      `at most ${data['most']} signs`,
      `${data['length']} signs`,
      'Give a part of it a name under values, and use the name.',
    ),
  'formula-too-deep': (data) =>
    say(
      `The brackets nest too deeply in ${column(data)}.`,
      `at most ${data['most']} levels`,
      'more',
      'Give a part of it a name under values, and use the name.',
    ),
  'formula-sign-unknown': (data) =>
    say(
      `A sign in ${column(data)} means nothing in a formula.`,
      'names, numbers with their unit, + - * / ( ) , < <= > >=',
      quoted(data['sign']),
      'Delete the sign. Names have small letters; a number has a point, not a comma.',
    ),
  'formula-unit-unknown': (data) =>
    say(
      `The number before ${column(data)} has a unit that cards do not know.`,
      anyOf(list(data['known'])),
      quoted(data['unit']),
      meant(data, 'Use one of these units.'),
    ),
  'formula-unexpected': (data) =>
    say(
      `The formula goes on in a way that cannot be read in ${column(data)}.`,
      `${data['expected']}`,
      quoted(data['received']),
      'Look for a missing sign or bracket there.',
    ),
  'formula-name-unknown': (data) =>
    say(
      `Nothing is called ${data['name']}, in ${column(data)}.`,
      'a choice or a value of this card, found.LINE, or a name of docs/cards.md',
      quoted(data['name']),
      meant(data, 'Use a name from the list in docs/cards.md, or add it under choose or values.'),
    ),
  'formula-name-too-early': (data) =>
    say(
      `The formula uses ${data['name']}, which is not there yet.`,
      'values above it, and what earlier lines found',
      quoted(data['name']),
      'Move the line or the value up, or use another name.',
    ),
  'formula-function-unknown': (data) =>
    say(
      `There is no function ${data['name']}, in ${column(data)}.`,
      anyOf(list(data['known']), 20),
      quoted(data['name']),
      meant(data, 'Use one of these functions.'),
    ),
  'formula-arguments': (data) =>
    say(
      `The function ${data['name']} in ${column(data)} does not get what it takes.`,
      `${list(data['takes']).length} values: ${list(data['takes']).join(', ')}`,
      `${data['received']}`,
      'Give each of them, in this order, with commas between.',
    ),
  'formula-dimension': (data) =>
    say(
      `Two things that do not measure the same meet in ${column(data)}.`,
      `${data['expected']}`,
      `${data['received']}`,
      'Look at the units on both sides; a litre and a kilogram are parted by water.density.',
    ),
  'formula-point': (data) =>
    say(
      `An absolute pressure or a temperature stands where only a difference can, in ${column(data)}.`,
      'a pressure over cabin, a fall in kPa, a difference in K',
      'a value in kPa abs or °C',
      'Take the difference of two of them first, or write the other unit.',
    ),
  'formula-result': (data) =>
    say(
      'The formula gives something else than this place asks for.',
      `${data['expected']}`,
      `${data['received']}`,
      'Correct the formula, or the unit beside it.',
    ),
} satisfies Partial<Words<CardFindingCode>>;

const fileWords = {
  'card-choice-keys': (data) =>
    say(
      `The choice ${data['id']} has keys that do not go with ${data['of']}.`,
      'unit with a quantity, and there otherwise too; kinds with a store or a unit',
      `of: ${data['of']}`,
      'Add the unit of a quantity; delete the keys that do not belong.',
    ),
  'card-input-needs': (data) =>
    say(
      `The line ${data['line']} does not say how it is answered.`,
      'a unit with a number, choices with a choice, a tick at a hold point, doubt with a number alone',
      `kind: ${data['kind']}${data['hold'] === true ? ' at a hold point' : ''}`,
      'Add what is missing to its input, or change its kind.',
    ),
  'card-expect-not-for-input': (data) =>
    say(
      `What the line ${data['line']} expects does not fit how it is answered.`,
      `${anyOf(list(data['keys']))}; about and within together, right among the choices`,
      anyOf(list(data['received'])),
      'Write the expectation with these keys.',
    ),
  'card-act-form': (data) =>
    say(
      `The line ${data['line']} is not one act in one sentence.`,
      'a sentence that begins with a capital letter and ends with a full stop, such as "Shut the valve."',
      quoted(data['received']),
      'Write one act, verb first; make a second line of a second act.',
    ),
  'card-must-pass-cannot-fail': (data) =>
    say(
      `The ${data['check']} at the line ${data['line']} would be passed by anything.`,
      'a number with a bound, or a choice of which some answers are wrong',
      'no answer that fails',
      'Add a bound, or choices and which of them are right.',
    ),
  'card-must-pass-two-persons': (data) =>
    say(
      `The relabelling at the line ${data['line']} asks for one person.`,
      'twoPersons: true',
      'one person',
      'Add twoPersons: true to the line.',
    ),
  'card-must-pass-missing': (data) =>
    say(
      `The line ${data['line']} has the act "${data['act']}" before any ${data['check']}.`,
      `a line with mustPass: ${data['check']} before it`,
      'none',
      'Add such a line before this one.',
    ),
  'card-hazard-missing': (data) =>
    say(
      `The line ${data['line']} has the act "${data['act']}" without its hazard boxes.`,
      `boxes of the kinds ${list(data['missing']).join(', ')} at this line or before`,
      'none',
      'Add the boxes under hazards, and name them at this line or an earlier one.',
    ),
  'card-hazard-unused': (data) =>
    say(
      `The box ${data['hazard']} stands before no line.`,
      'each box at a line',
      'a box that nobody would see',
      'Name it at the line that it belongs to, or delete it.',
    ),
  'card-hazard-number': (data) =>
    say(
      `The box ${data['hazard']} has a number in its text.`,
      'words; figures under limits, by their names in the outpost file',
      'a number',
      'Take the number out and name the figure under limits.',
    ),
  'card-hazard-word': (data) =>
    say(
      `The box ${data['hazard']} says less than the hazard "${data['kind']}" asks for.`,
      `${data['least']}`,
      `${data['received']}`,
      'WARNING stands for grave injury, CAUTION for slight injury, NOTICE for equipment. Use the word that is asked for.',
    ),
  'card-rating-not-asked': (data) =>
    say(
      `The line ${data['line']} has the act "${data['act']}", but the card would start without a rating.`,
      `${list(data['missing']).join(', ')} under needs.ratings`,
      'not there',
      'Add these names to needs.ratings.',
    ),
  'card-group-too-long': (data) =>
    say(
      `With the line ${data['line']} there are more lines between two hold points than a person keeps in mind.`,
      `at most ${data['most']} lines`,
      'more',
      'Put a hold point between them, or make two cards.',
    ),
  'card-flow-order': (data) =>
    say(
      'The flow does not fit the lines that it names.',
      'starts (with the act "let water flow") before stops, stops no later than amount (a number in L), again up to starts and with it',
      `starts: ${data['starts']}, stops: ${data['stops']}, amount: ${data['amount']}`,
      'Correct the names of the lines under flow, or their order.',
    ),
  'card-post-needs': (data) =>
    say(
      `An entry of the kind ${data['kind']} cannot be made of this.`,
      `also ${list(data['missing']).join(', ')}`,
      'not there',
      'Add them under names, figures or words.',
    ),
} satisfies Partial<Words<CardFindingCode>>;

const startWords = {
  'card-choice-missing': (data, where) =>
    say(
      `The card needs to know ${data['what']}.`,
      `${where.field}: ${data['of'] === 'quantity' ? 'an amount with its unit' : `a ${data['of']}`}`,
      'nothing',
      `Choose ${data['what']}.`,
    ),
  'card-choice-unknown': (data, where) =>
    say(
      `There is no ${data['of']} ${data['received']} aboard.`,
      `a ${data['of']} of this outpost`,
      `${where.field}: ${data['received']}`,
      meant(data, `Choose a ${data['of']} that is there.`),
    ),
  'card-choice-kind': (data, where) =>
    say(
      `${data['received']} cannot be the ${data['what']}.`,
      `a store or unit of the kind ${anyOf(list(data['kinds']))}`,
      `${where.field}: ${data['received']}, ${data['kind'] === '' ? 'of no known kind' : `a ${data['kind']}`}`,
      'Choose another one, or another card.',
    ),
  'card-choice-same': (data) =>
    say(
      'The water would go back to where it came from.',
      'two different stores',
      `${data['store']} twice`,
      'Choose another giver or another receiver.',
    ),
  'card-form-not-there': (data) =>
    say(
      `The card has no ${data['form']} form.`,
      anyOf(list(data['forms'])),
      `${data['form']}`,
      `Begin it as ${anyOf(list(data['forms']))}.`,
    ),
  'card-rating-missing': (data, where) =>
    say(
      `Rating missing: ${data['what']}${data['of'] === '' ? '' : ` (${data['of']})`}.`,
      `${where.field} in the outpost file`,
      'nothing',
      'Read the plate of the part and enter its rating in the outpost file; the card does not start on a guess.',
    ),
  'card-must-pass-unknown': (data, where) =>
    say(
      `Nobody could tell whether the ${data['check']} at the line ${where.field} is passed.`,
      list(data['missing']).length === 0
        ? 'a bound that can be worked out'
        : list(data['missing']).join(', '),
      'not known',
      'Enter what is missing in the outpost file or the book, then begin again.',
    ),
  'card-condition-fails': (data) =>
    say(
      `${data['otherwise']}`,
      `${data['condition']}, surely (by two standard deviations)`,
      data['surely'] === true ? 'it does not hold' : 'it may not hold',
      'Choose less, or another store; or read what is in doubt first.',
    ),
  'card-condition-unknown': (data) =>
    say(
      `Whether the card may start is not known: ${data['condition']}.`,
      list(data['missing']).join(', ') || 'values within the ranges of the formulas',
      'not known',
      'Enter what is missing, or take the reading that tells it.',
    ),
  'card-source-held': (data) =>
    say(
      `${data['from']} is on hold: its water goes nowhere.`,
      'a source that is not on hold',
      `${data['from']} to ${data['to']}`,
      'Choose another source, or wait for the result and the release.',
    ),
  'card-source-unreleased': (data) =>
    say(
      `${data['from']} is not released for ${data['to']}.`,
      `water that is released for ${data['to']}`,
      `${data['from']}, without a release that reaches so far`,
      'Sample it and have it released, or choose another source.',
    ),
  'card-grades-clash': (data) =>
    say(
      `The water of ${data['from']} may not flow into ${data['to']} by its grade.`,
      'a receiver of the same grade or a lower one',
      `${data['from']} to ${data['to']}`,
      'Choose another receiver; the way up is a treatment.',
    ),
  'card-biocides-clash': (data) =>
    say(
      `The biocides of ${data['from']} and ${data['to']} never meet.`,
      'stores whose biocides may meet, in the remainder too',
      `${data['from']} to ${data['to']}`,
      'Choose another receiver. Neither water would be kept by the mixture.',
    ),
} satisfies Partial<Words<CardFindingCode>>;

export const cardWords: Words<CardFindingCode> = { ...formulaWords, ...fileWords, ...startWords };
