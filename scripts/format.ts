// Formats the named files, or all, and mends what the linter can mend by itself.
import { runTool } from './checks/run-tool.ts';

const words = process.argv.slice(2);
const { status } = await runTool('biome', ['check', '--write', ...(words.length > 0 ? words : ['.'])], {
  aloud: true,
});
process.exitCode = status;
