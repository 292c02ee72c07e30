// Reads a file of limits: text in, a frozen set or every fault out. It never throws and touches nothing.
import { fieldOf } from '../field-of.ts';
import { freezeDeep } from '../freeze-deep.ts';
import { MOST_FINDINGS } from '../outpost-finding.ts';
import { ShapeFaults } from '../shape-faults.ts';
import { findingsOf, readYaml } from '../yaml-source.ts';
import type { YamlTree } from '../yaml-tree.ts';
import { checkRows, type LimitFault } from './check-rows.ts';
import type { LimitSetFinding } from './limit-finding.ts';
import type { LimitFigures, LimitRow, LimitSet } from './limit-set.ts';
import { type LimitSetFile, limitSetSchema } from './limit-set-schema.ts';

export type ReadLimitSet =
  | { readonly ok: true; readonly set: LimitSet; readonly findings: readonly LimitSetFinding[] }
  | { readonly ok: false; readonly findings: readonly LimitSetFinding[] };

/** @example readLimitSet(text, { file: 'limits/national-aesthetic-limits.yaml' }) */
export function readLimitSet(text: string, { file }: { readonly file: string }): ReadLimitSet {
  const read = readYaml(text, { file });
  if (!read.ok) return read;
  const { faults, set } = judge(read.tree);
  if (set === undefined) return { ok: false, findings: findingsOf(faults, read.source) };
  return { ok: true, set, findings: Object.freeze([]) };
}

function judge(tree: YamlTree): { readonly faults: readonly LimitFault[]; readonly set?: LimitSet } {
  const schema = limitSetSchema();
  const parsed = schema.safeParse(tree.value, { jitless: true });
  const shape = new ShapeFaults(tree, schema);
  const leftOut = new Set(tree.faults.map(({ spot }) => fieldOf(spot.path ?? [])));
  const issues = (parsed.error?.issues ?? []).slice(0, MOST_FINDINGS + 1).flatMap((issue) => shape.of(issue));
  const fresh = issues.filter(({ spot }) => !leftOut.has(fieldOf(spot.path ?? [])));
  const faults = [...tree.faults, ...fresh, ...checkRows(tree)];
  return parsed.success && faults.length === 0 ? { faults, set: resolved(parsed.data) } : { faults };
}

function resolved({ set, sources, acts, rows }: LimitSetFile): LimitSet {
  const sourceOf = new Map(sources.map(({ id, source }) => [id, source]));
  const actOf = new Map(acts.map((act) => [act.id, act]));
  return freezeDeep({
    ...set,
    rows: rows.map((row) =>
      resolvedRow(row, { set, source: sourceOf.get(row.source), act: actOf.get(row.act) }),
    ),
  });
}

interface Named {
  readonly set: LimitSetFile['set'];
  readonly source: string | undefined;
  readonly act: LimitSetFile['acts'][number] | undefined;
}

function resolvedRow(row: LimitSetFile['rows'][number], { set, source, act }: Named): LimitRow {
  if (source === undefined || act === undefined) throw new Error(`row ${row.id} was not checked`);
  // What was a name in the file stands in full in the row.
  const { status, atLeast: _least, atMost: _most, remembered, act: _act, ...rest } = row;
  return {
    ...rest,
    limit: status === 'on' ? figures(row) : null,
    remembered: remembered ?? null,
    source,
    cause: act.cause,
    consequence: act.consequence,
    firstAct: act.firstAct,
    timeToActH: act.timeToActH,
    requiredFor: row.requiredFor ?? set.uses,
    neededOf: row.neededOf,
    noneIfBelow: row.noneIfBelow ?? null,
    duplicatesWithinShare: row.duplicatesWithinShare ?? null,
    note: row.note ?? '',
    typed: null,
  };
}

function figures({ atLeast, atMost }: LimitFigures): LimitFigures {
  return { ...(atLeast !== undefined && { atLeast }), ...(atMost !== undefined && { atMost }) };
}
