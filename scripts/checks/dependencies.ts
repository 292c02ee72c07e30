// Every package that we depend on has a row in docs/dependencies.md that says why, and every row a package.

export interface DependencyReport {
  readonly names: readonly string[];
  readonly says: readonly string[];
}

export function checkDependencies(packageJson: string, page: string): DependencyReport {
  const { dependencies, optionalDependencies, devDependencies } = JSON.parse(packageJson) as Record<
    string,
    Record<string, string> | undefined
  >;
  const wanted = { ...dependencies, ...optionalDependencies, ...devDependencies };
  const names = Object.keys(wanted);
  const reasons = reasonsIn(page);
  const says = [
    ...(names.length === 0 ? ['package.json names no package'] : []),
    ...names.filter((name) => !reasons.has(name)).map((name) => `${name} has no row in docs/dependencies.md`),
    ...names.filter((name) => reasons.get(name) === '').map((name) => `${name} has a row without a reason`),
    ...[...reasons.keys()]
      .filter((name) => !(name in wanted))
      .map((name) => `${name} has a row and is not used`),
    ...names
      .filter((name) => !/^\d+\.\d+\.\d+$/.test(wanted[name] ?? ''))
      .map((name) => `${name} is not at one exact version`),
  ];
  return { names, says };
}

/** Rows like "| `name` | what it does here | why it and not our own code |": the reason is the last cell. */
function reasonsIn(page: string): ReadonlyMap<string, string> {
  const rows = page.split('\n').flatMap((line) => {
    const cells = line.split('|').map((cell) => cell.trim());
    const name = /^`([^`]+)`$/.exec(cells[1] ?? '')?.[1];
    return name === undefined ? [] : [[name, cells.at(-2) ?? ''] as const];
  });
  return new Map(rows);
}
