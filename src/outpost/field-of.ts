// The name of a place in an outpost file as a keeper would say it: by ids, not by counting.
import type { Path } from './outpost-finding.ts';

type Keys = Readonly<Record<string | number, unknown>>;

const NAMING_KEYS = ['id', 'office', 'vehicle'] as const;

/** What an item of a list is called, if it says so. */
function labelOf(item: unknown): string | undefined {
  if (typeof item !== 'object' || item === null) return undefined;
  const keys = item as Keys;
  const name = NAMING_KEYS.map((key) => keys[key]).find((value) => typeof value === 'string');
  if (typeof name === 'string') return name;
  const ids = keys['ids'];
  return Array.isArray(ids) && typeof ids[0] === 'string' ? `${ids[0]} …` : undefined;
}

/**
 * Items without an id are counted from 1, as people do.
 * @example fieldOf(['stores', 3, 'capacityL'], value) // 'stores[C-04].capacityL'
 */
export function fieldOf(path: Path, root?: unknown): string {
  let field = '';
  let value = root;
  for (const step of path) {
    value = typeof value === 'object' && value !== null ? (value as Keys)[step] : undefined;
    if (typeof step === 'number') field += `[${labelOf(value) ?? step + 1}]`;
    else field += field === '' ? step : `.${step}`;
  }
  return field;
}
