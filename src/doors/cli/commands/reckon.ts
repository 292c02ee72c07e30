// `reckon`: the calculators, from flags, or from what the book knows of its stores and hoses.
import { condensateSheet, type ReckonRequest, reckon, reckonForms, reckonOver } from '../../../desk/index.ts';
import { condensateText, type ReckonSheet, reckonText } from '../../../papers/index.ts';
import { findBook } from '../book-path.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Sheet } from '../outcome.ts';
import { orStop } from '../problem.ts';
import { sightOf } from '../sight.ts';

export async function run(call: Call): Promise<Sheet> {
  const what = call.command.path[1] ?? '';
  if (call.has('days')) return await condensateByDay(call);
  const fields: Record<string, string> = {};
  for (const flag of call.command.flags) {
    const name = typeof flag === 'string' ? flag : flag.name;
    const text = name === 'explain' ? undefined : call.text(name);
    if (text !== undefined) fields[name] = text;
  }
  const sheet = await answered(call, { what, fields });
  const how = { explain: call.has('explain') };
  return { schema: 'reckoning', data: sheet, text: (options) => reckonText(sheet, options, how) };
}

/** Figures alone need no book; one that nobody named, and none of whose names is asked for, adds nothing to them. */
async function answered(call: Call, request: ReckonRequest): Promise<ReckonSheet> {
  const place = findBook(call);
  const form = reckonForms().forms.find(({ calculator }) => calculator === request.what);
  const isAsked = form?.fields.some(
    ({ name, kind }) => (kind === 'store' || kind === 'hose') && name in request.fields,
  );
  if (place === null || (place.fallback && isAsked !== true)) return orStop(reckon(request, null));
  return await withBook(call, { write: false, place }, async ({ desk, moment }) =>
    orStop(await reckonOver(desk, request, await sightOf(call, desk, moment), moment)),
  );
}

/** What the condensers should have brought, day by day, and what they brought. */
function condensateByDay(call: Call): Promise<Sheet> {
  const days = call.wholeNumber('days', { least: 1, most: 100_000 }) ?? null;
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sight = await sightOf(call, desk, moment);
    const sheet = orStop(await condensateSheet(desk, { sight, moment, query: { days } }));
    return { schema: 'condensate', data: sheet, text: (options) => condensateText(sheet, options) };
  });
}
