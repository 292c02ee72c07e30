// Cuts the power after every recorded call in several ways, and has each disk that is left looked at.
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chanceFrom } from '../contract/made-up-entries.ts';
import { PosixDisk, type Survival } from './posix-disk.ts';
import { hear } from './run-writer.ts';
import type { DiskEvent } from './system-calls.ts';

export interface CutTally {
  readonly events: number;
  images: number;
  /** Images in which something that was written is not there. */
  faulty: number;
  readonly bySurvival: Map<Survival, number>;
  readonly faults: string[];
}

/** What the look at an image says is wrong with it, or null. `acked` is −1 before anything was acknowledged. */
export type Look = (folder: string, names: ReadonlySet<string>, acked: number) => Promise<string | null>;

/**
 * @param survivals ways to cut at each call; a way that is listed twice is drawn twice
 * @param mostFaults stop after so many: a broken control need not be counted to its end
 */
export async function cutEverywhere(
  events: readonly DiskEvent[],
  folder: string,
  by: {
    readonly survivals: readonly Survival[];
    readonly seed: number;
    readonly look: Look;
    readonly skip?: RegExp;
  },
): Promise<CutTally> {
  const chance = chanceFrom(by.seed);
  const disk = new PosixDisk();
  const tally: CutTally = { events: events.length, images: 0, faulty: 0, bySurvival: new Map(), faults: [] };
  let said = '';
  for (const [at, event] of events.entries()) {
    if (event.call === 'say') said += event.text;
    disk.apply(event);
    const whole = new Map(disk.afterCut('everything', chance));
    for (const survival of by.survivals) {
      const files = disk.afterCut(survival, chance);
      tally.images += 1;
      tally.bySurvival.set(survival, (tally.bySurvival.get(survival) ?? 0) + 1);
      if (!sameFiles(files, whole)) tally.faulty += 1;
      const fault = await lookAt(files, folder, { ...by, acked: hear(said).acked });
      if (fault !== null) tally.faults.push(`after call ${at} (${event.call}), ${survival} kept: ${fault}`);
    }
  }
  return tally;
}

function lookAt(
  files: ReadonlyMap<string, Buffer>,
  folder: string,
  by: { readonly look: Look; readonly acked: number; readonly skip?: RegExp },
): Promise<string | null> {
  mkdirSync(folder, { recursive: true });
  for (const name of readdirSync(folder)) rmSync(join(folder, name));
  const names = new Set([...files.keys()].filter((name) => by.skip?.test(name) !== true));
  for (const name of names) writeFileSync(join(folder, name), files.get(name) as Buffer);
  return by.look(folder, names, by.acked);
}

function sameFiles(a: ReadonlyMap<string, Buffer>, b: ReadonlyMap<string, Buffer>): boolean {
  return a.size === b.size && [...a].every(([name, bytes]) => b.get(name)?.equals(bytes) === true);
}
