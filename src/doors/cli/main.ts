// The program that a launcher starts: hands the words on the command line to the frame, and its exit code to the system.
import { runCommandLine } from './frame.ts';
import { nodeTerminal } from './node-terminal.ts';

process.exitCode = await runCommandLine(process.argv.slice(2), nodeTerminal());
