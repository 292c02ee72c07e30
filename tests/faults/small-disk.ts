// Small file systems of one's own: mounted for one test, and taken away whatever happens in it.
import { mkdirSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { need, needRoot, system } from './needs.ts';

export interface SmallDisk {
  readonly folder: string;
  /** Bytes that are free. */
  readonly free: () => number;
  /** Fills all but `leave` bytes with a file; 0 leaves nothing. */
  readonly fill: (leave: number) => void;
  readonly unfill: () => void;
  readonly remount: (how: 'ro' | 'rw') => void;
}

export type SmallDiskKind = 'tmpfs' | 'ext4 with blocks of 1 KiB' | 'ext4 with blocks of 4 KiB';

const MEGABYTES = 8;

export async function onSmallDisk(
  kind: SmallDiskKind,
  work: (disk: SmallDisk) => Promise<void>,
): Promise<void> {
  needRoot();
  need('mount');
  const place = mkdtempSync(join(tmpdir(), 'waterwright-disk-'));
  const folder = join(place, 'disk');
  mkdirSync(folder);
  mount(kind, place, folder);
  try {
    await work(diskAt(folder));
  } finally {
    system('umount', [folder]);
    rmSync(place, { recursive: true, force: true });
  }
}

function mount(kind: SmallDiskKind, place: string, folder: string): void {
  if (kind === 'tmpfs') {
    system('mount', ['-t', 'tmpfs', '-o', `size=${MEGABYTES}m`, 'tmpfs', folder]);
    return;
  }
  need('mkfs.ext4');
  const image = join(place, 'image');
  writeFileSync(image, Buffer.alloc(MEGABYTES * 1024 * 1024));
  // Root may use the blocks that are kept back for it, so none are.
  system('mkfs.ext4', ['-q', '-m', '0', '-b', kind.includes('1 KiB') ? '1024' : '4096', image]);
  system('mount', ['-o', 'loop', image, folder]);
}

function diskAt(folder: string): SmallDisk {
  const filler = join(folder, 'filler');
  const free = () => {
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize;
  };
  return {
    folder,
    free,
    fill: (leave) => {
      for (let bytes = free() - leave; bytes > 0; bytes = Math.min(free() - leave, Math.floor(bytes / 2)))
        append(filler, bytes);
    },
    unfill: () => rmSync(filler),
    remount: (how) => system('mount', ['-o', `remount,${how}`, folder]),
  };
}

function append(filler: string, bytes: number): void {
  try {
    writeFileSync(filler, Buffer.alloc(bytes), { flag: 'a', flush: true });
  } catch (error) {
    if ((error as { code?: unknown }).code !== 'ENOSPC') throw error;
  }
}
