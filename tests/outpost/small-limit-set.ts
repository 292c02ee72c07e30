// A small set of limits that the tests change: one row in force, one from memory, one by duration.

export const SMALL_LIMIT_SET = `format: waterwright limit set
version: 1
set:
  id: skerry rules
  name: rules of Skerry
  what: invented for the tests
  uses: [drink, medical]
sources:
  - id: paper
    source: an invented paper
acts:
  - id: dose
    cause: too much was dosed
    consequence: harm over years
    firstAct: hold and sample again
    timeToActH: 72
rows:
  - id: silver range
    parameter: silver
    basis: as itself
    unit: mg/L
    atLeast: 0.02
    atMost: 0.1
    status: on
    evidence: seen
    source: paper
    locator: page 3
    act: dose
  - id: nickel 10 d
    parameter: nickel
    basis: as itself
    unit: µg/L
    remembered: { atMost: 70 }
    status: off
    evidence: memory
    exposure: 10 d
    source: paper
    locator: page 4
    act: dose
  - id: nickel 100 d
    parameter: nickel
    basis: as itself
    unit: µg/L
    atMost: 20
    status: on
    evidence: quoted
    exposure: 100 d
    source: paper
    locator: page 4
    act: dose
    requiredFor: [drink]
`;

/** The set with one text in place of another, which has to be there once or more; the first is changed. */
export function changedLimits(from: string, to: string, text = SMALL_LIMIT_SET): string {
  if (!text.includes(from)) throw new Error(`the small set of limits has no "${from}"`);
  return text.replace(from, () => to);
}
