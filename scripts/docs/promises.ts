// Table of what Waterwright promises, which tests hold it, which records say what they counted, and what is still open.

export interface PromiseTest {
  /** Path of a test file. */
  readonly file: string;
  readonly holds: string;
  /** Names of what it recorded. */
  readonly records?: readonly string[];
}

export interface PromiseRow {
  readonly id: string;
  readonly promise: string;
  /** Empty: not yet held by anything, and so no claim. */
  readonly tests: readonly PromiseTest[];
  /** What the promise says beyond what the tests hold. */
  readonly open?: string;
}

const durability: readonly PromiseRow[] = [
  {
    id: 'P1',
    promise: 'What was acknowledged is in the book after its process was killed, at whatever moment.',
    tests: [
      {
        file: 'tests/faults/kill.test.ts',
        holds: 'kills at random moments; a writer that acknowledges before its commit is found out',
        records: ['kills', 'kills-control'],
      },
      { file: 'tests/faults/lying-disk.test.ts', holds: 'kills inside one call of the disk after another' },
      {
        file: 'tests/server/kill.test.ts',
        holds:
          'a server killed 50 ms after it acknowledged an entry, and while another is under way; one that acknowledges too early is found out',
        records: ['server-kills', 'server-kills-control'],
      },
    ],
  },
  {
    id: 'P2',
    promise:
      'What was acknowledged is in the book after a power cut at whatever moment, on a disk that may lose, reorder or tear whatever was not synced.',
    tests: [
      {
        file: 'tests/faults/power-cut.test.ts',
        holds:
          'disks rebuilt from the recorded calls of a writer, cut after every call; settings that are known to lose do lose here',
        records: ['power-cuts', 'power-cuts-control-wal-normal', 'power-cuts-control-delete-full'],
      },
      { file: 'tests/faults/posix-disk.test.ts', holds: 'the model of the disk itself' },
      { file: 'src/doors/disk/open.test.ts', holds: 'settings set and read back at every open' },
    ],
    open: 'The model is that of POSIX: what the firmware of a disk says and does not do is out of its reach. Linux on x64 only.',
  },
  {
    id: 'P3',
    promise: 'A second fault while the first is being taken back does no more harm.',
    tests: [],
  },
  {
    id: 'P4',
    promise: 'What belongs together, such as an import, is kept whole or not at all.',
    tests: [
      {
        file: 'tests/faults/power-cut.test.ts',
        holds:
          'an import of 500 entries in every image; one that is written entry by entry is found half there',
        records: ['power-cuts-control-whole-import'],
      },
      { file: 'tests/faults/full-disk.test.ts', holds: 'half an import that did not fit does not stay' },
      { file: 'tests/contract/disk.test.ts', holds: 'an append that is refused leaves nothing' },
      { file: 'tests/contract/memory-store.test.ts', holds: 'the same of the book in memory' },
    ],
  },
  {
    id: 'P5',
    promise:
      'A call of the disk that fails becomes no acknowledgement, and is said; after a failed sync nothing more is written.',
    tests: [
      {
        file: 'tests/faults/lying-disk.test.ts',
        holds: 'every kind of call failing at its first, second, third … time, once or from then on',
        records: ['lying-disk'],
      },
    ],
  },
  {
    id: 'P6',
    promise:
      'A full disk is said in one sentence and loses nothing; the book can still be read, and goes on when there is room.',
    tests: [
      {
        file: 'tests/faults/full-disk.test.ts',
        holds: 'small disks of three kinds that fill up, or were full before',
        records: ['full-disk'],
      },
    ],
  },
  {
    id: 'P7',
    promise:
      'A disk that may only be read, a file of somebody else, a missing folder, a limit of the system: said clearly, and nothing is changed.',
    tests: [
      {
        file: 'tests/faults/full-disk.test.ts',
        holds: 'read-only disks, other people, limits of the system',
      },
      {
        file: 'src/doors/disk/open.test.ts',
        holds: 'what is no book, or none that can be opened, is named and left alone',
      },
      {
        file: 'tests/golden/cli/files.test.ts',
        holds:
          'the exit codes and sentences of the command line for files that are no book, or held by another',
      },
    ],
  },
  {
    id: 'P8',
    promise: 'Damage that no error tells of is found before anything wrong is shown.',
    tests: [
      {
        file: 'tests/faults/damage.test.ts',
        holds:
          'flipped bits, zeroed sectors, misplaced pages, lost ends; without the chains wrong entries would be shown',
        records: ['damage', 'damage-control'],
      },
    ],
    open: 'A damaged book is put back from a copy; taking the whole entries out of it is not done yet.',
  },
  {
    id: 'P9',
    promise: 'A book that lost its end, or an older copy in its place, is noticed when it is opened.',
    tests: [
      {
        file: 'src/doors/disk/receipt.test.ts',
        holds: 'the receipt beside a book: older copies, other books, receipts that cannot be read',
      },
      {
        file: 'src/book/keep-and-check.test.ts',
        holds: 'chains that were shortened or written anew, against a receipt',
      },
      {
        file: 'tests/golden/cli/files.test.ts',
        holds: 'the same as a keeper sees it at the command line',
      },
    ],
  },
  {
    id: 'P10',
    promise: 'A backup is a whole book equal to the first, also when the book is written to meanwhile.',
    tests: [
      {
        file: 'src/doors/disk/backup.test.ts',
        holds:
          'copies with equal digests, between the writes of another; no copy of a book that is not whole',
      },
    ],
    open: 'Copies under a steady load of writes are not measured yet.',
  },
  {
    id: 'P11',
    promise:
      'A newer program reads every entry of an older one; an older program refuses a newer book and leaves it alone.',
    tests: [
      {
        file: 'src/book/migrations.test.ts',
        holds: 'steps from older shapes of entries to those of today, without a gap',
      },
      { file: 'src/doors/disk/open.test.ts', holds: 'a newer book is refused with both versions' },
    ],
    open: 'There is no older release yet whose books could be kept as samples.',
  },
];

const account: readonly PromiseRow[] = [
  {
    id: 'P12',
    promise:
      'Reckoning makes and loses no water: over all accounts the sum is 0 to the milligram, after every entry.',
    tests: [
      {
        file: 'src/account/interval.test.ts',
        holds: 'the sum after every entry of twenty days of counters and drinks',
      },
      { file: 'src/account/position.test.ts', holds: 'the sum of a position, with what readings changed' },
      { file: 'src/desk/field-log/account.test.ts', holds: 'the sum over the whole practice log' },
      {
        file: 'tests/journeys/journeys.test.ts',
        holds: 'the sum after every entry of random histories, and their balances against a plain map',
        records: ['journeys'],
      },
    ],
  },
  {
    id: 'P13',
    promise: 'One book gives one account on every machine, in every time zone and language.',
    tests: [
      {
        file: 'tests/contract/disk.test.ts',
        holds: 'one digest in memory and on disk, however the entries arrived',
      },
      {
        file: 'scripts/rules/all-rules.test.ts',
        holds:
          'the rules that keep time, chance, language and engine functions out of the core catch what they must',
      },
    ],
    open: 'Other engines, zones and languages are not run yet.',
  },
  {
    id: 'P14',
    promise: 'Formulas give the same bits on every engine.',
    tests: [
      {
        file: 'src/ground/maths/elementary.test.ts',
        holds: 'elementary functions made of + − × ÷ and square root',
      },
      {
        file: 'tests/published/published.test.ts',
        holds: 'their values against 30 digits, and published values of formulas',
      },
      { file: 'scripts/rules/all-rules.test.ts', holds: 'no function of the engine in their place' },
    ],
    open: 'A second engine is not run yet.',
  },
  {
    id: 'P15',
    promise:
      'A position that is kept up to date is the one reckoned from scratch, and a scan of a book gives what a filter over a list gives.',
    tests: [
      {
        file: 'src/account/reckon.test.ts',
        holds: 'late entries, undo, corrections, decisions: the same bits as from scratch',
      },
      {
        file: 'tests/contract/disk.test.ts',
        holds: 'every kind of scan over 5,000 entries against a filter',
      },
      { file: 'tests/contract/memory-store.test.ts', holds: 'the same of the book in memory' },
      {
        file: 'tests/journeys/journeys.test.ts',
        holds:
          'random histories taken entry by entry: the same bits as from scratch, in either order of two sites',
      },
    ],
  },
  {
    id: 'P16',
    promise:
      'Late, repeated and disordered entries end in the position of those that came in order, whether a day was closed meanwhile or not.',
    tests: [
      {
        file: 'src/desk/field-log/corrie-log.test.ts',
        holds: 'shuffled lines and repeated parts of the practice log',
      },
      {
        file: 'src/book/exchange.test.ts',
        holds: 'pieces that overlap, and lines that were changed on the way',
        records: ['changed-letters'],
      },
      { file: 'src/book/views.test.ts', holds: 'what counts does not depend on the order of arrival' },
      {
        file: 'tests/journeys/arrival.test.ts',
        holds:
          'lines of two sites in any order, a tenth of them twice: one digest of the book and of its position',
        records: ['arrival'],
      },
      {
        file: 'tests/journeys/journeys.test.ts',
        holds: 'late entries, undo, corrections and copies, and days that are closed in between',
      },
    ],
  },
  {
    id: 'P17',
    promise: 'A wrong clock, a change of it, a leap second or a far year does no harm.',
    tests: [
      {
        file: 'src/ground/units/instant.test.ts',
        holds: 'days that are not in the calendar, second 60, hour 24, offsets, the first and the last year',
      },
      { file: 'src/desk/field-log/bad-lines.test.ts', holds: 'the same in the lines of a log' },
    ],
    open: 'Clocks that jump while the program runs, and time zones of the machine, are not run yet.',
  },
  {
    id: 'P28',
    promise: 'No held, unreleased, unknown or waste water is in a free figure.',
    tests: [
      {
        file: 'tests/quality/falsely-free.test.ts',
        holds:
          'random histories of every act that bears on it beside a naive model of fitness; twelve accounts that are wrong on purpose are found out',
        records: ['falsely-free'],
      },
      { file: 'src/account/quality/falsely-free.test.ts', holds: 'ways that such water once took' },
    ],
    open: 'What left a store before its sample failed is held by people, by the proposal of the trace.',
  },
];

const exchangeAndAbuse: readonly PromiseRow[] = [
  {
    id: 'P18',
    promise: 'Packs between two places, in whatever order and however torn, bring both to one digest.',
    tests: [],
  },
  { id: 'P19', promise: 'A pack is taken whole or not at all; a foreign or changed one never.', tests: [] },
  { id: 'P20', promise: 'A month fits into one pack of a size that a link can carry.', tests: [] },
  {
    id: 'P21',
    promise: 'No page of another origin, and nobody without a name, reads or writes.',
    tests: [
      {
        file: 'tests/server/guards.test.ts',
        holds: 'attacks on each guard are refused and change nothing; each succeeds with that guard off',
        records: ['server-guards'],
      },
      {
        file: 'tests/page/attacks.test.ts',
        holds:
          'a rebound name and cross-site writes from a real browser; with the guards off they reach the book',
        records: ['server-browser'],
      },
      {
        file: 'tests/server/wire.test.ts',
        holds:
          'requests that can be read in two ways, slow senders, too much of everything; the loopback address alone',
      },
      {
        file: 'tests/server/answers.test.ts',
        holds:
          'header lines of every answer; hostile texts stay text; who drank stands in no answer that a page can get',
        records: ['server-hostile-texts'],
      },
    ],
    open: 'Several persons, each with a name, come with accounts; until then the server knows one user of one machine.',
  },
  {
    id: 'P22',
    promise:
      'A hostile file does not end the program, takes no long time, changes nothing, and gets a finding with its place.',
    tests: [
      {
        file: 'src/outpost/hostile.test.ts',
        holds: 'outpost files made to break a reader',
        records: ['hostile-outpost-files'],
      },
      {
        file: 'tests/tables/hostile.test.ts',
        holds:
          'tables made to break a reader, with the reader that has no caps and the one that has no thread as controls',
        records: ['hostile-tables'],
      },
      {
        file: 'tests/tables/tidy.test.ts',
        holds: 'tidy tables in every form, and single spoiled cells',
      },
      {
        file: 'src/outpost/mutations.test.ts',
        holds: 'outpost files with random slips',
        records: ['outpost-files-with-slips'],
      },
      {
        file: 'src/desk/field-log/bad-lines.test.ts',
        holds: 'lines of a log with one fault each',
        records: ['bad-lines'],
      },
      {
        file: 'src/desk/field-log/hostile.test.ts',
        holds: 'logs with random slips',
        records: ['field-logs-with-slips'],
      },
      { file: 'src/desk/field-log/nothing-lost.test.ts', holds: 'no value of a line can change unseen' },
      {
        file: 'tests/golden/cli/files.test.ts',
        holds:
          'logs, exports and outpost files that are torn, foreign, newer or too large, at the command line',
      },
    ],
    open: 'Readers run in the program itself; one that would not end is not stopped from outside.',
  },
  {
    id: 'P23',
    promise:
      'A flood of readings of meters loses nothing that was acknowledged, and no bad value reaches the account.',
    tests: [],
  },
  {
    id: 'P24',
    promise: 'However a command ends, the book is in a known state and the exit code says which.',
    tests: [
      {
        file: 'tests/golden/cli/refused.test.ts',
        holds: 'each refusal ends with its exit code, and every file is as it was',
      },
      {
        file: 'tests/golden/cli/streams.test.ts',
        holds: 'a reader that goes away ends it quietly; exit codes reach the system',
      },
      { file: 'tests/faults/kill.test.ts', holds: 'the book after a kill' },
      {
        file: 'tests/server/serve-command.test.ts',
        holds: 'a server that is asked to end answers what is in hand; one that does not answer is told',
      },
    ],
    open: 'A lack of memory, a closed terminal and signals other than a kill are not injected yet.',
  },
  {
    id: 'P26',
    promise: 'Water is released only by evidence: what is missing, over, unverified or off releases nothing.',
    tests: [
      {
        file: 'src/account/verdict/truth-table.test.ts',
        holds: 'every combination of the table of truth',
        records: ['release-verdict'],
      },
      {
        file: 'src/account/verdict/fail-closed.test.ts',
        holds: 'taking evidence away never releases; verdicts with a bug planted in them are found out',
        records: ['fail-closed'],
      },
      {
        file: 'src/account/quality/quality.test.ts',
        holds: 'a release in the book frees a store only where its results prove it',
      },
    ],
  },
  {
    id: 'P27',
    promise: 'What a bad sample touched is found whole, in both directions, to the milligram.',
    tests: [
      {
        file: 'tests/trace/against-naive.test.ts',
        holds:
          'random histories against a tracer of parcels; tracers with a bug planted in them are found out',
        records: ['contact-tracing'],
      },
      {
        file: 'tests/golden/cli/quality.test.ts',
        holds: 'what is proposed stands before the result is kept, and to cancel leaves every file as it was',
      },
    ],
  },
  {
    id: 'P25',
    promise:
      'A run of a card stands on the same line whatever was closed, crashed or arrived late; no check is passed over, and no litre is posted twice.',
    tests: [
      {
        file: 'tests/cards/runs.test.ts',
        holds:
          'sequences of commands on every card that ships, a crash after any of them, any order of arrival',
        records: ['card-runs'],
      },
      {
        file: 'tests/cards/corrie-run.test.ts',
        holds: 'a fill that was broken off and went on the next day',
      },
      {
        file: 'src/runs/live/live.test.ts',
        holds: 'litres so far and the end of a flow lie in their bands in simulated flows',
        records: ['live-band'],
      },
    ],
    open: 'The rooms are held, not yet a run that is kept in a book on a disk.',
  },
];

export const PROMISES: readonly PromiseRow[] = [...durability, ...account, ...exchangeAndAbuse];
