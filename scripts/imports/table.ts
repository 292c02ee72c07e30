// Table of the rooms: which may import which, and which packages; the twin of the table in ARCHITECTURE.md.

export interface Room {
  readonly room: string;
  /** What the row in ARCHITECTURE.md says under "may import", so that the two tables cannot part. */
  readonly written: string;
  /** Rooms whose index.ts may be imported. */
  readonly rooms: readonly string[];
  /** Rooms of which only types may be imported. */
  readonly types?: readonly string[];
  readonly packages: readonly string[] | 'any';
  /** Whether Node's own modules may be used. */
  readonly node?: boolean;
}

const GROUND = ['ground/units', 'ground/maths', 'ground/physics'];
const OF_A_DOOR = "desk, papers' renderers, their own port";

export const ROOMS: readonly Room[] = [
  { room: 'ground/units', written: 'nothing', rooms: [], packages: [] },
  { room: 'ground/maths', written: 'nothing', rooms: [], packages: [] },
  {
    room: 'ground/physics',
    written: 'units, maths',
    rooms: ['ground/units', 'ground/maths'],
    packages: [],
  },
  { room: 'outpost', written: 'ground', rooms: GROUND, packages: ['zod', 'yaml'] },
  { room: 'runs', written: 'ground, outpost', rooms: [...GROUND, 'outpost'], packages: [] },
  {
    room: 'book',
    written: 'ground/units, outpost',
    rooms: ['ground/units', 'outpost'],
    packages: ['zod', '@noble/hashes'],
  },
  { room: 'account', written: 'ground, outpost, book', rooms: [...GROUND, 'outpost', 'book'], packages: [] },
  {
    room: 'forecast',
    written: 'ground, outpost, account',
    rooms: [...GROUND, 'outpost', 'account'],
    packages: [],
  },
  {
    room: 'papers',
    written: 'result types of the rooms below, ground/units',
    rooms: ['ground/units'],
    types: ['outpost', 'runs', 'book', 'account', 'forecast'],
    packages: [],
  },
  {
    room: 'desk',
    written: 'all of the above',
    rooms: [...GROUND, 'outpost', 'runs', 'book', 'account', 'forecast', 'papers'],
    packages: ['zod'],
  },
  // The port that a disk serves is the book's.
  {
    room: 'doors/disk',
    written: OF_A_DOOR,
    rooms: ['ground/units', 'book', 'desk'],
    packages: 'any',
    node: true,
  },
  {
    room: 'doors/workers',
    written: OF_A_DOOR,
    rooms: ['ground/units', 'desk'],
    types: ['papers'],
    packages: ['csv-parse'],
    node: true,
  },
  // It serves a book that the disk keeps, and hands the book's port on to the command line.
  {
    room: 'doors/server',
    written: OF_A_DOOR,
    rooms: ['ground/units', 'book', 'papers', 'desk', 'doors/disk', 'doors/workers'],
    packages: 'any',
    node: true,
  },
  {
    room: 'doors/cli',
    written: OF_A_DOOR,
    rooms: ['ground/units', 'book', 'papers', 'desk', 'doors/disk', 'doors/workers', 'doors/server'],
    packages: 'any',
    node: true,
  },
  // What runs in the browser: the figures come rounded by the same routine that the papers use, the words from one table.
  {
    room: 'doors/web',
    written: "types of desk and papers, papers' words, ground/units",
    rooms: ['ground/units', 'papers'],
    types: ['desk'],
    packages: [
      'react',
      'react-dom',
      'react-aria-components',
      'd3-array',
      'd3-scale',
      'd3-shape',
      '@fontsource-variable/noto-sans',
    ],
  },
];
