// Table of lines that a field log may not have, each with what is wrong about it; the first line of every log is its opening.
import { LOG_OBJECTS, type LogObject, lineWith } from './corrie-log.ts';

type Line = LogObject | string;

const opening = lineWith('E0001');
const text = (line: LogObject): string => JSON.stringify(line);
const stores = opening['stores'] as readonly LogObject[];

/** The opening, and the lines that the case is about. */
const log = (...lines: readonly Line[]): readonly Line[] => [opening, ...lines];
const changed = (id: string, changes: LogObject): readonly Line[] => log(lineWith(id, changes));
const opened = (changes: LogObject): readonly Line[] => [lineWith('E0001', changes), lineWith('E0002')];
/** A line with a piece of its text replaced, for what no object can say. */
const spelt = (id: string, from: string, to: string): readonly Line[] => {
  const line = text(lineWith(id));
  if (!line.includes(from)) throw new Error(`${id} does not hold ${from}`);
  return log(line.replace(from, to));
};
const berth = (changes: LogObject, store: LogObject): readonly Line[] => {
  const line = lineWith('E0016', changes);
  const [first, ...rest] = line['stores'] as readonly LogObject[];
  return log({ ...line, stores: [{ ...first, ...store }, ...rest] });
};

export const BAD_LINES: Readonly<Record<string, readonly Line[]>> = {
  'no JSON': log('2147-03-02 filled C-05 with 20.5 L', lineWith('E0002')),
  NaN: spelt('E0020', '"litres":20.5', '"litres":NaN'),
  'a decimal comma': spelt('E0020', '"litres":20.5', '"litres":20,5'),
  'a torn last line': log(text(lineWith('E0020')).slice(0, 120)),
  'a torn line that is not the last': log(text(lineWith('E0020')).slice(0, 120), lineWith('E0002')),
  'a list': log('[1, 2]'),
  'a bare null': log('null'),
  'a bare text': log('"E0002"'),
  'a mark of byte order in a later line': log(`\uFEFF${text(lineWith('E0002'))}`),
  'more than a million signs': log({ ...lineWith('E0135'), note: 'x'.repeat(1_000_000) }),
  'a field twice': spelt('E0020', '"litres":20.5', '"litres":20.5,"litres":2.05'),
  'a field twice, spelt apart': spelt('E0020', '"litres":20.5', '"litres":20.5,"l\\u0069tres":2.05'),
  'no kind': changed('E0002', { kind: undefined }),
  'a kind that is a number': changed('E0002', { kind: 7 }),
  'a mistyped kind': changed('E0020', { kind: 'transfre' }),
  'a kind that every object has': changed('E0002', { kind: 'constructor' }),
  'a mistyped field': log({ ...lineWith('E0020', { litres: undefined }), liters: 20.5 }),
  'a foreign field': changed('E0005', { mood: 'good' }),
  'a field deep inside': berth({}, { colour: 'blue' }),
  'a field of the other counters': changed('E0010', { counters: { dispenser_strokes: 194, flushes: 3 } }),
  'a prototype': spelt('E0005', '"store"', '"__proto__":{"admin":true},"store"'),
  'a missing field': changed('E0020', { from: undefined }),
  'a missing field that may be null': changed('E0002', { product_meter_L: undefined }),
  'a missing counter': changed('E0010', { counters: { dispenser_strokes: 194 } }),
  'no counters': changed('E0010', { counters: {} }),
  'counters that are a number': changed('E0010', { counters: 194 }),
  'a number as text': changed('E0020', { litres: '20.5' }),
  'null where it has to be told': changed('E0020', { litres: null }),
  'a list as text': changed('E0017', { items: 'FA circle / drinking' }),
  'half a person': changed('E0002', { people: 3.5 }),
  '1e400': spelt('E0020', '"litres":20.5', '"litres":1e400'),
  'a negative amount': changed('E0020', { litres: -20.5 }),
  'a negative count': changed('E0002', { dispenser_strokes: -1 }),
  'an amount of an ocean': changed('E0020', { litres: 1e6 }),
  'no pressure at all': changed('E0019', { leak_check_kPa_abs: 0 }),
  'humidity above all': changed('E0002', { RH_percent: 1044 }),
  'a status of its own': changed('E0026', { status: 'resumd' }),
  'an id with a blank': changed('E0005', { id: 'E 0005' }),
  'an empty name': changed('E0005', { store: '' }),
  'a name with a bell': changed('E0005', { store: 'W-02\u0007' }),
  'half a sign': spelt('E0135', '"note":"planned', '"note":"\\ud800planned'),
  'a note too long': changed('E0135', { note: 'x'.repeat(4001) }),
  'no container': changed('E0064', { containers: [] }),
  'a result from nowhere': changed('E0053', { store: undefined }),
  'a result from two places': changed('E0053', { point: 'product' }),
  'a run without its status': changed('E0026', { status: undefined }),
  'a status without its run': changed('E0026', { run: undefined }),
  'water left in the hose of a whole fill': changed('E0020', { line_content_L: 0.3 }),
  'a doubt of nothing': changed('E0112', { sd_L: 0.2 }),
  'a doubt of no rest': changed('E0040', { residual_sd_L: 0.5 }),
  'from a store into itself': changed('E0020', { to: 'FA' }),
  'one container twice in a push': changed('E0074', {
    from: [
      { id: 'W-05', litres: 19.7 },
      { id: 'W-05', litres: 15 },
    ],
  }),
  'no time': changed('E0005', { t: 'noon' }),
  'a time without its clock': changed('E0005', { t: '2147-03-02T20:31' }),
  '30 February': changed('E0005', { t: '2147-02-30T20:31Z' }),
  'second 60': changed('E0005', { t: '2147-03-02T20:31:60Z' }),
  'after the last year': changed('E0005', { t: '2999-12-31T23:59-14:00' }),
  'a start that is no time': changed('E0020', { start: 'ten' }),
  'a start after the end': changed('E0020', { start: '2147-03-07T11:00Z' }),
  'a window that ends before it begins': changed('E0135', { until: '2147-03-01T05:30Z' }),
  'another day than the time': changed('E0005', { day: 3 }),
  'before the opening': changed('E0005', { t: '2147-02-28T20:59Z', day: 0 }),
  'one id, two entries': log(lineWith('E0005'), lineWith('E0005', { store: 'W-03' })),
  'one id, two entries, one of them bent': log(lineWith('E0005'), lineWith('E0005', { store: 7 })),
  'the same line again': log(lineWith('E0005'), lineWith('E0005')),
  'no opening': [lineWith('E0002'), lineWith('E0005')],
  'nothing at all': [],
  'two openings': log(lineWith('E0001', { id: 'E0002' })),
  'another format': opened({ format: 'ship log' }),
  'a newer version': opened({ version: 2 }),
  'a version before the first': opened({ version: 0 }),
  'a log of another outpost': opened({ outpost: 'Cairn' }),
  'another clock': opened({ clock: 'ground' }),
  'a first day that is no date': opened({ day_1: '1 March 2147' }),
  'a first day that is not in the calendar': opened({ day_1: '2147-02-30' }),
  'a first day before all ids': opened({ day_1: '1969-12-31' }),
  'an opening told before it was so': opened({ as_of: '2147-03-01T09:00Z' }),
  'an opening without its format': opened({ format: undefined }),
  'an unknown store in the opening': opened({ stores: [...stores, { ...stores[0], id: 'R3' }] }),
  'a store twice in the opening': opened({ stores: [...stores, stores[0]] }),
  'an unknown store': changed('E0020', { to: 'C-055' }),
  'an unknown container on hold': changed('E0054', { containers: ['C-05', 'C-99'] }),
  'an unknown port': changed('E0005', { port: 'waste' }),
  'an unknown hose': changed('E0020', { hose: 'H-11' }),
  'an unknown grade': changed('E0020', { grade: 'X' }),
  'a grade in small letters': changed('E0020', { grade: 'd' }),
  'an unknown grade before': changed('E0049', { was: 'X0' }),
  'an unknown label': changed('E0044', { to_label: 'wast' }),
  'an unknown vehicle': changed('E0199', { vehicle: 'Panier 9' }),
  'an unknown method': changed('E0020', { method: 'by eye' }),
  'a method on another hose': changed('E0020', { hose: 'H-2' }),
  'a draw that two counters may have counted': changed('E0241', { to: 'electrolyser/flush feed' }),
  'a draw that no counter has counted': changed('E0241', { to: 'waste receptacle' }),
  'a store that the outpost file knows otherwise': berth({}, { capacity_L: 210, fill_L: 200 }),
  'more findings than a screen': LOG_OBJECTS.map((line) => ({ ...line, mood: 'good' })),
};
