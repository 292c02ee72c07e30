// The door of the command line: what the tests of the whole program use; the program itself starts at main.ts.
export type { Command } from './command.ts';
export { COMMANDS } from './commands.ts';
export { flagsOf } from './find-command.ts';
export { runCommandLine } from './frame.ts';
export type { OutStream, Terminal } from './terminal.ts';
