// Faults between parts of a file that are right one by one; run on whatever part has the right shape.
import type * as z from 'zod';
import type { Fault } from '../outpost-finding.ts';
import type { OutpostFile } from '../shape/file-schema.ts';
import type { YamlTree } from '../yaml-tree.ts';
import { checkOtherKeys, collectIds } from './known-ids.ts';
import { checkNeedsOfAKind } from './needs-of-a-kind.ts';
import { checkOrderOfAmounts } from './order-of-amounts.ts';
import { checkReferences } from './references.ts';
import { checkRulesOfWater } from './rules-of-water.ts';
import { SoundPart } from './sound-part.ts';
import { checkSums } from './sums.ts';

export function checkAcross(tree: YamlTree, parsed: z.ZodSafeParseResult<OutpostFile>): readonly Fault[] {
  const part = new SoundPart(tree, parsed);
  const known = collectIds(part);
  checkOtherKeys(part);
  checkReferences(part, known);
  checkNeedsOfAKind(part);
  checkOrderOfAmounts(part);
  checkSums(part);
  checkRulesOfWater(part);
  return part.faults;
}
