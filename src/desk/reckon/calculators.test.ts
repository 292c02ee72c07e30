// Every calculator: its example answers, every name has words, and what is typed wrongly changes nothing.
import { describe, expect, it } from 'vitest';
import { inputLabel, type ReckonSheet, reckonWords, resultLabel } from '../../papers/index.ts';
import { CALCULATORS } from './calculators.ts';
import { EXAMPLES } from './examples.ts';
import { reckonForms } from './forms.ts';
import { isName } from './input-spec.ts';
import { reckon } from './reckon.ts';

const names = [...CALCULATORS.keys()];

function answered(what: string, fields: Readonly<Record<string, string>>): ReckonSheet {
  const answer = reckon({ what, fields }, null);
  if (!answer.ok) throw new Error(JSON.stringify(answer.findings));
  return answer.value;
}

function refused(what: string, fields: Readonly<Record<string, string>>) {
  const answer = reckon({ what, fields }, null);
  if (answer.ok) throw new Error(`${what} was answered`);
  return { problem: answer.problem, findings: answer.findings };
}

const result = (sheet: ReckonSheet, name: string) => {
  const found = sheet.results.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no result is called ${name}`);
  return found;
};

it('there are eleven, and each has an example', () => {
  expect(names).toHaveLength(11);
  expect(Object.keys(EXAMPLES).sort()).toEqual([...names].sort());
});

describe.each(names)('%s', (name) => {
  const calculator = CALCULATORS.get(name);
  const example = EXAMPLES[name] ?? {};

  it('answers its example, with words for every name', () => {
    const sheet = answered(name, example);
    expect(sheet.results.length).toBeGreaterThan(0);
    for (const each of sheet.results) {
      expect(resultLabel(each.name)).not.toBe('');
      expect(Number.isFinite(each.value)).toBe(true);
    }
    for (const spec of calculator?.inputs ?? []) expect(inputLabel(spec.name)).not.toBe('');
    expect(reckonWords(name).formulas.length).toBeGreaterThan(0);
    expect(sheet.formulas).toEqual(reckonWords(name).formulas);
  });

  it('gives the shares of the ± as parts of one', () => {
    const sheet = answered(name, example);
    const shares = sheet.inputs.map(({ share }) => share ?? 0);
    const sum = shares.reduce((total, each) => total + each, 0);
    expect(sheet.results[0]?.u95 === null ? sum : sum - 1).toBeCloseTo(0, 9);
  });

  it.each(['', 'many', 'NaN', '1e999L', '<b>4</b>', '12 furlongs', '-'])(
    'does not take %j anywhere',
    (text) => {
      for (const spec of calculator?.inputs ?? []) {
        if (isName(spec) || spec.hidden === true) continue;
        const { problem, findings } = refused(name, { ...example, [spec.name]: text });
        expect(problem).toBe('bad input');
        expect(findings[0]?.where.field).toBe(spec.name);
      }
    },
  );

  it('does not know a field of another name', () => {
    expect(refused(name, { ...example, surprise: '1' }).findings[0]?.code).toBe('reckon-field-unknown');
  });

  it('says which inputs are missing, all at once', () => {
    const needed = reckonForms()
      .forms.find((form) => form.calculator === name)
      ?.fields.filter(({ needed: isNeeded }) => isNeeded)
      .map((field) => field.name);
    const [finding] = refused(name, {}).findings;
    expect(finding?.code).toBe('reckon-input-missing');
    expect(finding?.data['inputs']).toEqual(needed);
  });
});

describe('figures that are known otherwise', () => {
  it('the transfer of 22 L through 6 m of 8 mm takes 341.7 s within 2', () => {
    const sheet = answered('transfer', EXAMPLES['transfer'] ?? {});
    expect(Math.abs(result(sheet, 'time').value - 341.7)).toBeLessThanOrEqual(2);
    expect(result(sheet, 'stop-filling').value).toBeLessThan(result(sheet, 'time').value);
    expect(result(sheet, 'surely-emptied').value).toBeGreaterThan(result(sheet, 'time').value);
  });

  const push = { volume: '200L', over: '0.5atm', cabin: '1atm', 'cabin-volume': '180m3' };
  it.each([
    ['shell', -0.056, 0],
    ['outside', -0.169, -0.113],
  ])('200 L at half an atmosphere take 300 L of free air; receiver %s', (receiver, during, after) => {
    const sheet = answered('pressure', { ...push, receiver });
    expect(result(sheet, 'free-air').value).toBeCloseTo(300, 6);
    expect(Math.abs(result(sheet, 'cabin-while').value - during)).toBeLessThanOrEqual(0.002);
    expect(Math.abs(result(sheet, 'cabin-after').value - after)).toBeLessThanOrEqual(0.002);
  });

  it('a full bottle of 10 L into 6.4 L of gas is refused at about 405 kPa, with a safe charge', () => {
    const { problem, findings } = refused('gauge', {
      tank: '180L',
      bottle: '10L',
      'bottle-before': '600kPa',
      'tank-before': '101.3kPa',
      ullage: '6.4L',
      rating: '100kPa',
    });
    expect(problem).toBe('refused');
    const { endKPa, ratingKPa, safeBottleKPa } = findings[0]?.data ?? {};
    expect(endKPa).toBeCloseTo(405.4, 1);
    expect(Number(safeBottleKPa)).toBeLessThan(600);
    // At the safe charge it ends at the rating and no higher.
    const end = (Number(safeBottleKPa) * 10 + 101.3 * 6.4) / 16.4;
    expect(end).toBeCloseTo(Number(ratingKPa), 6);
  });

  it('without a rating nothing is charged', () => {
    const { rating: _rating, ...unrated } = EXAMPLES['gauge'] ?? {};
    expect(refused('gauge', unrated).findings[0]?.data['rule']).toBe('rating-missing');
  });

  it('a bottle of 5 L at 400 kPa tells nothing of a tank that is nearly empty', () => {
    const sheet = answered('gauge', {
      tank: '180L+-3.2',
      bottle: '5L',
      'bottle-before': '400kPa',
      'tank-before': '101.3kPa',
      ullage: '160L',
      known: '20L+-6',
      rating: '400kPa',
      'bottle-gauge-doubt': '0.5kPa',
      'tank-gauge-doubt': '0.5kPa',
      'thermometer-doubt': '0.5',
    });
    expect(result(sheet, 'would-be-known-to').value / 2).toBeCloseTo(13.5, 0);
    expect(sheet.sayings.map(({ key }) => key)).toContain('useless-larger-than-content');
  });

  it('2 L from 20 to 80 °C at 750 W and 85 % take 13 min and 502 kJ', () => {
    const sheet = answered('heat', { volume: '2L', begin: '20C', end: '80C', power: '750W' });
    expect(result(sheet, 'time').value / 60).toBeCloseTo(13.1, 1);
    expect(result(sheet, 'heat-needed').value).toBeCloseTo(501, 0);
  });

  it('the oxygen of a person takes 0.946 kg of water a day', () => {
    expect(result(answered('oxygen', { people: '1' }), 'water-for-oxygen').value).toBeCloseTo(0.946, 3);
  });

  it('a dose above the maximum is refused', () => {
    const { findings } = refused('dose', { ...EXAMPLES['dose'], wanted: '2mg/L' });
    expect(findings[0]?.data).toMatchObject({ rule: 'above-maximum', wantedMgPerL: 2, maximumMgPerL: 0.4 });
  });

  it('a range that is left is named with its source', () => {
    const { problem, findings } = refused('dewpoint', { air: '85C', humidity: '50%' });
    expect(problem).toBe('bad input');
    expect(findings[0]?.data).toMatchObject({ value: 85, low: -20, high: 60, source: 'ashrae-fundamentals' });
  });
});
