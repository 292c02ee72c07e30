// Figures that follow from others in the file must agree with them: a file must not hold two truths.
import type { Path } from '../outpost-finding.ts';
import type { SoundPart } from './sound-part.ts';

interface Sum {
  /** What the figure is reckoned from, by name; the words are made of it. */
  readonly rule: string;
  readonly stated: number | undefined;
  readonly reckoned: number | undefined;
  readonly unit: string;
  /** Greatest share by which the two may differ: figures are rounded when they are written down. */
  readonly apart: number;
}

const EXACT = 1e-9;
const ROUNDED_TO_THREE = 0.01;
/** A doubt is written with one or two figures, so that 0.25 may stand as 0.3. */
const DOUBT = 0.25;

function need(part: SoundPart, path: Path, { rule, stated, reckoned, unit, apart }: Sum): void {
  if (stated === undefined || reckoned === undefined) return;
  if (Math.abs(stated - reckoned) <= apart * Math.max(Math.abs(stated), Math.abs(reckoned))) return;
  part.add('sum-differs', path, { rule, stated, reckoned, unit });
}

const rootOfSquares = (...parts: readonly number[]): number =>
  Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0));

function checkDoubts(part: SoundPart): void {
  for (const { item, path } of part.each('stores')) {
    if (item.gauging === undefined) continue;
    const { tankVolumeDoubtL: stated, shellDoubtL, bladderSeatingDoubtL, injectionDoubtL } = item.gauging;
    const reckoned = rootOfSquares(shellDoubtL, bladderSeatingDoubtL, injectionDoubtL);
    need(part, [...path, 'gauging', 'tankVolumeDoubtL'], {
      rule: 'tank-volume-doubt',
      stated,
      reckoned,
      unit: 'L',
      apart: DOUBT,
    });
  }
  for (const { item, path } of part.each('instruments')) {
    const [random, calibration] = [item.random?.absolute, item.calibration?.absolute];
    if (random === undefined || calibration === undefined) continue;
    const reckoned = rootOfSquares(random, calibration);
    need(part, [...path, 'statedDoubt'], {
      rule: 'stated-doubt',
      stated: item.statedDoubt,
      reckoned,
      unit: item.unit,
      apart: DOUBT,
    });
  }
}

/** A stroke and a flush are written at the unit and at its counter. */
function checkCounts(part: SoundPart): void {
  const units = new Map(part.each('units').map(({ item }) => [item.id, item]));
  for (const { item, path } of part.each('instruments')) {
    const unit = item.meters === undefined ? undefined : units.get(item.meters);
    const reckoned =
      unit?.kind === 'dispenser' ? unit.strokeL : unit?.kind === 'flush' ? unit.flushL : undefined;
    need(part, [...path, 'litresPerCount'], {
      rule: 'litres-per-count',
      stated: item.litresPerCount,
      reckoned,
      unit: 'L',
      apart: EXACT,
    });
  }
}

export function checkSums(part: SoundPart): void {
  const { norms, policy, push } = part.file;
  if (norms?.tapParts !== undefined) {
    const reckoned = norms.tapParts.drinkAndFoodLPerPersonDay + norms.tapParts.hygieneLPerPersonDay;
    need(part, ['norms', 'tapLPerPersonDay'], {
      rule: 'tap-parts',
      stated: norms.tapLPerPersonDay,
      reckoned,
      unit: 'L',
      apart: EXACT,
    });
  }
  if (policy?.reserve.basis !== undefined) {
    const { days, people, litresPerPersonDay } = policy.reserve.basis;
    const reckoned = days * people * litresPerPersonDay;
    need(part, ['policy', 'reserve', 'floorL'], {
      rule: 'reserve-basis',
      stated: policy.reserve.floorL,
      reckoned,
      unit: 'L',
      apart: ROUNDED_TO_THREE,
    });
  }
  if (push?.workedFill !== undefined) {
    const { amountL, minutes, flowLPerMin: stated } = push.workedFill;
    need(part, ['push', 'workedFill', 'flowLPerMin'], {
      rule: 'worked-fill',
      stated,
      reckoned: amountL / minutes,
      unit: 'L/min',
      apart: ROUNDED_TO_THREE,
    });
  }
  checkDoubts(part);
  checkCounts(part);
}
