// Keeping entries: numbered, sealed, and appended all together or not at all.
import { canonicalJson, type Json } from './canonical.ts';
import type { AnyDraft, AnyEntry } from './entry.ts';
import { type BookPort, HeadMoved, headOf, IdTaken, type KeptEntry } from './port.ts';
import { FIRST_SEAL, type Hash, type Head, sealOf } from './seal.ts';
import type { BookFinding } from './validate.ts';

export interface KeepResult {
  /** Entries that are in the book now and were not before, in their order. */
  readonly kept: readonly AnyEntry[];
  /** Ids that were in the book already with the same content. */
  readonly alreadyKept: readonly string[];
}

export type KeepOutcome = ({ ok: true } & KeepResult) | { ok: false; findings: BookFinding[] };

const TRIES_WHEN_OTHERS_WRITE = 20;

/**
 * Appends drafts to the chain of the book's own site. Same id and same content is no new entry;
 * same id and other content is a finding, and then nothing is kept.
 */
export async function keepDrafts(
  port: BookPort,
  drafts: readonly AnyDraft[],
  by: { readonly hash: Hash; readonly keptAtMs: number },
): Promise<KeepOutcome> {
  // Nearly always all ids are new, and the store refuses the whole append where one is not: only then is each looked up.
  let lookUp: LookUp | null = null;
  for (let attempt = 1; ; attempt++) {
    try {
      return await keepOnce(port, await sortOut(lookUp, drafts), by);
    } catch (error) {
      const othersWrote = error instanceof HeadMoved || error instanceof IdTaken;
      if (!othersWrote || attempt >= TRIES_WHEN_OTHERS_WRITE) throw error;
      if (error instanceof IdTaken) lookUp = (id) => port.find(id);
    }
  }
}

async function keepOnce(
  port: BookPort,
  sorted: Sorted,
  by: { readonly hash: Hash; readonly keptAtMs: number },
): Promise<KeepOutcome> {
  if (sorted.findings.length > 0) return { ok: false, findings: sorted.findings };
  const { site } = await port.info();
  const head = headOf(await port.heads(), site, FIRST_SEAL);
  const { entries, rows } = sealAll(sorted.fresh, head, by);
  if (rows.length > 0) await port.append(rows, [head]);
  return { ok: true, kept: entries, alreadyKept: sorted.alreadyKept };
}

type LookUp = (id: string) => Promise<KeptEntry | null>;

interface Sorted {
  readonly fresh: AnyDraft[];
  readonly alreadyKept: string[];
  readonly findings: BookFinding[];
}

/** Tells new drafts from ones that the book has, and from ones that contradict it. */
async function sortOut(lookUp: LookUp | null, drafts: readonly AnyDraft[]): Promise<Sorted> {
  const sorted: Sorted = { fresh: [], alreadyKept: [], findings: [] };
  const seen = new Map<string, AnyDraft>();
  for (const draft of drafts) {
    const kept = lookUp === null ? null : await lookUp(draft.id);
    const earlier = kept === null ? seen.get(draft.id) : (JSON.parse(kept.text) as AnyEntry);
    if (earlier === undefined) {
      seen.set(draft.id, draft);
      sorted.fresh.push(draft);
    } else if (contentOf(earlier) === contentOf(draft)) sorted.alreadyKept.push(draft.id);
    else sorted.findings.push(reused(draft, kept));
  }
  return sorted;
}

/** What makes two entries the same: all but the number that the site gave. */
export function contentOf(entry: AnyDraft | AnyEntry): string {
  const { site: _site, number: _number, ...content } = entry as AnyEntry;
  return canonicalJson(content as unknown as Json);
}

function reused(draft: AnyDraft, kept: KeptEntry | null): BookFinding {
  return {
    code: 'id-reused',
    severity: 'error',
    where:
      draft.origin?.line === undefined ? { entry: draft.id } : { entry: draft.id, line: draft.origin.line },
    data: {
      id: draft.id,
      ref: draft.origin?.ref ?? null,
      keptSite: kept?.site ?? null,
      keptNumber: kept?.number ?? null,
    },
    entries: [draft.id],
  };
}

function sealAll(
  drafts: readonly AnyDraft[],
  head: Head,
  by: { readonly hash: Hash; readonly keptAtMs: number },
): { entries: AnyEntry[]; rows: KeptEntry[] } {
  const entries: AnyEntry[] = [];
  const rows: KeptEntry[] = [];
  let seal = head.seal;
  let number = head.number;
  for (const draft of drafts) {
    number += 1;
    const entry = { ...draft, site: head.site, number } as AnyEntry;
    const text = canonicalJson(entry as unknown as Json);
    seal = sealOf(by.hash, seal, text);
    entries.push(entry);
    rows.push(rowOf(entry, { text, seal, keptAtMs: by.keptAtMs }));
  }
  return { entries, rows };
}

/** The row of an entry: the columns repeat what its text says, so that a scan need not read the text. */
export function rowOf(entry: AnyEntry, sealed: { text: string; seal: string; keptAtMs: number }): KeptEntry {
  const { id, kind, site, number, happenedAtMs, enteredAtMs } = entry;
  return { id, kind, site, number, happenedAtMs, enteredAtMs, ...sealed };
}
