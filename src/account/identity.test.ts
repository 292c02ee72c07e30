// Identity goes with the water, and holds end only in the ways that there are.
import { describe, expect, test } from 'vitest';
import { holm, litres, type Told } from '../../tests/journeys/told.ts';
import { notFreeBecause } from './stock.ts';

const move = (told: Told, from: string, to: string, valueL = 2, more: { happened?: string } = {}) =>
  told.tell('movement', { from, to, amount: litres(valueL) }, more);
const state = (told: Told, id: string) => {
  const found = told.fold.stores.get(id);
  if (found === undefined) throw new Error(`no store ${id}`);
  return found;
};
const whyNot = (told: Told, id: string) => {
  const position = told.position();
  const store = position.stores.find(({ facts }) => facts.id === id);
  return store === undefined ? 'not aboard' : notFreeBecause(position, store);
};
const hold = (told: Told, name: string, stores: string[], conditional: string[] = []) =>
  told.tell('hold', { hold: name, stores, conditional, reason: 'count too high' });
/** Figures that meet Holm's limits. */
const passing = [
  { parameter: 'silver', value: 0.2, unit: 'mg/L' },
  { parameter: 'plate count', value: 2, unit: 'CFU/mL' },
];
const release = (told: Told, name: string, stores: string[]) =>
  told.tell('release', { hold: name, stores, values: passing });

describe('grade and release', () => {
  test('a never used container becomes what it gets, with its word and its biocide', () => {
    const told = holm();
    move(told, 'C-04', 'C-03');
    expect(state(told, 'C-03')).toMatchObject({
      grade: 'drinking',
      emptied: false,
      release: 'opening',
      biocides: ['silver'],
      gradeHistory: ['drinking'],
    });
  });

  test('the weaker word and the worse grade stand for a mix', () => {
    const told = holm();
    told.tell('store-added', {
      store: 'X-1',
      kind: 'container',
      capacityL: 22,
      usableRemainderL: 0.6,
      grade: 'drinking',
      amount: litres(10),
    });
    state(told, 'X-1').release = 'loader’s certificate';
    move(told, 'X-1', 'C-04');
    expect(state(told, 'C-04').release).toBe('loader’s certificate');
    move(told, 'C-04', 'C-02');
    expect(state(told, 'C-02')).toMatchObject({ grade: 'technical', biocides: ['silver'] });
  });

  test('an emptied container that goes down remembers what it held', () => {
    const told = holm();
    told.tell('declared-empty', { store: 'C-04', counters: [] });
    expect(state(told, 'C-04')).toMatchObject({ grade: 'drinking', emptied: true });
    move(told, 'C-02', 'C-04');
    expect(state(told, 'C-04')).toMatchObject({
      grade: 'technical',
      emptied: false,
      gradeHistory: ['drinking', 'technical'],
      biocides: ['silver'],
    });
    expect(told.findings('grade-may-not-flow')).toHaveLength(0);
  });

  test('water from nowhere is never free', () => {
    const told = holm();
    move(told, 'unplaced', 'C-04');
    expect(whyNot(told, 'C-04')).toBe('not released');
    move(told, 'outside', 'C-03');
    expect(whyNot(told, 'C-03')).toBe('grade unknown');
  });

  test('water that somebody found again is what it was', () => {
    const told = holm();
    move(told, 'unaccounted', 'C-04');
    expect(whyNot(told, 'C-04')).toBeNull();
  });

  test('an entry that names another grade than is believed is asked about', () => {
    const told = holm();
    told.tell('movement', { from: 'C-04', to: 'C-03', amount: litres(2), grade: 'technical' });
    expect(told.findings('grade-mismatch').map(({ data }) => [data['said'], data['believed']])).toEqual([
      ['technical', 'drinking'],
    ]);
  });

  test('a buffer that was empty and is filled by its purifier is released as made here', () => {
    const told = holm();
    const buffer = state(told, 'PB');
    buffer.release = 'none';
    buffer.emptied = true;
    told.goTo(1, 12).tell('meter', { readings: [{ instrument: 'product', value: 2 }] });
    expect(state(told, 'PB')).toMatchObject({ release: 'made here', emptied: false, grade: 'drinking' });
  });
});

describe('facts that break a rule are kept, and both sides wait', () => {
  test('biocides that meet', () => {
    const told = holm();
    told.tell('store-added', {
      store: 'V-1',
      kind: 'softBag',
      capacityL: 10,
      usableRemainderL: 0.2,
      grade: 'iodine',
      amount: litres(9),
    });
    move(told, 'V-1', 'C-04', 2, { happened: 'poured by mistake' });
    expect(told.ledgerL('C-04')).toBe(20);
    expect(told.findings('biocides-meet')[0]?.data).toMatchObject({
      happened: 'poured by mistake',
      comes: 'iodine',
      meets: 'silver',
    });
    expect([state(told, 'V-1').hold?.reason, state(told, 'C-04').hold?.reason]).toEqual([
      'biocides-meet',
      'biocides-meet',
    ]);
    expect(whyNot(told, 'C-04')).toBe('hold');
  });

  test('a wrong grade, also onto what has its own hold', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-04']);
    move(told, 'C-02', 'C-04');
    expect(told.findings('grade-may-not-flow')).toHaveLength(1);
    release(told, 'Q-1', ['C-04']);
    expect(state(told, 'C-04').hold?.reason).toBe('grade-may-not-flow');
  });
});

describe('holds', () => {
  test('held water makes what it is poured into wait, and waste does not wait', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-04']);
    move(told, 'C-04', 'C-03');
    expect(state(told, 'C-03').hold?.hold).toBe('Q-1');
    expect(told.findings('held-water-moved')).toHaveLength(1);
    move(told, 'C-04', 'W-02');
    expect(state(told, 'W-02').hold).toBeNull();
    expect(told.findings('held-water-moved')).toHaveLength(1);
  });

  test('a release ends its own hold only, and a hold that was there before stays', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-04']);
    hold(told, 'Q-2', ['C-04', 'C-03']);
    release(told, 'Q-2', ['C-04', 'C-03']);
    expect([state(told, 'C-04').hold?.hold, state(told, 'C-03').hold]).toEqual(['Q-1', null]);
    release(told, 'Q-1', ['C-04']);
    expect(state(told, 'C-04')).toMatchObject({ hold: null, release: 'own sample' });
  });

  test('every open hold is told, of all of its stores', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-04']);
    hold(told, 'Q-2', ['C-04', 'C-01']);
    const found = told.findings('hold-open').map(({ data }) => [data['hold'], data['stores']]);
    expect(found.sort()).toEqual([
      ['Q-1', ['C-04']],
      ['Q-2', ['C-01', 'C-04']],
    ]);
  });

  test('water of two holds that was poured together waits for both', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-04']);
    hold(told, 'Q-2', ['C-01']);
    move(told, 'C-04', 'C-03');
    move(told, 'C-01', 'C-03');
    release(told, 'Q-1', ['C-03', 'C-04']);
    expect(state(told, 'C-03').hold?.hold).toBe('Q-2');
  });

  test('conditional water is no free water, and goes on as conditional', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-03'], ['C-04']);
    expect(whyNot(told, 'C-04')).toBe('conditional');
    expect(told.findings('conditional-reserve')).toHaveLength(1);
    move(told, 'C-04', 'C-01');
    expect(whyNot(told, 'C-01')).toBe('conditional');
    release(told, 'Q-1', ['C-04', 'C-01']);
    expect([whyNot(told, 'C-04'), whyNot(told, 'C-01')]).toEqual([null, null]);
  });

  test('a downgrade ends the hold that it names; one that names none ends all, as a release does', () => {
    const told = holm();
    const down = (name?: string) =>
      told.tell('downgrade', {
        store: 'C-04',
        fromGrade: 'drinking',
        toGrade: 'technical',
        values: [],
        ...(name !== undefined && { hold: name }),
      });
    hold(told, 'Q-1', ['C-04']);
    hold(told, 'Q-2', ['C-04']);
    down('Q-1');
    expect(state(told, 'C-04')).toMatchObject({ grade: 'technical', hold: { hold: 'Q-2' } });
    down();
    expect(state(told, 'C-04')).toMatchObject({ grade: 'technical', hold: null });
  });

  test('a downgrade that goes up is a hold, not a way out of one', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-02']);
    told.tell('downgrade', { store: 'C-02', fromGrade: 'technical', toGrade: 'drinking', values: [] });
    expect(told.findings('grade-went-up')).toHaveLength(1);
    expect(state(told, 'C-02')).toMatchObject({
      hold: { hold: 'Q-1' },
      holdsBehind: [{ reason: 'grade-went-up' }],
    });
    const other = holm();
    other.tell('downgrade', { store: 'C-02', fromGrade: 'drinking', toGrade: 'drinking', values: [] });
    expect(other.findings('grade-went-up')).toHaveLength(1);
  });

  test('a waiver lets its hold go and makes the water no better', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-04']);
    told.tell('waiver', { hold: 'Q-1', stores: ['C-04'], reason: 'nothing else left', untilDay: 9 });
    expect(told.findings('alone-for-two')).toHaveLength(1);
    expect(state(told, 'C-04')).toMatchObject({ hold: null, release: 'opening' });
  });

  test('treated water waits for its own release, and for an older hold as well', () => {
    const told = holm();
    hold(told, 'Q-1', ['C-02']);
    told.tell(
      'treatment',
      { store: 'C-02', recipe: 'technical to drinking', toGrade: 'drinking', dose: litres(0.02) },
      { second: { office: 'second', confirmation: 'by own code' } },
    );
    expect(state(told, 'C-02')).toMatchObject({ grade: 'drinking', release: 'none', biocides: ['silver'] });
    expect(told.ledgerL('C-02')).toBe(20.02);
    const treated = told.fold.stores.get('C-02')?.holdsBehind[0]?.hold ?? '';
    expect(treated).toMatch(/^treated /);
    release(told, treated, ['C-02']);
    expect(state(told, 'C-02').hold?.hold).toBe('Q-1');
    release(told, 'Q-1', ['C-02']);
    expect(whyNot(told, 'C-02')).toBeNull();
  });
});

describe('labels and doses', () => {
  test('a label goes down by two people, and an emptied tank stays emptied', () => {
    const told = holm();
    told.tell('declared-empty', { store: 'C-04', counters: [] });
    told.tell('relabel', { store: 'C-04', fromLabel: 'drinking', toGrade: 'waste', twoPersons: true });
    expect(state(told, 'C-04')).toMatchObject({
      grade: 'waste',
      emptied: true,
      gradeHistory: ['drinking', 'waste'],
    });
    expect(told.findings('alone-for-two')).toHaveLength(0);
  });

  test('alone it is said, upwards it is a hold', () => {
    const told = holm();
    told.tell('relabel', { store: 'C-02', fromLabel: 'technical', toGrade: 'drinking', twoPersons: false });
    expect([told.findings('alone-for-two').length, told.findings('grade-went-up').length]).toEqual([1, 1]);
    expect(state(told, 'C-02').hold?.reason).toBe('grade-went-up');
  });

  test('a dose adds its water and its biocide; one that never meets another is said', () => {
    const told = holm();
    told.tell('dose', { stores: ['C-04', 'C-02'], biocide: 'silver', doseEach: litres(0.01) });
    expect([told.ledgerL('C-04'), told.ledgerL('C-02')]).toEqual([18.01, 20.01]);
    expect(state(told, 'C-02').biocides).toEqual(['silver']);
    told.tell('dose', { stores: ['C-04'], biocide: 'iodine', doseEach: litres(0.01) });
    expect(told.findings('biocides-meet')).toHaveLength(1);
    expect(state(told, 'C-04').hold?.reason).toBe('biocides-meet');
  });
});
