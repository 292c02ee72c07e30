// Table of all commands, in the order in which help shows them.
import type { Command } from './command.ts';
import { BED_COMMANDS } from './tables/bed.ts';
import { BOOK_COMMANDS } from './tables/book.ts';
import { CODE_COMMANDS } from './tables/code.ts';
import { COUNT_COMMANDS } from './tables/count.ts';
import { EVERYDAY_COMMANDS } from './tables/everyday.ts';
import { INBOX_COMMANDS } from './tables/inbox.ts';
import { LOG_COMMANDS } from './tables/log.ts';
import { QUALITY_COMMANDS } from './tables/quality.ts';
import { RECKON_COMMANDS } from './tables/reckon.ts';
import { REPORT_COMMANDS } from './tables/report.ts';

export const COMMANDS: readonly Command[] = [
  ...EVERYDAY_COMMANDS,
  ...LOG_COMMANDS,
  ...QUALITY_COMMANDS,
  ...COUNT_COMMANDS,
  ...BOOK_COMMANDS,
  ...CODE_COMMANDS,
  ...INBOX_COMMANDS,
  ...QUALITY_COMMANDS,
  ...BED_COMMANDS,
  ...RECKON_COMMANDS,
  ...REPORT_COMMANDS,
];
