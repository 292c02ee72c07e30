// Names in the fields of an entry: which of them have to be in the book, and how a typed one is found there.
import type { Kind } from '../../book/index.ts';
import { STORE_KINDS } from '../../outpost/index.ts';
import { type Answer, yes } from '../answer.ts';
import { type Context, findEnd, findName, findStore } from './context.ts';
import { NAMED_IN, type Named } from './kind-form.ts';

/** Where a value stands, and of which kind of entry. */
export interface Place {
  readonly kind: Kind;
  readonly key: string;
  /** `stores[2].amount` */
  readonly field: string;
}

type Finder = (context: Context, typed: string) => Answer<string>;

const finders: Readonly<Record<Named, Finder>> = {
  store: findStore,
  place: findEnd,
  port: ({ fold }, typed) => findName('port', typed, [...fold.index.ports.keys()]),
  instrument: ({ fold }, typed) => findName('instrument', typed, [...fold.index.instruments.keys()]),
  hose: ({ fold }, typed) => findName('hose', typed, [...fold.index.hoses.keys()]),
  grade: ({ fold }, typed) => findName('grade', typed, [...fold.index.grades.keys()]),
};

/** These bring names into the book, or tell of a time before there were any. */
const newNames: ReadonlySet<Kind> = new Set<Kind>(['visit-berth', 'store-added']);

export function nameFor(context: Context, place: Place, typed: string): Answer<string> {
  if (place.key === 'kind' && newNames.has(place.kind)) return findName('kind of store', typed, STORE_KINDS);
  const named = NAMED_IN[place.key];
  if (named === undefined || newNames.has(place.kind)) return yes(typed);
  if (place.kind === 'opening' && place.key === 'store') {
    return findName('store', typed, [...context.fold.index.stores.keys()]);
  }
  return finders[named](context, typed);
}
