// Faults between parts of a file that are right one by one.
import type { z } from 'zod';
import type { Fault } from '../outpost-finding.ts';
import type { OutpostFile } from '../shape/file-schema.ts';
import type { YamlTree } from '../yaml-tree.ts';

export function checkAcross(_tree: YamlTree, _parsed: z.ZodSafeParseResult<OutpostFile>): readonly Fault[] {
  return [];
}
