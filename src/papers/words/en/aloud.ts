// English for Today read aloud: the page in at most 400 signs, in words that survive a voice loop.
import {
  formatClockUtc,
  formatFigure,
  parseInstantIso,
  roundCoverDays,
} from '../../../ground/units/index.ts';
import type { CoverFigure, TodaySheet } from '../../sheets/today.ts';
import { firstThought } from '../../text/commands.ts';
import { needsOf } from '../../text/today-needs.ts';
import { counted } from './said.ts';

/** Longer than this nobody repeats back without an error. */
export const LONGEST_ALOUD = 400;

/** What must be said comes first; what does not fit any more is left out whole, never cut. */
export function aloud(sheet: TodaySheet): string {
  const sentences = [
    headAloud(sheet),
    ...(sheet.silence === null ? [] : [sheet.silence.text]),
    ...coversAloud(sheet),
    ...reserveAloud(sheet),
    heldAloud(sheet),
    needsAloud(sheet),
    ...gravestAloud(sheet),
  ].map(spoken);
  let text = '';
  for (const sentence of sentences) {
    const longer = text === '' ? sentence : `${text} ${sentence}`;
    if (longer.length <= LONGEST_ALOUD) text = longer;
  }
  return text;
}

/** Signs as they are said. */
function spoken(sentence: string): string {
  return sentence
    .replace(/[\u00A0\u202F]/g, (sign) => (sign === '\u00A0' ? ' ' : ''))
    .replace(/(?<=\d) L\b/g, ' litres')
    .replace(/(?<=\d) mL\b/g, ' millilitres')
    .replaceAll('±', 'plus minus')
    .replaceAll('\u2212', 'minus ')
    .replace(/\b(?:HOLD|CONDITIONAL)\b/g, (word) => word.toLowerCase());
}

function headAloud({ head }: TodaySheet): string {
  const at = parseInstantIso(head.at);
  return at.ok ? `Day ${head.day}, ${formatClockUtc(at.instant.utcMs)} UTC.` : `Day ${head.day}.`;
}

/** How sure the days are is said once, with the first that there are. */
function coversAloud({ cover }: TodaySheet): string[] {
  const covers = Object.entries(cover);
  const first = covers.findIndex(([, each]) => hasDays(each));
  return covers.map(([grade, each], k) => coverAloud(grade, each, k === first));
}

const saidDays = (days: number): string => roundCoverDays(days).replace(/\.0$/, '');

function hasDays({ basis, q05 }: CoverFigure): boolean {
  return basis !== 'not enough data' && q05 !== null && saidDays(q05) !== '0';
}

function coverAloud(grade: string, cover: CoverFigure, isFirst: boolean): string {
  const free = `${grade.charAt(0).toUpperCase()}${grade.slice(1)} water: ${formatFigure(cover.free, { style: 'screen' })} free`;
  if (cover.basis === 'not enough data') return `${free}, cover not known yet.`;
  if (cover.q05 === null) return `${free}, it does not run out.`;
  if (!hasDays(cover)) return `${free}, no day to count on.`;
  const days = saidDays(cover.q05);
  return `${free}, ${days === '1' ? '1 day' : `${days} days`}${isFirst ? ' in 19 of 20 outcomes' : ''}.`;
}

function reserveAloud({ reserve }: TodaySheet): string[] {
  if (reserve === null) return [];
  const conditional = Math.round(reserve.conditionalL);
  const part = conditional > 0 ? `, ${conditional} of it conditional` : '';
  return [
    `Reserve: ${formatFigure(reserve.volume, { style: 'screen' })}${part}, floor ${Math.round(reserve.floorL)}.`,
  ];
}

function heldAloud({ stores }: TodaySheet): string {
  const held = stores.filter((store) => store.held).length;
  return held === 0 ? 'Nothing on hold.' : `${counted(held, 'store')} on hold.`;
}

function needsAloud({ findings }: TodaySheet): string {
  // Counted as the page has them: what is alike stands in one line.
  const lines = needsOf(findings).map(({ finding }) => finding.severity);
  const now = lines.filter((severity) => severity === 'act-now').length;
  const day = lines.filter((severity) => severity === 'act-today').length;
  if (now + day === 0) return 'Nothing needs you.';
  if (now === 0) return `${counted(day, 'thing')} to act on today.`;
  return `${counted(now, 'thing')} to act on now${day === 0 ? '' : `, ${day} today`}.`;
}

/** What needs somebody first, where there is room for it. */
function gravestAloud({ findings }: TodaySheet): string[] {
  const first = findings.find(({ severity }) => severity === 'act-now' || severity === 'act-today');
  return first === undefined ? [] : [`First: ${firstThought(first.text)}`];
}
