// Keys of a line that is shown nowhere, as a terminal sends them one by one: what is typed, taken back, ended and broken off.
import type { Reply } from './terminal.ts';

const ENTER = /^[\r\n]$/;
const TAKEN_BACK = new Set(['\u007f', '\b']);
const CTRL_C = '\u0003';
const CTRL_D = '\u0004';
const CTRL_U = '\u0015';
/** Arrows and the marks around a pasted text. */
const SEQUENCE = /\p{Cc}(?:\[[0-9;]*[A-Za-z~]|O[A-Z])/gu;
/** More than any code has; the rest of what a cat typed is dropped. */
const MOST_SIGNS = 200;

export class HiddenLine {
  #typed = '';
  /** What came behind an Enter, for the next question. */
  #rest = '';

  /** The answer, once there is one. */
  take(keys: string): Reply | null {
    const all = [...(this.#rest + keys).replaceAll(SEQUENCE, '').replaceAll('\r\n', '\n')];
    this.#rest = '';
    for (const [at, key] of all.entries()) {
      const reply = this.#press(key);
      if (reply === null) continue;
      this.#typed = '';
      this.#rest = all.slice(at + 1).join('');
      return reply;
    }
    return null;
  }

  #press(key: string): Reply | null {
    if (ENTER.test(key)) return { said: this.#typed };
    if (key === CTRL_C) return 'stopped';
    if (key === CTRL_D && this.#typed === '') return 'end of input';
    if (key === CTRL_U) this.#typed = '';
    else if (TAKEN_BACK.has(key)) this.#typed = [...this.#typed].slice(0, -1).join('');
    else if (key >= ' ' && this.#typed.length < MOST_SIGNS) this.#typed += key;
    return null;
  }
}
