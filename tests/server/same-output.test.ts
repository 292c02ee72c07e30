// Every golden record of commands that read and enter comes out to the letter when the commands go through a running server.
import { afterAll, expect, test, vi } from 'vitest';

vi.stubEnv('WATERWRIGHT_TEST_THROUGH', 'server');
const { Console } = await import('../golden/cli/console.ts');
let served = 0;
const end = Console.prototype.end;
Console.prototype.end = function counted(this: InstanceType<typeof Console>) {
  served += this.served;
  return end.call(this);
};
await import('../golden/cli/codes.test.ts');
await import('../golden/cli/commands.test.ts');
await import('../golden/cli/count.test.ts');
await import('../golden/cli/day.test.ts');
await import('../golden/cli/refused.test.ts');

test('control: books were served while the records were made', () => {
  expect(served).toBeGreaterThan(20);
});

afterAll(() => {
  Console.prototype.end = end;
});
