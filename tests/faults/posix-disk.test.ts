// The model of the disk and the reader of recorded calls, held against cases small enough to see through.
import { expect, test } from 'vitest';
import { chanceFrom } from '../contract/made-up-entries.ts';
import { PosixDisk, type Survival } from './posix-disk.ts';
import { type DiskEvent, readEvents } from './system-calls.ts';

const hex = (text: string) =>
  `"${[...Buffer.from(text)].map((byte) => `\\x${byte.toString(16).padStart(2, '0')}`).join('')}"`;

test('recorded calls become events: names, places, results, calls cut in two, and nothing from other folders', () => {
  const log = [
    `7 openat(AT_FDCWD, ${hex('/d/a')}, O_RDWR|O_CREAT|O_CLOEXEC, 0644) = 5`,
    `7 pwrite64(5, ${hex('water')}, 5, 100) = 5`,
    `7 fsync(5 <unfinished ...>`,
    `8 openat(AT_FDCWD, ${hex('/etc/a')}, O_RDONLY) = 6`,
    `8 write(6, ${hex('no')}, 2) = 2`,
    `7 <... fsync resumed>) = 0`,
    `7 write(5, ${hex('half')}, 4) = 2`,
    `7 ftruncate(5, 9 <unfinished ...>`,
    `7 <... ftruncate resumed>) = 0`,
    `7 pwrite64(5, ${hex('x')}, 1, 0) = -1 EIO (Input/output error)`,
    `7 close(5) = 0`,
    `7 openat(AT_FDCWD, ${hex('/d')}, O_RDONLY|O_CLOEXEC) = 5`,
    `7 fsync(5) = 0`,
    `7 rename(${hex('/d/a')}, ${hex('/d/b')}) = 0`,
    `7 write(1, ${hex('ack 1\n')}, 6) = 6`,
    `7 unlink(${hex('/d/b')}) = 0`,
    '7 +++ exited with 0 +++',
  ];
  expect(readEvents(log.join('\n'), '/d')).toEqual([
    { call: 'create', name: 'a' },
    { call: 'write', name: 'a', offset: 100, bytes: Buffer.from('water') },
    { call: 'sync', name: 'a' },
    { call: 'write', name: 'a', offset: 0, bytes: Buffer.from('ha') },
    { call: 'truncate', name: 'a', size: 9 },
    { call: 'sync-folder', name: '' },
    { call: 'rename', name: 'a', to: 'b' },
    { call: 'say', text: 'ack 1\n' },
    { call: 'remove', name: 'b' },
  ]);
});

test('a call that the model does not know, or a string that strace cut, is no silent gap', () => {
  const open = `7 openat(AT_FDCWD, ${hex('/d/a')}, O_RDWR|O_CREAT, 0644) = 5\n`;
  expect(() => readEvents(`${open}7 fallocate(5, 0, 0, 4096) = 0`, '/d')).toThrow(/does not know fallocate/);
  expect(() => readEvents(`${open}7 pwrite64(5, ${hex('wat')}..., 5000, 0) = 5000`, '/d')).toThrow(
    /cut a string/,
  );
});

function diskAfter(...events: DiskEvent[]) {
  const disk = new PosixDisk();
  for (const event of events) disk.apply(event);
  return (survival: Survival, seed = 1) =>
    Object.fromEntries(
      [...disk.afterCut(survival, chanceFrom(seed))].map(([name, bytes]) => [name, bytes.toString('latin1')]),
    );
}

const write = (name: string, text: string, offset = 0): DiskEvent => ({
  call: 'write',
  name,
  offset,
  bytes: Buffer.from(text),
});
const folder: DiskEvent = { call: 'sync-folder', name: '' };
const create = (name: string): DiskEvent => ({ call: 'create', name });

test('bytes count after the sync of their file, names after the sync of their folder', () => {
  const nameless = diskAfter(create('a'), write('a', 'one'), { call: 'sync', name: 'a' });
  expect([nameless('nothing'), nameless('everything')]).toEqual([{}, { a: 'one' }]);
  const named = diskAfter(
    create('a'),
    folder,
    write('a', 'one'),
    { call: 'sync', name: 'a' },
    write('a', 'two'),
  );
  expect([named('nothing'), named('everything')]).toEqual([{ a: 'one' }, { a: 'two' }]);
  const removed = diskAfter(create('a'), folder, { call: 'remove', name: 'a' });
  expect([removed('nothing'), removed('everything')]).toEqual([{ a: '' }, {}]);
});

test('a rename is there or not, never half', () => {
  const cut = diskAfter(
    create('a'),
    write('a', 'old'),
    { call: 'sync', name: 'a' },
    create('b'),
    write('b', 'new'),
    { call: 'sync', name: 'b' },
    folder,
    {
      call: 'rename',
      name: 'b',
      to: 'a',
    },
  );
  expect([cut('nothing'), cut('everything')]).toEqual([{ a: 'old', b: 'new' }, { a: 'new' }]);
  for (let seed = 0; seed < 50; seed++) expect([1, 2]).toContain(Object.keys(cut('any part', seed)).length);
});

test('what grows again after it was cut off is zeros, and a hole is zeros', () => {
  const cut = diskAfter(
    create('a'),
    folder,
    write('a', 'secret'),
    { call: 'truncate', name: 'a', size: 1 },
    write('a', 'x', 4),
  );
  expect(cut('everything')).toEqual({ a: 's\0\0\0x' });
  expect(cut('nothing')).toEqual({ a: '' });
});

test('some of the parts survive, in sectors where the write was torn', () => {
  const long = 'w'.repeat(2048);
  const cut = diskAfter(create('a'), folder, write('a', long), write('a', long, 2048));
  const sizes = new Set<number>();
  let mixed = 0;
  for (let seed = 0; seed < 200; seed++) {
    const { a = '' } = cut('any part, torn', seed);
    sizes.add(a.length);
    for (let at = 0; at < a.length; at += 512)
      expect(['w'.repeat(512), '\0'.repeat(512)]).toContain(a.slice(at, at + 512));
    if (a.includes('w') && a.includes('\0')) mixed += 1;
  }
  expect(sizes.size).toBeGreaterThan(4);
  expect(mixed).toBeGreaterThan(20);
});
