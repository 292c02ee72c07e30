// English for the medic's queue.
import type { QualitySheet, WaitingStore } from '../../sheets/quality.ts';
import { counted } from './said.ts';

export const qualityLabels = {
  due: 'DUE',
  waiting: 'WAITS FOR A RELEASE',
  parked: 'PARKED',
  ending: 'ENDS SOON',
  off: 'NO LIMIT SET: HOLD',
  sum: ({ due, waiting }: QualitySheet): string => {
    const overdue = due.filter(({ overdueDays }) => overdueDays > 0).length;
    const late = overdue === 0 ? '' : `, ${overdue}\u00A0overdue`;
    return `Medic\u2019s queue: ${counted(due.length, 'thing')} due${late}; ${counted(waiting.length, 'store')} ${waiting.length === 1 ? 'waits' : 'wait'} for a release.`;
  },
  parkedLine: (hold: string, owner: string, until: string, over: boolean): string =>
    `${hold} with ${owner} until ${until}${over ? ', which is over' : ''}: waterwright hold show ${hold}`,
  offLine: (set: string, row: string, parameter: string): string => `${parameter}: ${row} of ${set}`,
  endingOf: (kind: 'release' | 'waiver', by: string): string =>
    kind === 'release' ? `release by ${by}` : `waiver by ${by}`,
  why: {
    hold: 'HOLD',
    conditional: 'CONDITIONAL',
    'not released': 'NOT RELEASED',
    'release over': 'release over',
  } satisfies Record<WaitingStore['why'], string>,
  columns: {
    store: 'STORE',
    mark: 'MARK',
    hold: 'HOLD',
    volume: 'VOLUME L',
    lacks: 'LACKS',
    what: 'WHAT',
    until: 'UNTIL',
  },
} as const;
