// Samples: the list, and one with its figures and what its water touched.
import { positionOf } from '../../account/index.ts';
import type { SampleSheet, SamplesSheet } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import type { Desk, Moment, Sight } from '../desk.ts';
import { volumeFigure } from '../figures.ts';
import { headOf } from '../today.ts';
import { dueLines } from './due.ts';
import { follow } from './hold-tree.ts';
import { findSample, knownSamples } from './sample-add.ts';
import { sampleLines } from './sample-lines.ts';
import { type Seen, seenAt } from './seen.ts';
import { suspicionIn } from './suspicion-in.ts';
import { treeSheet } from './tree-sheet.ts';

/** Samples that are shown where nobody says how many. */
const USUAL = 20;

export async function sampleList(
  desk: Desk,
  query: { readonly most?: number },
  sight: Sight,
  moment: Moment,
): Promise<Answer<SamplesSheet>> {
  const looked = await seenAt(desk, sight, moment);
  if (!looked.ok) return looked;
  const all = sampleLines(looked.value);
  const samples = all.slice(-(query.most ?? USUAL));
  return yes({
    head: headOf(desk, sight, looked.value.position),
    samples,
    older: all.length - samples.length,
    due: dueLines(looked.value, all),
  });
}

export async function sampleShow(
  desk: Desk,
  query: { readonly sample: string },
  sight: Sight,
  moment: Moment,
): Promise<Answer<SampleSheet>> {
  const looked = await seenAt(desk, sight, moment);
  if (!looked.ok) return looked;
  const seen = looked.value;
  const found = findSample(knownSamples(seen.fold, seen.past), query.sample);
  if (!found.ok) return found;
  const line = sampleLines(seen).findLast(({ sample }) => sample === found.value);
  if (line === undefined) throw new Error(`the sample ${found.value} has no line`);
  const tree = line.state === 'failed' ? await treeOf(seen, found.value) : yes(null);
  if (!tree.ok) return tree;
  const { samples, results } = seen.past;
  const entry = samples.findLast(({ body }) => body.sample === found.value);
  const volumeMg = entry?.body.volumeMg;
  const because = { entries: entry === undefined ? [] : [entry.id], method: 'as entered', inputs: [] };
  return yes({
    head: headOf(desk, sight, seen.position),
    sample: line,
    method: methodsOf(results.filter(({ body }) => body.sample === found.value)),
    volume:
      volumeMg === undefined
        ? null
        : { ...volumeFigure(seen.position, { massMg: volumeMg, uMg: 0 }, because), u95: null },
    tree: tree.value,
  });
}

/** How it was read, in the words of the entries. */
function methodsOf(results: Seen['past']['results']): readonly string[] {
  const said = results.flatMap(({ body }) => [
    body.method,
    body.madeAt,
    body.custody === 'broken' ? 'custody broken' : undefined,
    body.preliminary === true ? 'preliminary' : undefined,
    body.degassed === undefined ? undefined : body.degassed ? 'degassed' : 'not degassed',
  ]);
  return [...new Set(said.flatMap((word) => word ?? []))];
}

async function treeOf(seen: Seen, sample: string) {
  const followed = await follow(seen, (history) => suspicionIn(seen, history, sample));
  if (!followed.ok || followed.value === null) return followed.ok ? yes(null) : followed;
  const { position, fold } = seen;
  const after = positionOf(fold, position.atMs);
  return yes(await treeSheet(seen, { followed: followed.value, sample, before: position, after }));
}
