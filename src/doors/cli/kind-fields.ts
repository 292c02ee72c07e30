// The fields of an entry kind as lines of text, for help and for whoever left one out.
import { formOf } from '../../desk/index.ts';

export function fieldList(kind: string): readonly string[] {
  const fields = formOf(kind) ?? [];
  const width = Math.max(0, ...fields.map(({ name }) => name.length));
  return fields.map(
    ({ name, takes, needed }) => `  --${name.padEnd(width)}  ${takes}${needed ? '' : ' (if known)'}`,
  );
}
