// Whichever dialog is open; the list that is searched comes with a package of its own, and only when it is asked for.
import { lazily } from '../lazily.tsx';
import type { OpenSheet } from '../open.ts';
import type { Place } from '../place.ts';
import { CloseDay } from './close-day.tsx';
import { Correct, UndoEntry, UndoLine } from './correct.tsx';
import { DayLine } from './day-line.tsx';
import { DeviceSheet, KeysSheet, Who } from './device-sheets.tsx';
import { Drink } from './drink.tsx';
import { KindForm } from './kind-form.tsx';
import { Label } from './label.tsx';
import { Reckoned } from './reckoned.tsx';
import { Say } from './say.tsx';
import { StoreAct } from './store-act.tsx';
import { StoreAmount } from './store-amount.tsx';
import { TimeSheet } from './time-sheet.tsx';

const SampleSheet = lazily(async () => (await import('./quality/sample.tsx')).SampleDialog);
const HoldActSheet = lazily(async () => (await import('./quality/hold-act.tsx')).HoldActDialog);
const WhoDrank = lazily(async () => (await import('./quality/who-drank.tsx')).WhoDrank);
const ChooseLimits = lazily(async () => (await import('./quality/choose-limits.tsx')).ChooseLimits);
const TypeLimit = lazily(async () => (await import('./quality/type-limit.tsx')).TypeLimit);
const FindStore = lazily(async () => (await import('./find-store.tsx')).FindStore);

export function Sheet({ sheet, place }: { readonly sheet: OpenSheet; readonly place: Place }) {
  switch (sheet.kind) {
    case 'reckoned':
      return <Reckoned figure={sheet.figure} of={sheet.of} text={sheet.text} place={place} />;
    case 'drink':
      return <Drink />;
    case 'day':
      return <DayLine />;
    case 'fill':
    case 'weigh':
    case 'gauge':
      return <StoreAmount what={sheet.kind} named={sheet.store} />;
    case 'hookup':
    case 'empty':
    case 'full':
      return <StoreAct what={sheet.kind} named={sheet.store} />;
    case 'told':
      return <KindForm kind={sheet.entryKind} store={sheet.store} />;
    case 'undo-entry':
      return <UndoEntry entry={sheet.entry} />;
    case 'correct':
      return <Correct line={sheet.line} />;
    case 'undo-line':
      return <UndoLine line={sheet.line} />;
    case 'close-day':
      return <CloseDay />;
    case 'say':
      return <Say place={place} />;
    case 'time':
      return <TimeSheet place={place} />;
    case 'find':
      return <FindStore place={place} />;
    case 'label':
      return <Label id={sheet.store} place={place} />;
    case 'sample':
      return <SampleSheet of={sheet.of} drawn={sheet.drawn === true} />;
    case 'hold-act':
      return <HoldActSheet {...sheet} />;
    case 'drank':
      return <WhoDrank hold={sheet.hold} />;
    case 'choose-limits':
      return <ChooseLimits named={sheet.set} />;
    case 'type-limit':
      return <TypeLimit set={sheet.set} row={sheet.row} />;
    case 'who':
      return <Who />;
    case 'keys':
      return <KeysSheet />;
    case 'device':
      return <DeviceSheet />;
  }
}
