// A disk that keeps no more than POSIX promises: bytes count after the sync of their file, names after the sync of their folder.
import type { Chance } from '../contract/made-up-entries.ts';
import type { DiskEvent } from './system-calls.ts';

type Change = { readonly offset: number; readonly bytes: Buffer } | { readonly size: number };

interface File {
  /** What is on the disk for certain. */
  safe: Buffer;
  /** What was written since: each of it may be there, or not, or a part of it. */
  readonly pending: Change[];
}

type NameChange =
  | { readonly set: string; readonly file: File }
  | { readonly remove: string }
  | { readonly move: string; readonly to: string };

/** How much of what was not synced survives the cut. */
export type Survival = 'nothing' | 'a prefix' | 'any part' | 'any part, torn' | 'everything';

const SECTOR = 512;

export class PosixDisk {
  readonly #safeNames = new Map<string, File>();
  readonly #names = new Map<string, File>();
  readonly #pendingNames: NameChange[] = [];

  apply(event: DiskEvent): void {
    switch (event.call) {
      case 'create':
        if (!this.#names.has(event.name)) this.#setName(event.name, { safe: Buffer.alloc(0), pending: [] });
        return;
      case 'write':
        this.#file(event.name).pending.push({ offset: event.offset, bytes: event.bytes });
        return;
      case 'truncate':
        this.#file(event.name).pending.push({ size: event.size });
        return;
      case 'sync':
        sync(this.#file(event.name));
        return;
      case 'sync-folder':
        for (const change of this.#pendingNames.splice(0)) applyName(this.#safeNames, change);
        return;
      case 'remove':
        this.#change({ remove: event.name });
        return;
      case 'rename':
        this.#change({ move: event.name, to: event.to });
        return;
      case 'link':
        this.#setName(event.to, this.#file(event.name));
        return;
      default:
    }
  }

  /** The files that somebody finds after the power came back. */
  afterCut(survival: Survival, chance: Chance): Map<string, Buffer> {
    const names = new Map(this.#safeNames);
    for (const change of surviving(this.#pendingNames, survival, chance)) applyName(names, change);
    return new Map([...names].map(([name, file]) => [name, imageOf(file, survival, chance)]));
  }

  #file(name: string): File {
    const file = this.#names.get(name);
    if (file === undefined) throw new Error(`${name} was written before it was made`);
    return file;
  }

  #setName(name: string, file: File): void {
    this.#change({ set: name, file });
  }

  #change(change: NameChange): void {
    applyName(this.#names, change);
    this.#pendingNames.push(change);
  }
}

function applyName(names: Map<string, File>, change: NameChange): void {
  if ('set' in change) names.set(change.set, change.file);
  else if ('remove' in change) names.delete(change.remove);
  else {
    const file = names.get(change.move);
    if (file === undefined) return;
    names.delete(change.move);
    names.set(change.to, file);
  }
}

function surviving<T>(changes: readonly T[], survival: Survival, chance: Chance): readonly T[] {
  if (survival === 'nothing') return [];
  if (survival === 'everything') return changes;
  if (survival === 'a prefix') return changes.slice(0, Math.floor(chance() * (changes.length + 1)));
  const share = chance();
  return changes.filter(() => chance() < share);
}

function sync(file: File): void {
  file.safe = written(file.safe, file.pending);
  file.pending.length = 0;
}

function imageOf(file: File, survival: Survival, chance: Chance): Buffer {
  const kept = surviving(file.pending, survival, chance);
  return written(
    file.safe,
    survival === 'any part, torn' ? kept.flatMap((change) => torn(change, chance)) : kept,
  );
}

/** A disk writes sectors of 512 bytes; a cut may come between any two of them. */
function torn(change: Change, chance: Chance): readonly Change[] {
  if ('size' in change || chance() < 0.5) return [change];
  const sectors: Change[] = [];
  for (let at = 0; at < change.bytes.length; at += SECTOR) {
    if (chance() < 0.5) continue;
    sectors.push({ offset: change.offset + at, bytes: change.bytes.subarray(at, at + SECTOR) });
  }
  return sectors;
}

function written(safe: Buffer, changes: readonly Change[]): Buffer {
  let size = safe.length;
  let most = size;
  for (const change of changes) {
    size = 'size' in change ? change.size : Math.max(size, change.offset + change.bytes.length);
    most = Math.max(most, size);
  }
  const image = Buffer.alloc(most);
  safe.copy(image);
  let end = safe.length;
  for (const change of changes) {
    if ('size' in change) {
      // What is cut off is gone: where the file grows again there are zeros.
      if (change.size < end) image.fill(0, change.size, end);
      end = change.size;
    } else {
      change.bytes.copy(image, change.offset);
      end = Math.max(end, change.offset + change.bytes.length);
    }
  }
  return image.subarray(0, size);
}
