// A run of the small card for the tests: events with a clock of their own, asked as intentions or kept as facts.
import { type Card, readCard } from '../../src/outpost/index.ts';
import {
  type Asked,
  askRun,
  type CardBegin,
  type CardEnd,
  type CardStepped,
  type Found,
  type Replayed,
  type RunEvent,
  type RunState,
  replay,
} from '../../src/runs/index.ts';
import { SMALL_CARD } from '../outpost/small-card.ts';

const read = readCard(SMALL_CARD, { file: 'pour.yaml' });
if (!read.ok) throw new Error(JSON.stringify(read.findings));
export const CARD: Card = read.card;

const RUN = 'pour-1-1';

type Bare<Event extends RunEvent> = Event extends RunEvent
  ? Omit<Event, 'id' | 'run' | 'atMs' | 'site' | 'no' | 'by'> & { readonly by?: string }
  : never;

/** An event without its place in the order; the run gives it one. */
export function fact<Event extends RunEvent>(event: Bare<Event>): Event {
  return { id: '', run: RUN, atMs: 0, site: 'corrie', no: 0, by: 'keeper', ...event } as unknown as Event;
}

const LEAVES: CardBegin['leaves'] = {
  'cabin.pressure': { value: 101_200, u: 100 },
  'from.rating': { value: 80_000, u: 0 },
  'to.fill': { value: 0.0205, u: 0 },
  'to.content': { value: 0, u: 0 },
  amount: { value: 0.0205, u: 0 },
};

export function begin(more: Partial<CardBegin> = {}): CardBegin {
  return fact<CardBegin>({
    kind: 'card-begin',
    card: 'pour',
    revision: 1,
    form: 'READ-DO',
    chosen: { from: 'A', to: 'B' },
    ...more,
    leaves: { ...LEAVES, ...more.leaves },
  });
}

export function end(how: CardEnd['end'] = 'finish', reason = ''): CardEnd {
  return fact<CardEnd>({ kind: 'card-end', end: how, reason });
}

/** What fits each line. */
const FITS: Readonly<Record<string, Found>> = {
  labels: { is: 'choice', choice: 'right' },
  before: { is: 'number', value: 101.3 },
  tight: { is: 'number', value: 101.2 },
  note: { is: 'text', text: 'nothing' },
  litres: { is: 'number', value: 20.4 },
  both: { is: 'time', atMs: 0 },
};

export function done(
  step: string,
  found: Found = FITS[step] ?? { is: 'tick' },
  more: Partial<CardStepped> = {},
): CardStepped {
  return { ...fact<CardStepped>({ kind: 'card-step', step, found, verified: true }), ...more };
}

export class Run {
  readonly events: RunEvent[] = [];
  nowMs = Date.UTC(2147, 2, 7, 13, 30);
  readonly #card: Card;

  constructor(card: Card = CARD) {
    this.#card = card;
  }

  replayed(): Replayed {
    return replay(this.#card, RUN, this.events);
  }

  state(): RunState {
    const { state } = this.replayed();
    if (state === null) throw new Error('the run has not begun');
    return state;
  }

  /** As an intention; nothing is kept. */
  ask(event: RunEvent): Asked {
    return askRun(this.#card, this.replayed().state, this.#placed(event));
  }

  /** As a fact, a minute later; it is kept whatever it is. */
  take(event: RunEvent): this {
    this.events.push(this.#placed(event));
    this.nowMs += 60_000;
    return this;
  }

  #placed(event: RunEvent): RunEvent {
    const no = this.events.length + 1;
    return {
      ...event,
      id: event.id === '' ? `E${no}` : event.id,
      no,
      atMs: event.atMs === 0 ? this.nowMs : event.atMs,
    };
  }
}

/** Every line in its order, with what fits. */
export function allDone(run: Run): void {
  for (const { id } of CARD.steps) {
    if (id === 'seen') run.take(done(id, { is: 'tick' }, { by: 'second' }));
    else if (id === 'both') run.take(done(id, FITS['both'], { second: 'second' }));
    else run.take(done(id));
  }
}
