// A remedy on the page: its acts are pressed where they stand in the sentence, and no command line is spoken of.
import { Fragment, type ReactNode } from 'react';
import { enter } from '../entering.ts';
import { words } from '../language.ts';
import { closeSheet, type OpenSheet, openSheet } from '../open.ts';
import { dayNumber } from '../pages/day-steps.ts';
import { hrefOf, isPast, type Place, usePlace } from '../place.ts';
import { pageRemedy, type RemedyAct, type RemedyPart } from '../remedy.ts';
import { Phrased } from './phrased.tsx';

interface Told {
  readonly text: string;
  /** The store that the finding is about: a form that opens has it in its field. */
  readonly store?: string | undefined;
  /** False where buttons beside the remedy say already what a flag of the command line would say. */
  readonly flags?: boolean;
}

export function Remedy({ text, store, flags = true }: Told) {
  const place = usePlace();
  const all = pageRemedy(text);
  const said = flags ? all : all.filter((parts) => !parts.some(isFlag));
  if (said.length === 0) return flags || all.length === 0 ? words().remedy.elsewhere : words().remedy.below;
  return said.map((parts, k) => (
    <Fragment key={keyOf(parts)}>
      {k > 0 && ' '}
      {parts.map((part) => (
        <Fragment key={keyOf([part])}>
          {typeof part === 'string' ? <Phrased text={part} /> : shown(part, store ?? null, place)}
        </Fragment>
      ))}
    </Fragment>
  ));
}

function keyOf(parts: readonly RemedyPart[]): string {
  return JSON.stringify(parts);
}

function isFlag(part: RemedyPart): boolean {
  return typeof part !== 'string' && part.act === 'flag';
}

function shown(act: RemedyAct, store: string | null, place: Place): ReactNode {
  const { remedy } = words();
  if (act.act === 'flag') return remedy.flags[act.flag];
  if (act.act === 'see') return <See act={act} place={place} />;
  const name = nameOf(act, store);
  // The past is looked at, and nothing can be entered into it.
  if (isPast(place)) return <b>{name}</b>;
  return (
    <button type="button" className="link" onClick={() => carryOut(act, store)}>
      {name}
    </button>
  );
}

function See({ act, place }: { readonly act: Extract<RemedyAct, { act: 'see' }>; readonly place: Place }) {
  const { finding, pages, daybook } = words();
  const day = dayNumber(act.item);
  const names = {
    today: pages.today,
    stores: act.item === null ? pages.stores : finding.open(act.item),
    daybook: day === null ? pages.daybook : daybook.day(day),
    inbox: finding.inbox,
    quality: act.item === null ? pages.quality : finding.open(act.item),
  };
  // Where one is already, the words are those of the buttons beside it.
  if (place.page === act.page && (act.page === 'inbox' || place.item === act.item))
    return <b>{act.page === 'inbox' ? words().inbox.settle : names[act.page]}</b>;
  const { at, asOf } = place;
  const href = hrefOf({ page: act.page, item: act.item, at, asOf });
  return (
    <a className="link" href={href} onClick={closeSheet}>
      {names[act.page]}
    </a>
  );
}

type Pressed = Exclude<RemedyAct, { act: 'see' | 'flag' }>;

function nameOf(act: Pressed, store: string | null): string {
  const { remedy, finding } = words();
  switch (act.act) {
    case 'enter':
      return remedy.enter[act.what](act.store ?? (act.what === 'hookup' ? null : store));
    case 'kind':
      return remedy.kind(remedy.kinds[act.kind] ?? act.kind.replaceAll('-', ' '));
    case 'sample':
      return act.drawn ? remedy.sampleOf(act.of ?? store) : remedy.resultOf(act.of ?? store);
    case 'hold':
      return remedy.holdWay[act.way](act.hold ?? act.stores[0] ?? null);
    case 'undo':
      return remedy.undo(act.entry.replace(':', ' '));
    default:
      return act.decision === 'merge' ? finding.decideMerge : finding.decideBoth;
  }
}

function carryOut(act: Pressed, store: string | null): void {
  const sheet = sheetOf(act, store);
  if (sheet !== null) openSheet(sheet);
  if (act.act !== 'decide') return;
  const [first, second] = act.pair;
  closeSheet();
  void enter({ what: 'decide', first, second, decision: act.decision });
}

/** The dialog that an act opens; none for what is done at once. */
function sheetOf(act: Pressed, store: string | null): OpenSheet | null {
  switch (act.act) {
    case 'enter': {
      if (act.what === 'day' || act.what === 'drink') return { kind: act.what };
      const at = act.store ?? (act.what === 'hookup' ? null : store);
      return { kind: act.what, ...(at !== null && { store: at }) };
    }
    case 'kind':
      return { kind: 'told', entryKind: act.kind, ...(store !== null && { store }) };
    case 'sample': {
      const of = act.of ?? store;
      return { kind: 'sample', drawn: act.drawn, ...(of !== null && { of }) };
    }
    case 'hold':
      return holdSheet(act, store);
    case 'undo':
      return { kind: 'undo-entry', entry: act.entry };
    default:
      return null;
  }
}

/** A result is set aside by its sample; a store stands where no hold is named. */
function holdSheet(
  { way, hold, stores }: Extract<Pressed, { act: 'hold' }>,
  store: string | null,
): OpenSheet {
  if (way === 'aside') return { kind: 'hold-act', act: way, sample: stores[0] ?? '' };
  const named = stores.length > 0 || store === null || hold !== null ? stores : [store];
  return { kind: 'hold-act', act: way, stores: named, ...(hold !== null && { hold }) };
}
