// Runs the console record of the README, line by line on one book, and holds what it prints against what stands there.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Console, record } from './console.ts';

const ROOT = join(import.meta.dirname, '../../..');
const README = join(ROOT, 'README.md');

const block = /```console\n([\s\S]*?)```/g;

/** The blocks as they come out when their commands are run one after the other. */
async function rerun(text: string): Promise<string> {
  const console = new Console('readme');
  const env: Record<string, string> = {};
  const blocks: string[] = [];
  for (const [, body = ''] of text.matchAll(block)) {
    const parts: string[] = [];
    for (const line of body
      .split('\n')
      .filter((each) => each.startsWith('$ '))
      .map((each) => each.slice(2))) {
      const assigned = /^export (\w+)=(\S+)$/.exec(line);
      if (assigned?.[1] !== undefined) env[assigned[1]] = assigned[2] ?? '';
      parts.push(assigned === null ? shown(line, await console.run(line, { env })) : `$ ${line}\n`);
    }
    blocks.push(`\`\`\`console\n${parts.join('')}\`\`\``);
  }
  console.end();
  let next = 0;
  return text.replace(block, () => blocks[next++] ?? '');
}

/** A terminal shows both streams alike. */
function shown(line: string, ran: Awaited<ReturnType<Console['run']>>): string {
  return record(line, { code: 0, out: ran.out + ran.err, err: '' });
}

test('the console record of the README is what the commands print', async () => {
  const text = readFileSync(README, 'utf8');
  expect([...text.matchAll(block)].length).toBeGreaterThanOrEqual(5);
  const wanted = await rerun(text);
  if (process.env['WATERWRIGHT_GOLDEN'] === 'write') writeFileSync(README, wanted);
  else expect(text, 'differs from what the commands print; run: npm run golden').toBe(wanted);
});

test('every page that the README names is there', () => {
  const links = [...readFileSync(README, 'utf8').matchAll(/\]\(([^)#]+)\)/g)].map(([, path]) => path ?? '');
  expect(links.length).toBeGreaterThan(8);
  expect(links.filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
});
