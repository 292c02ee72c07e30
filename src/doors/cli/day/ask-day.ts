// Walks a person through the meters of a day line: last value, usual range, unit; back, leave, and go on later.
import type { DayForm, DayFormItem } from '../../../desk/index.ts';
import { parseNumber, roundAtPlace } from '../../../ground/units/index.ts';
import { signed, type TextOptions, wordFinding } from '../../../papers/index.ts';
import type { Terminal } from '../terminal.ts';
import type { FoundDraft } from './draft.ts';

export interface Asked {
  readonly typed: ReadonlyMap<string, string>;
  /** False when the person left before the last meter. */
  readonly isWhole: boolean;
}

export interface AskDay {
  readonly terminal: Terminal;
  readonly form: DayForm;
  readonly draft: FoundDraft | null;
  readonly options: TextOptions;
}

export async function askDay(asking: AskDay): Promise<Asked> {
  const { form, draft } = asking;
  const typed = new Map(draft === null || draft.stale ? [] : draft.draft.typed);
  say(asking, ...openingLines(asking, typed));
  let at = form.items.findIndex(({ instrument }) => !typed.has(instrument));
  if (at < 0) at = form.items.length;
  while (at < form.items.length) {
    const item = form.items[at] as DayFormItem;
    const answer = await askMeter(asking, item, { place: at + 1, before: typed.get(item.instrument) });
    if (answer === 'leave') return { typed, isWhole: false };
    if (answer === 'back') {
      at = Math.max(0, at - 1);
      continue;
    }
    typed.set(item.instrument, answer.value);
    at += 1;
  }
  return { typed, isWhole: true };
}

function say({ terminal, options }: AskDay, ...lines: readonly string[]): void {
  for (const line of lines) terminal.stderr.write(`${signed(line, options.style)}\n`);
}

function openingLines({ form, draft }: AskDay, typed: ReadonlyMap<string, string>): readonly string[] {
  const head = `Day line of Day ${form.day}, ${form.peopleAboard} people. - is no reading, < goes back, Ctrl-C keeps it for later.`;
  if (draft === null) return [head];
  if (!draft.stale)
    return [head, `Going on: ${typed.size} of ${form.items.length} meters were typed before.`];
  const old = [...draft.draft.typed].map(([name, text]) => `${name} ${text}`).join(', ');
  return [head, `Typed for Day ${draft.draft.day} and not entered: ${old}. It is left out here.`];
}

type Answer = { readonly value: string } | 'back' | 'leave';

async function askMeter(
  asking: AskDay,
  item: DayFormItem,
  at: { readonly place: number; readonly before: string | undefined },
): Promise<Answer> {
  const prompt = signed(promptOf(asking.form, item, at), asking.options.style);
  let doubted: string | null = null;
  for (;;) {
    const reply = await asking.terminal.ask(prompt);
    if (typeof reply === 'string') return 'leave';
    const text = reply.said.trim();
    if (text === '<') return 'back';
    if (text === '-') return { value: text };
    if (text === '' && at.before !== undefined) return { value: at.before };
    if (text === '') continue;
    const read = readReading(text, item);
    if (!read.ok) {
      const { text: says, remedy } = wordFinding(read.finding);
      say(asking, `  ${says} ${remedy}`);
    } else if (isUsual(read.value, item) || doubted === text) return { value: text };
    else {
      doubted = text;
      say(asking, `  Outside what is usual here (${rangeOf(item)}). Enter it again to keep it.`);
    }
  }
}

/** `3/8  condensate totaliser, L (last 298.6, usual 303.9 to 307.6): ` */
function promptOf(
  { items }: DayForm,
  item: DayFormItem,
  { place, before }: { readonly place: number; readonly before: string | undefined },
): string {
  const facts = [
    ...(item.last === null ? [] : [`last ${shown(item.last, item)}`]),
    ...(item.low === null ? [] : [`usual ${rangeOf(item)}`]),
  ];
  const about = facts.length === 0 ? '' : ` (${facts.join(', ')})`;
  const kept = before === undefined ? '' : ` [${before}]`;
  const unit = item.name.endsWith(item.unit) ? '' : `, ${item.unit}`;
  return `${place}/${items.length}  ${item.name}${unit}${about}${kept}: `;
}

function rangeOf(item: DayFormItem): string {
  return `${shown(item.low ?? 0, item)} to ${shown(item.high ?? 0, item)}`;
}

/** To the last digit that the instrument shows. */
function shown(value: number, { resolution }: DayFormItem): string {
  if (resolution === null) return roundAtPlace(value, -2);
  return roundAtPlace(value, resolution >= 1 ? 0 : -(`${resolution}`.split('.')[1]?.length ?? 0));
}

/** The unit may stand behind the number. */
function readReading(text: string, { instrument, unit }: DayFormItem): ReturnType<typeof parseNumber> {
  const number = unit !== '' && text.endsWith(unit) ? text.slice(0, -unit.length) : text;
  return parseNumber(number, { where: { field: instrument } });
}

/** A counter that rolls over may have a range whose upper end is below its lower one. */
function isUsual(value: number, { low, high }: DayFormItem): boolean {
  if (low === null || high === null) return true;
  return low <= high ? value >= low && value <= high : value >= low || value <= high;
}
