// The flags of a calculator are the inputs that it has, no more and no fewer.
import { expect, test } from 'vitest';
import { reckonForms } from '../../../src/desk/index.ts';
import { RECKON_COMMANDS } from '../../../src/doors/cli/tables/reckon.ts';

/** Flags that are no inputs. */
const NO_INPUTS = ['explain', 'days'];

const { forms } = reckonForms();

test('every calculator is a command, and no other', () => {
  const commands = RECKON_COMMANDS.map(({ path }) => path[1]);
  expect([...commands].sort()).toEqual(forms.map(({ calculator }) => calculator).sort());
});

test.each(forms)('$calculator', ({ calculator, fields }) => {
  const command = RECKON_COMMANDS.find(({ path }) => path[1] === calculator);
  const flags = (command?.flags ?? []).map((flag) => (typeof flag === 'string' ? flag : flag.name));
  const inputs = flags.filter((name) => !NO_INPUTS.includes(name));
  expect([...inputs].sort()).toEqual(fields.map(({ name }) => name).sort());
});
