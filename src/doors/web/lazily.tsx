// A part of the page that comes when it is first asked for. React's own way waits 0.3 s before it shows what has come.
import type { ComponentType, ReactNode } from 'react';
import { store } from './store.ts';

type Loaded<Props> = ComponentType<Props> & { readonly load: () => Promise<void> };

export function lazily<Props extends object>(
  bring: () => Promise<ComponentType<Props>>,
  meanwhile: ReactNode = null,
): Loaded<Props> {
  const here = store<{ readonly Part: ComponentType<Props> } | null>(null);
  let coming: Promise<void> | null = null;
  const load = () => {
    coming ??= bring().then((Part) => here.set({ Part }));
    return coming;
  };
  // biome-ignore lint/correctness/noComponentHookFactories: made once for each part, when its module is read.
  function Lazily(props: Props) {
    const brought = here.use();
    if (brought !== null) return <brought.Part {...props} />;
    void load();
    return meanwhile;
  }
  return Object.assign(Lazily, { load });
}
