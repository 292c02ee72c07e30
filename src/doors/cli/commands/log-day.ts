// `log day`: the day line, from questions, from a file, from flags, or from standard input.
import { type DayForm, dayForm } from '../../../desk/index.ts';
import { formatIsoUtc } from '../../../ground/units/index.ts';
import type { Call } from '../call.ts';
import { askDay } from '../day/ask-day.ts';
import { type Draft, forgetDraft, keepDraft, readDraft } from '../day/draft.ts';
import { readSheet } from '../day/read-sheet.ts';
import { readInput } from '../input-file.ts';
import { keepIn } from '../keep.ts';
import { type OpenBook, withBook } from '../open-book.ts';
import type { Sheet } from '../outcome.ts';
import { readPairs } from '../pairs.ts';
import { orStop, Stopped } from '../problem.ts';
import { textOptions } from '../text-options.ts';

type Readings = Readonly<Record<string, string>>;

export function run(call: Call): Promise<Sheet> {
  call.holdApart('from', 'set');
  const people = call.wholeNumber('people', { least: 0, most: 10_000 });
  return withBook(call, { write: !call.has('dry-run') }, async (open) => {
    const form = orStop(await dayForm(open.desk, open.moment));
    const keep = (readings: Readings): Promise<Sheet> => {
      const request = {
        what: 'day' as const,
        readings,
        ...(people !== undefined && { peopleAboard: people }),
      };
      return keepIn(open, request, usualAt(open, form));
    };
    const given = await givenReadings(open, form);
    if (given !== null) return keep(given);
    // What stands against the line is said before anybody walks to the meters.
    await tryIt(open, form);
    return await walk(open, form, keep);
  });
}

/** A practice book's line belongs to its own next evening. */
function usualAt({ desk }: OpenBook, form: DayForm): string | undefined {
  return desk.info.purpose === 'practice' ? formatIsoUtc(form.lineAtMs) : undefined;
}

async function givenReadings({ call }: OpenBook, form: DayForm): Promise<Readings | null> {
  if (call.has('set')) return readPairs(call.texts('set'), '--set');
  const file = call.text('from') ?? (call.mayAsk() ? undefined : '-');
  return file === undefined ? null : readSheet(await readInput(call, file), form.items);
}

async function tryIt(open: OpenBook, form: DayForm): Promise<void> {
  await keepIn(open, { what: 'day', readings: {} }, usualAt(open, form), { dryRun: true });
}

async function walk(
  open: OpenBook,
  form: DayForm,
  keep: (readings: Readings) => Promise<Sheet>,
): Promise<Sheet> {
  const { call, place, moment } = open;
  const draft = readDraft(place.path, form.day);
  const asked = await askDay({ terminal: call.terminal, form, draft, options: textOptions(call, 'stderr') });
  const typed: Draft = { day: form.day, by: moment.by, typed: asked.typed };
  if (!asked.isWhole) throw leave(typed, form, place.path);
  try {
    const sheet = await keep(Object.fromEntries(asked.typed));
    if (!call.has('dry-run')) forgetDraft(place.path);
    return sheet;
  } catch (error) {
    // A slip among the readings is mended by asking again, not by typing all of them anew.
    keepDraft(place.path, typed);
    throw error;
  }
}

function leave(draft: Draft, form: DayForm, path: string): Stopped {
  const count = draft.typed.size;
  if (count === 0) return new Stopped(['', 'Nothing was written.']);
  keepDraft(path, draft);
  return new Stopped([
    '',
    `Kept for later: ${count} of ${form.items.length} meters of Day ${form.day}. Nothing stands in the book yet.`,
    'Go on with: waterwright log day',
  ]);
}
