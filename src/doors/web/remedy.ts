// What a remedy comes to on the page: its commands are acts of the page, and what only a command line can do is left out.

/** Acts at a store, or at none yet, that have a sheet of their own. */
const SHEETS = ['day', 'drink', 'fill', 'weigh', 'gauge', 'empty', 'full', 'hookup'] as const;
export type EnterAct = (typeof SHEETS)[number];

export type RemedyAct =
  | { readonly act: 'enter'; readonly what: EnterAct; readonly store: string | null }
  /** Any other kind of entry, field by field. */
  | { readonly act: 'kind'; readonly kind: string }
  /** A sample to be drawn, or a result to be entered, of what is named. */
  | { readonly act: 'sample'; readonly of: string | null; readonly drawn: boolean }
  /** Setting a hold, or a way out of one. */
  | {
      readonly act: 'hold';
      readonly way: HoldWay;
      readonly hold: string | null;
      readonly stores: readonly string[];
    }
  | { readonly act: 'undo'; readonly entry: string }
  | { readonly act: 'decide'; readonly pair: readonly [string, string]; readonly decision: Decision }
  | { readonly act: 'see'; readonly page: SeenPage; readonly item: string | null }
  /** A flag of the command line that is a field or a button of the page. */
  | { readonly act: 'flag'; readonly flag: PageFlag };

export type Decision = 'merge' | 'both are true';
export type SeenPage = 'today' | 'stores' | 'quality' | 'daybook' | 'inbox';
const WAYS = ['add', 'release', 'waive', 'downgrade', 'treat', 'park', 'aside'] as const;
export type HoldWay = (typeof WAYS)[number];
export type PageFlag = 'late' | 'happened' | 'yes';
export type RemedyPart = string | RemedyAct;

/** Sentences in their order, each in parts; none where all of them speak of the command line. */
export function pageRemedy(text: string): readonly (readonly RemedyPart[])[] {
  return sentencesOf(text).flatMap((sentence) => {
    const parts = partsOf(sentence);
    return parts === null ? [] : [parts];
  });
}

/** A point inside quotes ends no sentence; one that a small letter or a dash follows does not either. */
function sentencesOf(text: string): readonly string[] {
  return text.split(/(?<=[.?]) (?=[A-Z"])/);
}

/** A command ends at a comma, a semicolon, or a point that ends the sentence; not inside quotes. */
const command = /\bwaterwright(?: (?:"[^"]*"|[^\s",;.?]+(?:[.,][^\s",;.?]+)*))+/g;
/** Several ways in one breath: `waterwright log release, downgrade or waiver`. */
const oneBreath = /waterwright log (\w+), (\w+) or (\w+)/;
const flag = /\b(?:[Aa]dd )?--(late|happened|yes)\b(?: "?REASON"?)?/g;
/** What is left of it can be done with a keyboard before a terminal only. */
const elsewhere = /waterwright| --[a-z]|\bFILE\b|\/api\/|Ctrl-C|command line/;

/** Null: the sentence speaks of nothing that the page has. */
function partsOf(sentence: string): readonly RemedyPart[] | null {
  const said = sentence.replace(oneBreath, 'waterwright log $1 or log $2 or log $3');
  const parts: RemedyPart[] = [];
  let from = 0;
  for (const match of said.matchAll(command)) {
    const acts = actsOf(match[0]);
    if (acts.length === 0) return null;
    parts.push(...withFlags(said.slice(from, match.index)), ...joined(acts));
    from = match.index + match[0].length;
  }
  parts.push(...withFlags(said.slice(from)));
  const plain = parts.filter((part) => typeof part === 'string').join(' ');
  return elsewhere.test(plain) ? null : parts;
}

function joined(acts: readonly RemedyAct[]): readonly RemedyPart[] {
  return acts.flatMap((act, k) => (k === 0 ? [act] : [' or ', act]));
}

function withFlags(text: string): readonly RemedyPart[] {
  const parts: RemedyPart[] = [];
  let from = 0;
  for (const match of text.matchAll(flag)) {
    parts.push(text.slice(from, match.index), { act: 'flag', flag: match[1] as PageFlag });
    from = match.index + match[0].length;
  }
  return [...parts, text.slice(from)].filter((part) => part !== '');
}

/** `waterwright log weigh or log gauge`: each way by itself; a way that the page has not is left out. */
function actsOf(line: string): readonly RemedyAct[] {
  return line
    .replace(/^waterwright /, '')
    .split(' or ')
    .flatMap((way) => {
      const act = actOf(wordsOf(way.replace(/^waterwright /, '')));
      return act === null ? [] : [act];
    });
}

function wordsOf(way: string): readonly string[] {
  return (way.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replace(/^"(.*)"$/, '$1'));
}

/** STORE, NUMBER and AMOUNT stand for what has still to be said. */
function named(word: string | undefined): string | null {
  return word === undefined || word.startsWith('--') || /^[A-Z]{2,}$/.test(word) ? null : word;
}

function actOf([noun, verb, ...rest]: readonly string[]): RemedyAct | null {
  switch (noun) {
    case 'log':
      return verb === undefined ? null : logAct(verb, rest);
    case 'store':
      if (verb === 'show') return { act: 'see', page: 'stores', item: named(rest[0]) };
      return verb === 'list' ? { act: 'see', page: 'stores', item: null } : null;
    case 'sample':
      return verb === undefined ? null : sampleAct(verb, rest);
    case 'hold':
      return verb === undefined ? null : holdActOf(verb, rest);
    case 'quality':
    case 'bed':
      return { act: 'see', page: 'quality', item: null };
    case 'book':
      return verb === 'show' ? bookAct(rest) : null;
    case 'inbox':
    case 'import':
      return { act: 'see', page: 'inbox', item: null };
    case 'today':
      return { act: 'see', page: 'today', item: null };
    default:
      return null;
  }
}

function sampleAct(verb: string, rest: readonly string[]): RemedyAct | null {
  const of = namedIn(rest)[0] ?? null;
  switch (verb) {
    case 'add':
      return { act: 'sample', of, drawn: true };
    case 'result':
      return { act: 'sample', of, drawn: false };
    case 'show':
      return { act: 'see', page: 'quality', item: of };
    default:
      return { act: 'see', page: 'quality', item: null };
  }
}

/** Names of the line, up to the first flag. */
function namedIn(rest: readonly string[]): readonly string[] {
  const flagAt = rest.findIndex((word) => word.startsWith('--'));
  return (flagAt < 0 ? rest : rest.slice(0, flagAt)).flatMap((word) => {
    const name = named(word);
    return name === null ? [] : [name];
  });
}

function holdActOf(verb: string, rest: readonly string[]): RemedyAct | null {
  const names = namedIn(rest);
  const way = WAYS.find((each) => each === verb);
  if (way === undefined) return { act: 'see', page: 'quality', item: names[0] ?? null };
  // Some ways are of a hold and stores of it; the others name the store alone.
  const isOfStores = way === 'add' || way === 'treat' || way === 'aside';
  if (isOfStores) return { act: 'hold', way, hold: null, stores: names };
  return { act: 'hold', way, hold: names[0] ?? null, stores: names.slice(1) };
}

function bookAct(rest: readonly string[]): RemedyAct {
  if (rest.includes('--findings')) return { act: 'see', page: 'today', item: null };
  const day = rest.find((word) => /^D\d+$/.test(word));
  return { act: 'see', page: 'daybook', item: day ?? 'all' };
}

function logAct(verb: string, rest: readonly string[]): RemedyAct | null {
  const sheet = SHEETS.find((each) => each === verb);
  if (sheet !== undefined) return { act: 'enter', what: sheet, store: named(rest[0]) };
  switch (verb) {
    case 'move':
      return { act: 'enter', what: 'fill', store: null };
    case 'undo': {
      const entry = named(rest[0]);
      return entry === null ? { act: 'see', page: 'daybook', item: 'all' } : { act: 'undo', entry };
    }
    case 'correct':
      return { act: 'see', page: 'daybook', item: 'all' };
    case 'decide': {
      const [first, second, way] = rest;
      if (first === undefined || second === undefined) return null;
      return { act: 'decide', pair: [first, second], decision: way === 'both' ? 'both are true' : 'merge' };
    }
    case 'sample':
    case 'result':
      return sampleAct(verb === 'sample' ? 'add' : verb, rest);
    case 'hold':
      return holdActOf('add', rest);
    case 'release':
    case 'downgrade':
      return holdActOf(verb, rest);
    case 'waiver':
      return holdActOf('waive', rest);
    case 'opening':
    case 'relabel':
    case 'use':
    case 'make':
      return null;
    default:
      return /^[a-z]+(?:-[a-z]+)*$/.test(verb) ? { act: 'kind', kind: verb } : null;
  }
}
