// Reads an outpost file: text in, a frozen outpost or every fault out. It never throws and touches nothing.
import { checkAcross } from './check/check-across.ts';
import { fieldOf } from './field-of.ts';
import type { Outpost } from './outpost.ts';
import { type Fault, MOST_FINDINGS, type OutpostFinding } from './outpost-finding.ts';
import { resolveOutpost } from './resolve-outpost.ts';
import { fileSchema } from './shape/file-schema.ts';
import { ShapeFaults } from './shape-faults.ts';
import { findingsOf, readYaml } from './yaml-source.ts';
import type { YamlTree } from './yaml-tree.ts';

export type ReadOutpost =
  | { readonly ok: true; readonly outpost: Outpost; readonly findings: readonly OutpostFinding[] }
  | { readonly ok: false; readonly findings: readonly OutpostFinding[] };

/** A number or key that was left out of the tree is missing from it too: that is no second fault. */
function judgeShape(tree: YamlTree): { readonly faults: readonly Fault[]; readonly outpost?: Outpost } {
  const parsed = fileSchema().safeParse(tree.value, { jitless: true });
  const shape = new ShapeFaults(tree, fileSchema());
  const leftOut = new Set(tree.faults.map(({ spot }) => fieldOf(spot.path ?? [])));
  const issues = (parsed.error?.issues ?? []).slice(0, MOST_FINDINGS + 1).flatMap((issue) => shape.of(issue));
  const fresh = issues.filter(({ spot }) => !leftOut.has(fieldOf(spot.path ?? [])));
  const faults = [...tree.faults, ...fresh, ...checkAcross(tree, parsed)];
  return parsed.success && faults.length === 0
    ? { faults, outpost: resolveOutpost(parsed.data) }
    : { faults };
}

/** @example readOutpost(text, { file: 'corrie/outpost.yaml' }) */
export function readOutpost(text: string, { file }: { readonly file: string }): ReadOutpost {
  const read = readYaml(text, { file });
  if (!read.ok) return read;
  const { faults, outpost } = judgeShape(read.tree);
  if (outpost === undefined) return { ok: false, findings: findingsOf(faults, read.source) };
  return { ok: true, outpost, findings: Object.freeze([]) };
}
