// The quarantine release: which stores left a hold, on whose word and which figures, and what stays on it.
import type { HoldReleaseSheet, LeftHold } from '../../sheets/papers-quality.ts';
import { saidSamples, saidWho, holdRelease as words } from '../../words/en/papers-quality.ts';
import type { DocumentPart, DocumentTable, PaperDocument } from '../document.ts';
import { figureTable, rowTable, whole } from './figure-parts.ts';
import { storeTable } from './hold-notice.ts';

const { columns } = words;

export function holdReleasePaper(sheet: HoldReleaseSheet): PaperDocument {
  const { head, book, hold, left, figures, rows } = sheet;
  const held = hold.stores.filter(({ as }) => as !== 'waived');
  return {
    paper: 'hold-release',
    of: hold.hold,
    language: 'en',
    isWide: false,
    title: words.title(hold.hold),
    head,
    book,
    parts: [
      verdictOf(
        left,
        held.map(({ store }) => store),
      ),
      { part: 'text', text: words.isOf },
      { part: 'heading', text: words.leftHead },
      leftTable(left),
      { part: 'heading', text: words.heldHead },
      held.length === 0 ? { part: 'text', text: words.noneHeld } : storeTable('still-held', held),
      { part: 'heading', text: words.figureHead },
      figureTable(figures, { empty: words.noFigures, withStore: true }),
      ...(rows.length === 0 ? [] : [rowTable(rows)]),
      {
        part: 'signatures',
        people: [
          { office: 'medic', says: words.medic },
          { office: 'keeper', says: words.keeper },
          { office: '________', says: words.second },
        ],
      },
    ],
  };
}

function verdictOf(left: readonly LeftHold[], held: readonly string[]): DocumentPart {
  const word = left.length === 0 ? words.nothing : held.length === 0 ? words.all : words.some;
  return { part: 'verdict', word, text: words.says(left, held) };
}

function leftTable(left: readonly LeftHold[]): DocumentTable {
  return {
    part: 'table',
    name: 'left',
    empty: words.noneLeft,
    columns: [
      { head: columns.store, key: 'store', align: 'left' },
      { head: columns.became, key: 'became', align: 'left', least: 10 },
      { head: columns.by, key: 'by', align: 'left', least: 8 },
      { head: columns.at, key: 'at', align: 'left', least: 9 },
      { head: columns.samples, key: 'samples', align: 'left', least: 8 },
      { head: columns.until, key: 'until', align: 'left', least: 9 },
      { head: columns.entry, key: 'entry', align: 'left', least: 6 },
    ],
    rows: left.map((one) => [
      one.store,
      words.became(one),
      saidWho(one),
      one.at,
      saidSamples(one.samples),
      one.until ?? '',
      whole(one.ref),
    ]),
  };
}
