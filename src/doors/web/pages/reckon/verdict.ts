// What an answer is for the page: figures, a list of what is still needed, something to look at, or a refusal.
import type { ReckonField, ReckonForm, ReckonSheet, WordedFinding } from '../../../../papers/index.ts';
import type { Answered } from './answering.ts';

export type Verdict =
  | { readonly kind: 'answer'; readonly sheet: ReckonSheet }
  | { readonly kind: 'needs'; readonly fields: readonly ReckonField[] }
  /** Something that no field is wrong for: it is not told yet. */
  | { readonly kind: 'untold'; readonly findings: readonly WordedFinding[] }
  | { readonly kind: 'look'; readonly fields: readonly ReckonField[] }
  | { readonly kind: 'refused' | 'cannot'; readonly findings: readonly WordedFinding[] }
  | { readonly kind: 'lost' };

const REFUSED = 409;

export function verdictOf(form: ReckonForm, { fields, reply }: Answered): Verdict {
  if (reply.ok) return { kind: 'answer', sheet: reply.value };
  const findings = reply.findings.map((finding) => ofThePage(finding, form));
  if (reply.status === 0 || findings.length === 0) return { kind: 'lost' };
  const needs = reply.findings.filter(({ code }) => code === 'reckon-input-missing').flatMap(namesIn);
  if (needs.length > 0)
    return { kind: 'needs', fields: form.fields.filter(({ name }) => needs.includes(name)) };
  const named = findings.map(({ where }) => form.fields.find(({ name }) => name === where.field));
  if (named.every((field) => field !== undefined && !Object.hasOwn(fields, field.name)))
    return { kind: 'untold', findings };
  const marked = new Set(named.filter((field) => field !== undefined));
  if (named.every((field) => field !== undefined)) return { kind: 'look', fields: [...marked] };
  return { kind: reply.status === REFUSED ? 'refused' : 'cannot', findings };
}

/** What stands at a field: findings that name it, where it was answered as it stands now. */
export function findingsAt(form: ReckonForm, field: string, last: Answered | null): readonly WordedFinding[] {
  if (last === null || last.reply.ok || !Object.hasOwn(last.fields, field)) return [];
  return last.reply.findings
    .filter(({ where }) => where.field === field)
    .map((finding) => ofThePage(finding, form));
}

/** Fields are flags on the command line: `volume of water (--volume)`. */
const FLAG = /--([a-z][a-z0-9-]*)/g;

function namesIn({ text }: WordedFinding): readonly string[] {
  return [...text.matchAll(FLAG)].map((match) => match[1] ?? '');
}

/** The same finding in the names that the form has; a sentence about a command is left out. */
function ofThePage(finding: WordedFinding, form: ReckonForm): WordedFinding {
  const { text, expected, received, remedy } = finding;
  const named = (sentence: string) => inNames(sentence, form);
  const here = remedy.split(/(?<=[.?]) (?=[A-Z])/).filter((sentence) => !/waterwright /.test(sentence));
  return {
    ...finding,
    text: named(text),
    expected: named(expected),
    received: named(received),
    remedy: named(here.join(' ')),
  };
}

function inNames(sentence: string, { fields }: ReckonForm): string {
  return sentence.replace(/ \(--[a-z][a-z0-9-]*\)/g, '').replace(FLAG, (flag, name: string) => {
    const field = fields.find((each) => each.name === name);
    return field === undefined ? flag : `“${field.label}”`;
  });
}
