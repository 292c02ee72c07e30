// The cards that ship: read without a finding, filled for Corrie on several days, and every hazard in its box before its step.
import { describe, expect, test } from 'vitest';
import { positionOf } from '../../src/account/index.ts';
import { type Card, type FillAsked, type FilledCard, fitsExpected } from '../../src/outpost/index.ts';
import { hazardBox, wordFinding } from '../../src/papers/index.ts';
import { practiceDesk } from '../field-log/practice-desk.ts';
import { CARD_FILES, CARDS, CHOSEN, CORRIE, filled, outpostIndex, value, valuesOf } from './corrie-cards.ts';

const desk = await practiceDesk();
const DAY_ONE = Date.UTC(2147, 2, 1);
const atDay = (day: number, hour = 8): number => DAY_ONE + ((day - 1) * 24 + hour) * 3_600_000;

async function positionAt(day: number) {
  const account = await desk.account({ asOfMs: atDay(day) });
  if (!account.ok) throw new Error(`no account at D${day}`);
  return positionOf(account.value.fold, atDay(day));
}

const DAYS = [7, 9, 20, 46, 59];
const days = new Map(
  await Promise.all(DAYS.map(async (day) => [day, valuesOf(await positionAt(day))] as const)),
);

test('fourteen ship', () => {
  expect(CARDS.map(({ id }) => id).sort()).toEqual(Object.keys(CHOSEN).sort());
  expect(CARDS).toHaveLength(14);
});

describe.each(CARD_FILES)('%s', (file) => {
  const card = CARDS[CARD_FILES.indexOf(file)] as Card;

  test('is frozen, its id is the name of its file, and every line is one act that begins with a verb', () => {
    expect(Object.isFrozen(card) && Object.isFrozen(card.steps[0]?.expect)).toBe(true);
    expect(`${card.id.replaceAll(' ', '-')}.yaml`).toBe(file);
    for (const { do: act } of card.steps) expect(VERBS, act).toContain(act.split(' ', 1)[0]);
  });

  test('gives no figure of its own in a box', () => {
    for (const { text } of card.hazards) expect(text).not.toMatch(/\d/);
  });

  test('may start at Corrie on some day, with every bound known that a check rests on', () => {
    const ways = DAYS.map((day) => filled(card.id, { values: days.get(day) as FillAsked['values'] }));
    expect(
      ways.some(({ mayStart }) => mayStart),
      JSON.stringify(ways[0]?.findings),
    ).toBe(true);
  });

  test('prints every box with its word, its figure of Corrie and whom it gives way to', () => {
    for (const { hazards } of filled(card.id).steps)
      for (const box of hazards) {
        const lines = hazardBox(box);
        expect(lines[0]).toMatch(/^(WARNING|CAUTION|NOTICE)$/);
        expect(lines.at(-1)).toMatch(/outpost.*maker.*medic/);
        for (const line of lines.slice(2, -1)) expect(line).toMatch(/limit of this outpost: \d+(\.\d+)? /);
      }
  });
});

const VERBS =
  'Add Bring Check Clean Compare Draw Drain Feel Fill Finish Flush Give Keep Let Look Mate Move Note Open Part Prime Purge Push Put Read Say Set Shut Sign Stop Strap Switch Take Turn Vent Wait Walk Weigh Wipe Write'.split(
    ' ',
  );

/** Rows of the hazards beside the work, and a card with the line before which the box has to stand. */
const HAZARDS = [
  ['pressure', 'fill a container from a tank', 'leak_start'],
  ['pressure', 'gauge a tank by gas', 'charge'],
  ['residual pressure', 'fill a container from a tank', 'part'],
  ['residual pressure', 'gauge a tank by gas', 'part'],
  ['charge above a rating', 'gauge a tank by gas', 'charge'],
  ['hot compressor', 'fill a container from a tank', 'leak_start'],
  ['compressor noise', 'fill a container from a tank', 'leak_start'],
  ['over-filled bladder', 'fill a container from a tank', 'open'],
  ['trapped water', 'fill a container from a tank', 'shut'],
  ['trapped ice', 'tank to tank', 'stop'],
  ['trapped ice', 'dormancy and restart', 'drained'],
  ['scald', 'prepare hot water', 'first'],
  ['steam lock', 'prepare hot water', 'first'],
  ['hydrogen', 'dormancy and restart', 'cells_purged'],
  ['oxygen enrichment', 'dormancy and restart', 'cells_purged'],
  ['electricity', 'dormancy and restart', 'cells_off'],
  ['electricity', 'change a bed', 'off'],
  ['biocide concentrate', 're-dose', 'drawn'],
  ['slip of ten', 're-dose', 'drawn'],
  ['iodine water', 'swap container at a port', 'put_on'],
  ['waste and concentrate', 'push waste into an emptied tank', 'mate'],
  ['free water', 'fill a container from a tank', 'mate'],
  ['free water', 'purge a line', 'mate'],
  ['free water', 'change a bed', 'take_out'],
  ['unsafe water', 'fill a container from a tank', 'open'],
  ['unsafe water', 'sample a point', 'take'],
] as const;

test.each(HAZARDS)('%s stands before its step on "%s", %s', (kind, id, line) => {
  const { steps } = filled(id);
  const at = steps.findIndex(({ step }) => step.id === line);
  expect(at).toBeGreaterThanOrEqual(0);
  const before = steps.slice(0, at + 1).flatMap(({ hazards }) => hazards.map(({ hazard }) => hazard.kind));
  expect(before).toContain(kind);
});

test('without figures of the outpost a box has a line to write them on', () => {
  const { outpost, ...rest } = CORRIE;
  const { hazardFigures: _, ...bare } = outpost;
  const index = { ...rest, outpost: bare };
  const boxes = filled('fill a container from a tank', { index }).steps.flatMap(({ hazards }) => hazards);
  const lines = boxes.flatMap(hazardBox).filter((line) => line.includes('limit of this outpost'));
  expect(lines).toEqual([
    'highest push: limit of this outpost: ____',
    'hot surface: limit of this outpost: ____',
  ]);
});

const known = (card: FilledCard, id: string) => {
  const figure = card.values.find((each) => each.id === id)?.figure;
  if (figure?.is !== 'known') throw new Error(`${id} is not known`);
  return figure;
};

test('20.5 L through the hose of Corrie take 15.9 min within five parts in a hundred', () => {
  const card = filled('fill a container from a tank', {
    chosen: { ...CHOSEN['fill a container from a tank'], amount: value(20.5, 'L') },
  });
  expect(card.mayStart).toBe(true);
  expect(Math.abs(known(card, 'minutes').value / 15.9 - 1)).toBeLessThan(0.05);
  // What the cabin feels of it by the same formula as docs/methods/cabin-pressure.md.
  expect(known(card, 'dip').value).toBeCloseTo((50 * 0.0205) / 180, 4);
});

test('what would be lost with a tank is shown: 4.8 L by the book on the day FA was called empty too early', () => {
  const values = new Map([
    ['FA.content', value(10.8, 'L', 0.5)],
    ['W-01.content', value(20, 'L', 0.3)],
  ]);
  expect(known(filled('push waste into an emptied tank', { values }), 'lost').value).toBeCloseTo(4.8, 6);
});

test.each(['corrie', 'lunar', 'polar'])(
  'every card is filled at %s, or says why it may not start',
  (name) => {
    const index = outpostIndex(name);
    for (const { id } of CARDS) {
      const card = filled(id, { index, chosen: {} });
      expect(card.steps.length).toBeGreaterThan(0);
      expect(card.mayStart).toBe(card.findings.length === 0);
      for (const finding of card.findings) expect(wordFinding(finding).remedy).toMatch(/[.?]$/);
    }
  },
);

describe('a card does not start', () => {
  const codes = (card: FilledCard): readonly string[] => card.findings.map(({ code }) => code);

  test('when a rating is missing: an outpost without push and bottle', () => {
    const polar = outpostIndex('polar');
    const fill = filled('fill a container from a tank', { index: polar, chosen: {} });
    expect(codes(fill).filter((code) => code === 'card-rating-missing')).toHaveLength(5);
    const gauge = filled('gauge a tank by gas', { index: polar, chosen: {} });
    expect(codes(gauge)).toContain('card-rating-missing');
  });

  test('each rating alone keeps it back', () => {
    const { outpost, ...rest } = CORRIE;
    const { push: _, ...bare } = outpost;
    const index = { ...rest, outpost: bare };
    const card = filled('fill a container from a tank', { index });
    expect(
      card.findings.filter(({ code }) => code === 'card-rating-missing').map(({ where }) => where.field),
    ).toEqual(['push.set', 'push.relief']);
    const unknown = filled('fill a container from a tank', {
      chosen: { from: 'X-1', to: 'C-11', hose: 'H-1', amount: value(5, 'L') },
      stores: [
        { id: 'X-1', kind: 'vehicleTank' },
        { id: 'C-11', kind: 'container' },
      ],
    });
    expect(unknown.findings.map(({ where }) => where.field)).toContain('from.rating');
  });

  test('when a rule of the account speaks against the water', () => {
    const rules = ['source-held', 'source-unreleased', 'grades-clash', 'biocides-clash'] as const;
    const asked: unknown[] = [];
    const card = filled('fill a container from a tank', {
      rules: (movement) => {
        asked.push(movement);
        return rules.map((rule) => ({ rule, data: {} }));
      },
    });
    expect(asked).toEqual([{ from: 'FA', to: 'C-11', relabelledTo: null }]);
    expect(codes(card)).toEqual(expect.arrayContaining(rules.map((rule) => `card-${rule}`)));
    expect(card.mayStart).toBe(false);
  });

  test('V-1 into C-03: a bag of iodine water is no tank, and the rules hear of it', () => {
    const card = filled('fill a container from a tank', { chosen: { from: 'V-1', to: 'C-03', hose: 'H-1' } });
    expect(codes(card)).toContain('card-choice-kind');
  });

  test('when a choice is missing, unknown, or the same twice', () => {
    expect(codes(filled('weigh in', { chosen: {} }))).toEqual(['card-choice-missing']);
    expect(codes(filled('weigh in', { chosen: { store: 'C-99' } }))).toEqual(['card-choice-unknown']);
    const same = { from: 'R1', to: 'R1', hose: 'H-2', amount: value(1, 'L') };
    expect(codes(filled('tank to tank', { chosen: same }))).toContain('card-choice-same');
    expect(codes(filled('weigh in', { chosen: { store: value(1, 'L') } }))).toEqual(['card-choice-missing']);
    expect(codes(filled('gauge a tank by gas', { form: 'DO-CONFIRM' }))).toContain('card-form-not-there');
  });

  test('when a dose would pass the maximum of the outpost, the slip of ten above all', () => {
    const chosen = { ...CHOSEN['re-dose'], wanted: value(2, 'mg/L') };
    const values = new Map([['C-08.content', value(20, 'L', 0.2)]]);
    expect(codes(filled('re-dose', { chosen, values }))).toEqual(['card-condition-fails']);
  });

  test('of a dose that was drawn ten times too large nothing comes: the line is rechecked or the card stops', () => {
    const values = new Map([['C-08.content', value(20, 'L', 0.2)]]);
    const drawn = filled('re-dose', { values }).steps.find(({ step }) => step.id === 'drawn');
    expect(drawn?.step.mustPass).toBe('dose');
    if (drawn === undefined || drawn.expected.is !== 'bounds') throw new Error('the dose has no bounds');
    expect(fitsExpected(drawn.expected, 8.5)).toBe(true);
    expect(fitsExpected(drawn.expected, 85)).toBe(false);
    expect(fitsExpected(drawn.expected, 0.85)).toBe(false);
  });

  test('when hot water would boil at the pressure of the cabin', () => {
    const values = new Map([['cabin.pressure', value(45, 'kPa abs', 0.2)]]);
    expect(codes(filled('prepare hot water', { values }))).toContain('card-condition-fails');
  });

  test('when what its conditions rest on is not known', () => {
    expect(codes(filled('tank to tank'))).toContain('card-condition-unknown');
    expect(new Set(codes(filled('re-dose', { values: new Map() })))).toEqual(
      new Set(['card-must-pass-unknown', 'card-condition-unknown']),
    );
  });
});

test('the bottle that may be opened to a nearly full tank is far below a full one', () => {
  const values = new Map([['R2.content', value(173.6, 'L', 1.6)]]);
  const card = filled('gauge a tank by gas', { values });
  expect(card.mayStart).toBe(true);
  const at = card.steps.find(({ step }) => step.id === 'bottle_before');
  expect(at?.expected).toMatchObject({
    is: 'bounds',
    high: { is: 'not known', missing: ['found.tank_before'] },
  });
});
