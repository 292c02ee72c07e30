// `store add`: a store that the outpost file does not name.
import type { Call } from '../call.ts';
import { keepFor } from '../keep.ts';
import type { Sheet } from '../outcome.ts';
import { wrongUse } from '../problem.ts';

export function run(call: Call): Promise<Sheet> {
  const given = (name: string, key: string): Record<string, string> => {
    const text = call.text(name);
    return text === undefined ? {} : { [key]: text };
  };
  const fields = {
    store: call.arg(0),
    kind: needed(call, 'kind', 'A container, for example.'),
    capacityL: needed(call, 'capacity', 'What it can hold, for example 22L.'),
    usableRemainderL: call.text('remainder') ?? '0 L',
    grade: call.text('grade') ?? '-',
    ...given('amount', 'amount'),
    ...given('name', 'name'),
    ...given('place', 'place'),
  };
  return keepFor(call, { what: 'told', kind: 'store-added', fields });
}

function needed(call: Call, flag: string, because: string): string {
  const text = call.text(flag);
  if (text !== undefined) return text;
  throw wrongUse('flag-needed', { flag: `--${flag}`, command: 'store add', because });
}
