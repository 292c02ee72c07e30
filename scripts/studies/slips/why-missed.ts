// Table of why a slip can pass: what is nowhere else in the book.

const TIMES = ['wrong day', 'AM/PM', '+5:30'];
/** Acts of which nothing beside their own line tells the hour. */
const ALONE = [
  'repair',
  'bed_change',
  'alarm',
  'manifest_note',
  'month_close',
  'refused',
  'leak_found',
  'cabin_pressure',
  'cargo_delay',
  'quarantine',
  'release',
  'downgrade',
  'rebiocide',
  'relabel',
  'label_check',
  'transfer_setup',
  'tank_declared_empty',
  'berth',
  'dock',
  'undock',
];

interface Reason {
  readonly kinds: readonly string[];
  readonly lines: readonly string[] | null;
  readonly why: string;
}

const REASONS: readonly Reason[] = [
  { kinds: TIMES, lines: ALONE, why: 'nothing beside the line itself tells when this was' },
  {
    kinds: TIMES,
    lines: ['sample_result', 'plate_count', 'sample'],
    why: 'results come at several hours here, or no habit was known yet',
  },
  {
    kinds: TIMES,
    lines: ['transfer', 'bag_recovery', 'waste_transfer'],
    why: 'too few of such flows yet to make a habit, or still within it; the amounts fit at either time',
  },
  {
    kinds: TIMES,
    lines: ['weigh', 'gauge_pvt'],
    why: 'the store stood still between the two times, and such readings have no habit yet',
  },
  { kinds: TIMES, lines: null, why: 'the counters and neighbours fit at either time' },
  {
    kinds: ['swapped ids'],
    lines: ['hookup'],
    why: 'the other store fits the port as well: which of two alike was put on, shows only when it runs dry or full',
  },
  { kinds: ['swapped ids'], lines: ['transfer'], why: 'the other store was as empty and of the same grade' },
  {
    kinds: ['swapped ids'],
    lines: ['weigh', 'gauge_pvt', 'sample', 'sample_result'],
    why: 'both stores hold about the same',
  },
  {
    kinds: ['x 10', 'wrong unit', 'decimal comma'],
    lines: ['container_empty'],
    why: 'a small count soon after the day line: the two differ by less than a meal does',
  },
  {
    kinds: ['x 10', 'wrong unit'],
    lines: ['sample', 'rebiocide'],
    why: 'too few bottles or doses yet to know their size; next to nothing of the water',
  },
  {
    kinds: ['ground copy', 'double tap'],
    lines: null,
    why: 'a note or a close may be repeated, and nothing counts twice',
  },
  { kinds: ['wrong grade'], lines: ['transfer'], why: 'the line is a copy that is left out already' },
];

export function whyMissed(kind: string, what: string): string {
  const line = /^\S+ (\w+):/.exec(what)?.[1] ?? '';
  const reason = REASONS.find(
    ({ kinds, lines }) => kinds.includes(kind) && (lines === null || lines.includes(line)),
  );
  return reason?.why ?? 'no other entry contradicts it within a day';
}
