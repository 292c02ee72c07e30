// Runs the benches: each measures against its own yardstick in the same run, so that a figure means the same on any machine.
import { readdirSync } from 'node:fs';
import { arch, availableParallelism, cpus, platform } from 'node:os';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchTable } from './bench-table.ts';

interface BenchRun {
  readonly bench: string;
  readonly seconds: number;
  readonly rows: readonly BenchRow[];
  readonly error?: string;
}

const words = process.argv.slice(2);
const asJson = words.includes('--json');
const wanted = words.filter((word) => !word.startsWith('-'));
const names = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith('.bench.ts'))
  .map((name) => name.replace(/\.bench\.ts$/, ''))
  .sort();
const unknown = wanted.filter((name) => !names.includes(name));

if (unknown.length > 0 || names.length === 0) {
  console.error(
    `No bench is called ${unknown.join(', ') || 'anything yet'}. There are: ${names.join(', ') || 'none'}`,
  );
  process.exitCode = 2;
} else {
  const runs: BenchRun[] = [];
  for (const name of names.filter((each) => wanted.length === 0 || wanted.includes(each))) {
    console.error(`bench ${name} …`);
    runs.push(await runOf(name));
  }
  report(runs);
}

async function runOf(name: string): Promise<BenchRun> {
  const started = performance.now();
  const seconds = (): number => (performance.now() - started) / 1000;
  try {
    const { bench } = (await import(`./${name}.bench.ts`)) as { bench: Bench };
    const rows = await bench();
    return {
      bench: name,
      seconds: seconds(),
      rows,
      ...(rows.length === 0 ? { error: 'measured nothing' } : {}),
    };
  } catch (error) {
    return { bench: name, seconds: seconds(), rows: [], error: String(error) };
  }
}

/** The JSON alone goes to standard output with `--json`; else the table does. A missed goal or an error fails the run. */
function report(runs: readonly BenchRun[]): void {
  const machine = {
    node: process.version,
    platform: `${platform()}-${arch()}`,
    processor: cpus()[0]?.model ?? 'unknown',
    cores: availableParallelism(),
    note: 'ratios compare figures of one run; absolute figures belong to this machine',
  };
  const missed = runs.flatMap((run) =>
    run.rows.filter((row) => !row.ok).map((row) => `${run.bench}: ${row.name}`),
  );
  const errors = runs.flatMap((run) => (run.error === undefined ? [] : [`${run.bench}: ${run.error}`]));
  if (asJson) {
    console.log(JSON.stringify({ machine, runs, missed, errors }, null, 2));
  } else {
    console.log(`Node ${machine.node}, ${machine.platform}, ${machine.cores} cores, ${machine.processor}`);
    console.log(`Note: ${machine.note}.\n`);
    console.log(benchTable(runs));
    console.log(`\n${missed.length} goals missed${missed.length > 0 ? `: ${missed.join('; ')}` : ''}`);
    for (const error of errors) console.log(`Error in ${error}`);
  }
  process.exitCode = missed.length + errors.length === 0 ? 0 : 1;
}
