// What this device remembers: who uses it, how it looks, which strokes are usual, what was typed and not saved yet.
import { store } from './store.ts';

export interface Device {
  readonly office: string;
  readonly theme: 'auto' | 'light' | 'dark' | 'dim';
  readonly targets: 'normal' | 'glove' | 'dense';
  readonly keys: boolean;
  /** How often each count of strokes was entered here. */
  readonly strokes: Readonly<Record<string, number>>;
  readonly person: string;
  /** A day line that is half typed, by its day. */
  readonly line: { readonly day: number; readonly values: Readonly<Record<string, string>> } | null;
  /** When each office looked last, ISO. */
  readonly looked: Readonly<Record<string, string>>;
}

const NAME = 'waterwright';
const fresh: Device = {
  office: 'keeper',
  theme: 'auto',
  targets: 'normal',
  keys: true,
  strokes: {},
  person: '',
  line: null,
  looked: {},
};

export const device = store<Device>(read());

function read(): Device {
  try {
    const kept = JSON.parse(window.localStorage.getItem(NAME) ?? '{}') as Partial<Device>;
    return { ...fresh, ...kept };
  } catch {
    return fresh;
  }
}

export function remember(change: Partial<Device>): void {
  device.set({ ...device.get(), ...change });
  try {
    window.localStorage.setItem(NAME, JSON.stringify(device.get()));
  } catch {
    // A browser that keeps nothing still shows and enters everything.
  }
  applyDevice();
}

/** Theme and size of things to press stand on the root, where the style sheets look for them. */
export function applyDevice(): void {
  const { theme, targets } = device.get();
  const root = document.documentElement;
  if (theme === 'auto') root.removeAttribute('data-theme');
  else root.setAttribute('data-theme', theme);
  root.setAttribute('data-targets', targets);
}
