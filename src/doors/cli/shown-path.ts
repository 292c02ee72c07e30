// Paths as people see them: from the folder that they are in, where the file lies in it.
import { isAbsolute, relative, sep } from 'node:path';
import type { Finding } from '../../ground/units/index.ts';

export function shownPath(cwd: string, path: string): string {
  const inside = relative(cwd, path);
  const isOutside = inside === '' || inside === '..' || inside.startsWith(`..${sep}`) || isAbsolute(inside);
  return isOutside ? path : inside;
}

/** A finding with its paths shown so; only whole values that are paths are looked at. */
export function withShownPaths(cwd: string, finding: Finding): Finding {
  const shown = (value: string) => (value.startsWith(`${cwd}${sep}`) ? shownPath(cwd, value) : value);
  const { where, data } = finding;
  return {
    ...finding,
    where: where.file === undefined ? where : { ...where, file: shown(where.file) },
    data: Object.fromEntries(
      Object.entries(data).map(([key, value]) => {
        if (typeof value === 'string') return [key, shown(value)];
        return [
          key,
          Array.isArray(value)
            ? value.map((each: unknown) => (typeof each === 'string' ? shown(each) : each))
            : value,
        ];
      }),
    ) as Finding['data'],
  };
}
