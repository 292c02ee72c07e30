// All rooms of the gallery, in the order in which a reader meets them.
import type { GalleryEntry, GalleryRoom } from '../../../scripts/docs/errors-page.ts';
import { accountSamples } from './account.ts';
import { bookSamples } from './book.ts';
import { cardSamples } from './cards.ts';
import { cliSamples } from './cli.ts';
import { codeSamples } from './code.ts';
import { deskSamples } from './desk.ts';
import { diskSamples } from './disk.ts';
import { fieldLogSamples } from './field-log.ts';
import { inboxSamples } from './inbox.ts';
import { limitSamples } from './limits.ts';
import { outpostSamples } from './outpost.ts';
import { runSamples } from './runs.ts';
import type { Failure, Sample, Samples } from './sample.ts';
import { serverSamples } from './server.ts';
import { tableSamples } from './table.ts';
import { forgetPractice } from './typed-lines.ts';
import { unitsSamples } from './units.ts';

interface Room {
  readonly name: string;
  readonly about: string;
  readonly samples: Samples<string>;
}

export const ROOMS: readonly Room[] = [
  {
    name: 'units',
    about: 'What somebody types as a number, an amount or a time. The first block is what was typed.',
    samples: unitsSamples,
  },
  {
    name: 'outpost',
    about:
      'What stands in an outpost file. Each sample is the small outpost of the tests with something changed: lines with `-` were taken out, lines with `+` put in.',
    samples: outpostSamples,
  },
  {
    name: 'limits',
    about:
      'Sets of limits, what an outpost chooses of them, and limits that somebody types. Faults of the text and the shape of such a file are those of an outpost file. The first block is the small set of the tests with something changed, or what was asked.',
    samples: limitSamples,
  },
  {
    name: 'cards',
    about:
      'Files of cards, and cards that do not start. Faults of the text and the shape of such a file are those of an outpost file. The first block is the small card of the tests with something changed, and what was chosen.',
    samples: cardSamples,
  },
  {
    name: 'runs',
    about: 'What is said while the small card of the tests is carried out. The last line is refused.',
    samples: runSamples,
  },
  {
    name: 'book',
    about:
      'Entries, lines that bring entries, and the chain that holds them together. The first block says what was done.',
    samples: bookSamples,
  },
  {
    name: 'disk',
    about:
      'The file of a book, what stands beside it, and the disk under it. The first block says what was done, in a folder of its own.',
    samples: diskSamples,
  },
  {
    name: 'account',
    about:
      'What entries mean for the water. Each sample is a book of the invented outpost Holm: its opening, and then the entries that are shown.',
    samples: accountSamples,
  },
  {
    name: 'desk',
    about:
      'What somebody asks for, and is told no. Each sample is a book of the invented outpost Holm with its opening; entries that are shown were kept before, then comes the request.',
    samples: deskSamples,
  },
  {
    name: 'code',
    about:
      'The codes by which a second person confirms, and the medic opens who drank what. The first block says what was done; no code stands here or anywhere else.',
    samples: codeSamples,
  },
  {
    name: 'field log',
    about:
      'Lines of a field log, with their number in the file. Line 1 is the opening of the practice log of Corrie unless it is shown.',
    samples: fieldLogSamples,
  },
  {
    name: 'table',
    about: 'Files that no table can be made of. The first block is the file, or what was done to it.',
    samples: tableSamples,
  },
  {
    name: 'inbox',
    about:
      'Tables, their lines and their cells. The first block is the table, brought to a book of Corrie that begins with Day 31.',
    samples: inboxSamples,
  },
  {
    name: 'command line',
    about:
      'How a command was typed, and the files that it names. The first block is the line, typed into the program where the practice book is; a file that it names stands below it.',
    samples: cliSamples,
  },
  {
    name: 'server',
    about:
      'What is asked of the server over HTTP, or of a book that a server holds. The first block is the request, or the command.',
    samples: serverSamples,
  },
];

/** Every sample carried out. */
export async function galleryRooms(): Promise<readonly GalleryRoom[]> {
  const rooms: GalleryRoom[] = [];
  try {
    for (const { name, about, samples } of ROOMS) {
      const entries: GalleryEntry[] = [];
      for (const [code, each] of Object.entries(samples)) entries.push(await entryOf(code, each));
      rooms.push({ name, about, entries });
    }
  } finally {
    await forgetPractice();
  }
  return rooms;
}

async function entryOf(code: string, { when, fails, writtenOut }: Sample): Promise<GalleryEntry> {
  const failures: Failure[] = [];
  for (const fail of fails) failures.push(await fail());
  return { code, when, failures, ...(writtenOut !== undefined && { writtenOut }) };
}
