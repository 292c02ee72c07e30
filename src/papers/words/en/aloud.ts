// English for Today read aloud: the page in at most 400 signs, in words that survive a voice loop.
import { formatFigure, roundCoverDays } from '../../../ground/units/index.ts';
import type { CoverFigure, TodaySheet } from '../../sheets/today.ts';
import { counted } from './said.ts';

/** Longer than this nobody repeats back without an error. */
export const LONGEST_ALOUD = 400;

/** What must be said comes first; what does not fit any more is left out whole, never cut. */
export function aloud(sheet: TodaySheet): string {
  const sentences = [
    `Day ${sheet.head.day}, ${sheet.head.stamp.slice(-9)}.`,
    ...(sheet.silence === null ? [] : [sheet.silence.text]),
    ...Object.entries(sheet.cover).map(([grade, cover]) => coverAloud(grade, cover)),
    ...reserveAloud(sheet),
    heldAloud(sheet),
    needsAloud(sheet),
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
    .replaceAll('\u00A0', ' ')
    .replaceAll('±', 'plus minus')
    .replaceAll(' L', ' litres')
    .replaceAll('\u2212', 'minus ');
}

function coverAloud(grade: string, cover: CoverFigure): string {
  const free = formatFigure(cover.free, { style: 'screen' });
  const name = `${grade.charAt(0).toUpperCase()}${grade.slice(1)}`;
  if (cover.basis === 'not enough data') return `${name} ${free} free, no cover yet.`;
  return `${name} ${free} free, ${cover.q05 === null ? 'does not run out' : `${roundCoverDays(cover.q05)} days in 19 of 20`}.`;
}

function reserveAloud({ reserve }: TodaySheet): string[] {
  if (reserve === null) return [];
  const conditional = reserve.conditionalL > 0 ? ', part of it conditional' : '';
  return [
    `Reserve ${formatFigure(reserve.volume, { style: 'screen' })}, floor ${Math.round(reserve.floorL)} L${conditional}.`,
  ];
}

function heldAloud({ stores }: TodaySheet): string {
  const held = stores.filter((store) => store.held).length;
  return held === 0 ? 'Nothing on hold.' : `${counted(held, 'store')} on hold.`;
}

function needsAloud({ findings }: TodaySheet): string {
  const now = findings.filter((finding) => finding.severity === 'act-now').length;
  const day = findings.filter((finding) => finding.severity === 'act-today').length;
  if (now + day === 0) return 'Nothing needs you.';
  return `Act now: ${now}. Act today: ${day}.`;
}
