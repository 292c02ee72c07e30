// The part of a file that has the right shape: what can still be checked across when something else is wrong.
import type * as z from 'zod';
import { type Fault, MOST_FINDINGS, type OutpostFindingCode, type Path } from '../outpost-finding.ts';
import { fileSchema, type OutpostFile } from '../shape/file-schema.ts';
import type { YamlTree } from '../yaml-tree.ts';

export type Section = keyof OutpostFile;
type ListSection = { [S in Section]: OutpostFile[S] extends unknown[] ? S : never }[Section];
type ItemOf<S extends ListSection> = OutpostFile[S] extends (infer Item)[] ? Item : never;
type Result = z.ZodSafeParseResult<OutpostFile>;
type Raw = Readonly<Record<string, unknown>>;

export interface Placed<Item> {
  readonly item: Item;
  readonly path: Path;
}

/** Leaves out every faulty section, and of a list only the faulty items. */
function withoutFaults(raw: Raw, issues: readonly z.core.$ZodIssue[], places: Map<string, number[]>): Raw {
  const bad = new Map<string, Set<number> | 'all'>();
  for (const { path } of issues) {
    const [section, index] = path;
    if (typeof section !== 'string') continue;
    const known = bad.get(section);
    if (typeof index !== 'number' || !Array.isArray(raw[section])) bad.set(section, 'all');
    else if (known !== 'all') bad.set(section, (known ?? new Set<number>()).add(index));
  }
  const sound: Record<string, unknown> = {};
  for (const [section, value] of Object.entries(raw)) {
    const faulty = bad.get(section);
    if (faulty === undefined) sound[section] = value;
    else if (faulty !== 'all') {
      const kept = (value as unknown[]).map((_, index) => index).filter((index) => !faulty.has(index));
      places.set(section, kept);
      sound[section] = kept.map((index) => (value as unknown[])[index]);
    }
  }
  return sound;
}

function knownKeysOnly(raw: Raw): Raw {
  const known = new Set(Object.keys(fileSchema().shape));
  return Object.fromEntries(Object.entries(raw).filter(([key]) => known.has(key)));
}

function wholeSection({ path }: z.core.$ZodIssue): readonly string[] {
  return path.length === 1 && typeof path[0] === 'string' ? [path[0]] : [];
}

/** What the checks read from and report to. */
export class SoundPart {
  readonly faults: Fault[] = [];
  readonly file: Partial<OutpostFile>;
  /** The file as written, for the ids of items that are otherwise at fault: a reference to them is no second fault. */
  readonly raw: Raw;
  readonly #tree: YamlTree;
  readonly #places = new Map<string, number[]>();
  /** Sections that are wrong as a whole: what they would have named is not known. */
  readonly unreadable: ReadonlySet<string>;

  constructor(tree: YamlTree, parsed: Result) {
    this.#tree = tree;
    this.raw = typeof tree.value === 'object' && tree.value !== null ? (tree.value as Raw) : {};
    this.unreadable = new Set((parsed.error?.issues ?? []).flatMap(wholeSection));
    this.file = parsed.success ? parsed.data : this.#rescue(parsed.error.issues);
  }

  #rescue(issues: readonly z.core.$ZodIssue[]): Partial<OutpostFile> {
    const sound = withoutFaults(knownKeysOnly(this.raw), issues, this.#places);
    const again = fileSchema().partial().safeParse(sound, { jitless: true });
    return again.success ? (again.data as Partial<OutpostFile>) : {};
  }

  /** The sound items of a list, each with the way to it in the file as written. */
  each<S extends ListSection>(section: S): readonly Placed<ItemOf<S>>[] {
    const items: readonly unknown[] = this.file[section] ?? [];
    const places = this.#places.get(section);
    return items.map((item, index) => ({
      item: item as ItemOf<S>,
      path: [section, places?.[index] ?? index],
    }));
  }

  /** True when so much is wrong that no more will be shown: a costly check may then stop. */
  get isFull(): boolean {
    return this.faults.length > MOST_FINDINGS;
  }

  add(code: OutpostFindingCode, path: Path, data: Fault['data']): void {
    this.faults.push({ code, spot: { offset: this.#tree.spotOf(path), path }, data });
  }
}
