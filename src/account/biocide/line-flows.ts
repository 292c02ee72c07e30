// When water last went through each port and each hose.
import type { AnyEntry } from '../../book/index.ts';
import type { OutpostIndex } from '../../outpost/index.ts';
import type { Fold } from '../fold.ts';
import type { StoreState } from '../store-state.ts';
import type { LineFlow } from './storage.ts';

export class LineFlows {
  readonly #ports = new Map<string, number>();
  readonly #hoses = new Map<string, number>();
  readonly #hoseOfRun = new Map<string, string>();

  flowed(fold: Fold, entry: AnyEntry, stores: readonly (StoreState | null)[]): void {
    const { happenedAtMs: atMs } = entry;
    for (const state of stores) {
      const port = state === null ? null : fold.portOf(state.facts.id);
      // Water that a person moved by a hose went through no port.
      if (port !== null && this.#hoseOf(entry) === null) this.#ports.set(port, atMs);
    }
    const hose = this.#hoseOf(entry);
    if (hose !== null) this.#hoses.set(hose, atMs);
  }

  /** A part of a run need not name the hose again. */
  heard({ kind, body }: AnyEntry): void {
    if (kind !== 'run-start' && kind !== 'run-pause' && kind !== 'run-resume') return;
    if (body.hose !== undefined) this.#hoseOfRun.set(body.run, body.hose);
  }

  #hoseOf({ kind, body }: AnyEntry): string | null {
    if (kind === 'movement' || kind === 'push') return body.hose ?? null;
    if (kind !== 'run-pause' && kind !== 'run-finish') return null;
    return body.hose ?? this.#hoseOfRun.get(body.run) ?? null;
  }

  /** Every line of the outpost file, also those through which nothing went yet. */
  all({ ports, hoses }: OutpostIndex): readonly LineFlow[] {
    return [
      ...[...ports.keys()].map((line) => ({
        line,
        kind: 'port' as const,
        lastFlowMs: this.#ports.get(line) ?? null,
      })),
      ...[...hoses.keys()].map((line) => ({
        line,
        kind: 'hose' as const,
        lastFlowMs: this.#hoses.get(line) ?? null,
      })),
    ];
  }
}
