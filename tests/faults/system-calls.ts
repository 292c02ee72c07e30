// Reads what strace recorded of a process into the few events that matter to a disk.

export type DiskEvent =
  | { readonly call: 'create' | 'sync-folder'; readonly name: string }
  | { readonly call: 'write'; readonly name: string; readonly offset: number; readonly bytes: Buffer }
  | { readonly call: 'truncate'; readonly name: string; readonly size: number }
  | { readonly call: 'sync' | 'remove'; readonly name: string }
  | { readonly call: 'rename' | 'link'; readonly name: string; readonly to: string }
  | { readonly call: 'say'; readonly text: string };

/** The calls that are recorded; a call that changes files and is not among them would make the images wrong. */
export const RECORDED =
  'open,openat,creat,pwrite64,write,writev,pwritev,pwritev2,ftruncate,truncate,fallocate,fsync,fdatasync,sync_file_range,' +
  'unlink,unlinkat,rename,renameat,renameat2,link,linkat,close,dup,dup2,dup3,io_uring_enter';

interface Call {
  readonly name: string;
  readonly words: string;
  readonly result: number;
}

/** @param folder the folder whose files are followed; files of others are passed over */
export function readEvents(log: string, folder: string): DiskEvent[] {
  const reader = new EventReader(folder);
  const events: DiskEvent[] = [];
  for (const call of readCalls(log)) events.push(...reader.read(call));
  return events;
}

/** Calls that another thread cut in two are put together again at the line that tells their result. */
function* readCalls(log: string): Generator<Call> {
  const halves = new Map<string, string>();
  for (const line of log.split('\n')) {
    const [, pid = '', rest = ''] = /^(\d+)\s+(.*)$/s.exec(line) ?? [];
    if (rest.endsWith('<unfinished ...>')) {
      halves.set(pid, rest.slice(0, -'<unfinished ...>'.length));
      continue;
    }
    const resumed = /^<\.\.\. \w+ resumed>/.exec(rest);
    const whole = resumed === null ? rest : (halves.get(pid) ?? '') + rest.slice(resumed[0].length);
    const [, name, words, result] = /^(\w+)\((.*)\)\s+= (-?\d+|0x[0-9a-f]+|\?)/s.exec(whole) ?? [];
    // Between the halves strace puts a space.
    if (name !== undefined && words !== undefined)
      yield { name, words: words.trimEnd(), result: Number(result) };
  }
}

class EventReader {
  readonly #folder: string;
  readonly #open = new Map<number, { readonly name: string; place: number }>();

  constructor(folder: string) {
    this.#folder = folder;
  }

  read({ name, words, result }: Call): readonly DiskEvent[] {
    if (!(result >= 0)) return [];
    if (name === 'open' || name === 'openat' || name === 'creat') return this.#opened(words, result);
    if (/^(unlink|rename|link)/.test(name)) return this.#renamed(name, words);
    const fd = Number.parseInt(words, 10);
    if (name === 'write' && fd === 1) return [{ call: 'say', text: bytesIn(words).toString('utf8') }];
    const file = this.#open.get(fd);
    if (file === undefined) return [];
    if (name !== 'close') return [this.#onFile(name, words, result, file)];
    this.#open.delete(fd);
    return [];
  }

  #onFile(name: string, words: string, result: number, file: { name: string; place: number }): DiskEvent {
    if (name === 'fsync' || name === 'fdatasync')
      return { call: file.name === '' ? 'sync-folder' : 'sync', name: file.name };
    if (name === 'ftruncate') return { call: 'truncate', name: file.name, size: lastNumber(words) };
    if (name === 'pwrite64' || name === 'write') {
      const bytes = bytesIn(words).subarray(0, result);
      const offset = name === 'write' ? file.place : lastNumber(words);
      if (name === 'write') file.place += result;
      return { call: 'write', name: file.name, offset, bytes };
    }
    throw new Error(`the model of the disk does not know ${name} on ${file.name}`);
  }

  #opened(words: string, fd: number): readonly DiskEvent[] {
    const name = this.#nameOf(bytesIn(words).toString('utf8'));
    if (name === null) return [];
    this.#open.set(fd, { name, place: 0 });
    const events: DiskEvent[] = [];
    if (words.includes('O_CREAT')) events.push({ call: 'create', name });
    if (words.includes('O_TRUNC')) events.push({ call: 'truncate', name, size: 0 });
    return events;
  }

  #renamed(name: string, words: string): readonly DiskEvent[] {
    const [from = null, to = null] = stringsIn(words).map((path) => this.#nameOf(path.toString('utf8')));
    if (from === null) return [];
    if (name.startsWith('unlink')) return [{ call: 'remove', name: from }];
    if (to === null) throw new Error(`${from} left the folder`);
    return [{ call: name.startsWith('rename') ? 'rename' : 'link', name: from, to }];
  }

  /** Name in the followed folder; '' for the folder itself; null for anything else. */
  #nameOf(path: string): string | null {
    if (path === this.#folder) return '';
    return path.startsWith(`${this.#folder}/`) ? path.slice(this.#folder.length + 1) : null;
  }
}

function lastNumber(words: string): number {
  return Number(/(\d+)$/.exec(words)?.[1]);
}

function bytesIn(words: string): Buffer {
  return stringsIn(words)[0] ?? Buffer.alloc(0);
}

/** strace -xx writes every byte of a string as \xNN. */
function stringsIn(words: string): Buffer[] {
  return [...words.matchAll(/"((?:\\x[0-9a-f]{2})*)"(\.\.\.)?/g)].map(([, hex = '', cut]) => {
    if (cut !== undefined) throw new Error('strace cut a string: it has to record whole pages');
    return Buffer.from(hex.replaceAll('\\x', ''), 'hex');
  });
}
