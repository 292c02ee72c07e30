// A small card that the tests change: a choice, a value, a flow with its checks, an entry.

export const SMALL_CARD = `format: waterwright card
version: 1
card:
  id: pour
  name: Pour
  what: invented for the tests
  revision: 1
  forms: [READ-DO, DO-CONFIRM]
choose:
  - { id: from, of: store, what: giver, kinds: [tank] }
  - { id: to, of: store, what: receiver }
  - { id: amount, of: quantity, unit: L, what: water, otherwise: to.fill - to.content }
needs:
  ratings: [from.rating]
  movement: { from: from, to: to }
  conditions:
    - { holds: amount > 0 L, otherwise: There is no room. }
values:
  - { id: minutes, what: time, formula: amount / 2 L/min, unit: min }
hazards:
  - { id: wet, kind: free water, word: WARNING, text: Water floats. }
  - { id: full, kind: over-filled bladder, word: NOTICE, text: It tears. }
  - id: bad
    kind: unsafe water
    word: WARNING
    text: Not released.
    limits:
      - { what: most, figure: dose.most }
steps:
  - id: labels
    who: keeper
    do: Read the labels of {from} and {to}.
    input: { kind: choice, choices: [right, wrong] }
    expect: { right: [right] }
    mustPass: label check
    hazards: [bad]
  - id: mate
    who: keeper
    do: Mate the hose.
    input: { kind: tick }
    expect: { words: latched }
    acts: [open a line]
    hazards: [wet]
  - id: before
    who: keeper
    do: Read the line.
    input: { kind: number, unit: kPa abs, doubt: 0.1 kPa }
    expect: { about: cabin.pressure, within: 5 kPa }
  - id: tight
    who: keeper
    do: Read the line again.
    input: { kind: number, unit: kPa abs }
    expect: { atLeast: found.before - 1 kPa }
    mustPass: leak check
  - id: note
    who: keeper
    do: Say what you hear.
    input: { kind: text }
  - id: seen
    who: second
    do: Check the lines above.
    input: { kind: tick }
    holdPoint: true
  - id: open
    who: keeper
    do: Open the valve.
    input: { kind: tick }
    acts: [let water flow]
    hazards: [full]
  - id: shut
    who: keeper
    do: Shut the valve.
    input: { kind: tick }
  - id: litres
    who: keeper
    do: Read the meter.
    input: { kind: number, unit: L, doubt: 0.1 L }
    expect: { about: amount - run.moved, within: 1 L }
  - id: both
    who: keeper
    do: Write the tag together.
    input: { kind: time }
    twoPersons: true
flow:
  from: from
  to: to
  starts: open
  stops: shut
  amount: litres
  again: [before, tight, open]
  planned: amount
  minutes: minutes
  danger: over-fill
posts:
  - kind: check
    when: tight
    atOnce: true
    words: { what: leak }
    figures:
      drop: { value: found.before - found.tight, unit: kPa }
  - kind: weigh
    when: litres
    names: { store: to, said: found.note }
    figures:
      amount: { value: found.litres, unit: L }
`;

/** The card with one text in place of another, which has to be there once or more; the first is changed. */
export function changedCard(from: string, to: string, text = SMALL_CARD): string {
  if (!text.includes(from)) throw new Error(`the small card has no "${from}"`);
  return text.replace(from, () => to);
}
