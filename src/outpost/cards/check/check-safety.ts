// What acts of a card call for: boxes before them, ratings without which it does not start, checks that have to be passed first.
import { type Act, actLine, leastWord, saysTooLittle } from '../hazards.ts';
import type { CardFaults, SoundCard } from './sound-card.ts';

export function checkSafety(card: SoundCard, faults: CardFaults): void {
  for (const { item, path } of card.hazards) {
    const limits = item.limits.map(({ what }) => what);
    const written = [item.text, ...limits].find((text) => /\p{N}/u.test(text));
    if (written !== undefined) faults.add('card-hazard-number', path, { hazard: item.id });
    if (saysTooLittle(item.kind, item.word))
      faults.add('card-hazard-word', [...path, 'word'], {
        hazard: item.id,
        kind: item.kind,
        received: item.word,
        least: leastWord(item.kind),
      });
  }
  if (!card.whole) return;
  card.steps.forEach(({ item }, index) => {
    for (const act of item.acts) checkAct(card, { act, index }, faults);
  });
}

interface At {
  readonly act: Act;
  readonly index: number;
}

function checkAct(card: SoundCard, { act, index }: At, faults: CardFaults): void {
  const { hazards, ratings, after } = actLine(act);
  const upTo = card.steps.slice(0, index + 1);
  const placed = card.steps[index];
  if (placed === undefined) return;
  const { item, path } = placed;
  const boxes = new Set(upTo.flatMap(({ item: step }) => step.hazards));
  const kinds = card.hazards.filter(({ item: box }) => boxes.has(box.id)).map(({ item: box }) => box.kind);
  const missing = hazards.filter((kind) => !kinds.includes(kind));
  if (missing.length > 0)
    faults.add('card-hazard-missing', [...path, 'acts'], { line: item.id, act, missing });
  const asked = card.needs?.ratings ?? [];
  const unasked = ratings.flatMap((name) => namesOf(card, name)).filter((name) => !asked.includes(name));
  if (unasked.length > 0)
    faults.add('card-rating-not-asked', [...path, 'acts'], { line: item.id, act, missing: unasked });
  const before = card.steps.slice(0, index).map(({ item: step }) => step.mustPass);
  if (after !== undefined && !before.includes(after))
    faults.add('card-must-pass-missing', [...path, 'acts'], { line: item.id, act, check: after });
}

/** `store.rating` is asked of every chosen store. */
function namesOf({ choose }: SoundCard, name: string): readonly string[] {
  const [of = '', key = ''] = name.split('.');
  if (of !== 'store' && of !== 'hose') return [name];
  return choose.filter(({ item }) => item.of === of).map(({ item }) => `${item.id}.${key}`);
}
