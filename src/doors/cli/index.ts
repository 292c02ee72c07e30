// The door of the command line: what the tests and the papers about it may use.
export type { Command } from './command.ts';
export { COMMANDS } from './commands.ts';
export { EXIT, type ExitCode } from './exit-code.ts';
export { flagsOf } from './find-command.ts';
export { ALL_FLAGS, CIRCUMSTANCE_FLAGS, type Flag, GLOBAL_FLAGS } from './flags.ts';
export { runCommandLine } from './frame.ts';
export { serverLog, serverLogPath } from './server-log.ts';
export type { OutStream, Reply, Terminal } from './terminal.ts';
