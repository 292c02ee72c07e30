// A part of the checks: what it found, how long it took, and the table and closing line that sum the parts up.

export interface Part {
  readonly name: string;
  readonly passed: number;
  readonly failed: number;
  /** What was looked at, in words for the table. */
  readonly looked: string;
  readonly seconds: number;
  /** What the person has to read when something failed. */
  readonly output: string;
}

/** A check that counts as one. */
export function check(
  name: string,
  found: { readonly ok: boolean; readonly looked?: string; readonly output: string },
  seconds: number,
): Part {
  const { ok, looked = '', output } = found;
  return { name, passed: ok ? 1 : 0, failed: ok ? 0 : 1, looked, seconds, output };
}

export async function timed<T>(work: () => T | Promise<T>): Promise<{ result: T; seconds: number }> {
  const started = performance.now();
  const result = await work();
  return { result, seconds: (performance.now() - started) / 1000 };
}

export function table(parts: readonly Part[]): string {
  const rows = [
    ['part', 'passed', 'failed', 'seconds', 'looked at'],
    ...parts.map((part) => [
      part.name,
      String(part.passed),
      String(part.failed),
      part.seconds.toFixed(1),
      part.looked,
    ]),
  ];
  const widths = rows[0]?.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0))) ?? [];
  const isFigure = (column: number): boolean => column > 0 && column < 4;
  return rows
    .map((row) =>
      row
        .map((cell, column) =>
          isFigure(column) ? cell.padStart(widths[column] ?? 0) : cell.padEnd(widths[column] ?? 0),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** The line that ends every run of checks; other programs read it. */
export function closingLine(parts: readonly Pick<Part, 'passed' | 'failed'>[]): string {
  const passed = parts.reduce((sum, part) => sum + part.passed, 0);
  const failed = parts.reduce((sum, part) => sum + part.failed, 0);
  return `${passed} passed, ${failed} failed`;
}

/** Prints what failed, the table and the closing line; sets the exit code: nothing run is a failure too. */
export function close(parts: readonly Part[]): void {
  for (const part of parts) {
    if (part.failed > 0 && part.output !== '') console.log(`\n--- ${part.name}\n${part.output}`);
  }
  console.log(`\n${table(parts)}\n`);
  console.log(closingLine(parts));
  const ok = parts.every((part) => part.failed === 0) && parts.some((part) => part.passed > 0);
  process.exitCode = ok ? 0 : 1;
}
