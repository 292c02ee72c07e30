// English for entries about what water is fit for: samples, results, holds and every way out of one.
import type { Body } from '../../../../book/index.ts';
import { listed, saidValue } from '../said.ts';
import { type EntryContext, joined, saidAmount, saidBareMass, saidGrade, saidValues } from './context.ts';

type Values = Body<'result'>['values'];

function measured(values: Values): string {
  return saidValues(
    values.map(({ parameter, value, unit, below }) => ({
      name: parameter,
      value,
      unit,
      below: below === true,
    })),
  );
}

export function sample(body: Body<'sample'>, context: EntryContext): string {
  const { volumeMg, drawnFrom, tests } = body;
  const volume = volumeMg === undefined ? '' : `${saidBareMass(volumeMg, context)} `;
  const where = drawnFrom === undefined ? '' : `drawn from ${drawnFrom}`;
  return joined(
    `sample ${body.sample}: ${volume}of ${body.store ?? body.point ?? 'no place that is named'}`,
    where,
    tests.length > 0 && `for ${listed(tests)}`,
  );
}

export function result(body: Body<'result'>): string {
  const where = body.store ?? body.point;
  // A count at a point is often named after it.
  const isNamed = where === undefined || body.sample.endsWith(where);
  const said = measured(body.values);
  return joined(
    `result of ${body.sample}${isNamed ? '' : `, ${where}`}${said === '' ? '' : `: ${said}`}`,
    body.verdict !== undefined && `read as "${body.verdict}"`,
  );
}

export function resultSetAside({ sample, parameter, reason }: Body<'result-set-aside'>): string {
  return `result of ${sample} set aside${parameter === undefined ? '' : `, ${parameter}`}: ${reason}`;
}

export function parked({ hold: name, owner, untilDay, reason }: Body<'parked'>): string {
  return joined(`hold ${name} parked with ${owner} until Day ${untilDay}`, reason);
}

export function limitsChosen({ sets, exposureDays, reason }: Body<'limits-chosen'>): string {
  const long = exposureDays < LONG_DAYS ? `for ${exposureDays} d of drinking` : '';
  return joined(`limits chosen: ${listed(sets.map(({ name }) => name))}`, long, `because ${reason}`);
}

/** Longer than this nobody means a number of days. */
const LONG_DAYS = 1e6;

export function limitTyped(body: Body<'limit-typed'>): string {
  const { atLeast, atMost, unit, basis } = body;
  const least = atLeast === undefined ? '' : `at least ${saidValue(atLeast, unit)}`;
  const most = atMost === undefined ? '' : `at most ${saidValue(atMost, unit)}`;
  const figures = joined(least, most);
  return joined(`limit ${body.row} of ${body.set}: ${figures} ${basis}`, `from ${body.copy}`);
}

export function hold(body: Body<'hold'>): string {
  const touched = body.conditional.length === 0 ? '' : `; CONDITIONAL ${listed(body.conditional)}`;
  return joined(`HOLD ${body.hold} on ${listed(body.stores)}${touched}: ${body.reason}`, body.also);
}

export function release(body: Body<'release'>): string {
  const { untilDay } = body;
  const until = untilDay === undefined ? '' : `until Day ${untilDay}`;
  const from = body.hold === undefined ? 'any hold' : body.hold;
  return joined(`release from ${from}: ${listed(body.stores)}`, measured(body.values), until);
}

export function waiver(body: Body<'waiver'>): string {
  return `waiver for ${body.hold}: ${listed(body.stores)} until Day ${body.untilDay}, because ${body.reason}`;
}

export function downgrade(body: Body<'downgrade'>, context: EntryContext): string {
  const { hold: from, store, fromGrade, toGrade, values } = body;
  const out = from === undefined ? '' : `, out of ${from}`;
  const grades = `from ${saidGrade(fromGrade, context)} to ${saidGrade(toGrade, context)}`;
  return joined(`downgrade ${store} ${grades}${out}`, measured(values));
}

export function treatment(body: Body<'treatment'>, context: EntryContext): string {
  const { store, recipe, toGrade, dose: added } = body;
  const what = added === undefined ? '' : `${saidAmount(added, context)} added`;
  return joined(`treat ${store} by ${recipe} to ${saidGrade(toGrade, context)}`, what, 'not yet released');
}

export function dose(body: Body<'dose'>, context: EntryContext): string {
  const { stores, biocide, doseEach, targetMgPerL } = body;
  const target = targetMgPerL === undefined ? '' : `for ${saidValue(targetMgPerL, 'mg/L')}`;
  const each = stores.length === 1 ? '' : ' each';
  return joined(`dose ${biocide}: ${saidAmount(doseEach, context)}${each} into ${listed(stores)}`, target);
}

export function relabel(body: Body<'relabel'>, context: EntryContext): string {
  const { store, fromLabel, toGrade, twoPersons, photo } = body;
  return joined(
    `relabel ${store} from ${saidGrade(fromLabel, context)} to ${saidGrade(toGrade, context)}`,
    twoPersons ? 'by two persons' : 'by one person',
    photo !== undefined && `photo ${photo}`,
  );
}

export function check(body: Body<'check'>): string {
  const { what, ok, visit, hose, items, pressureKPaAbs, holdMinutes, dropKPa } = body;
  return joined(
    `check of ${what === 'labels' ? 'labels' : 'tightness'}: ${ok ? 'passed' : 'not passed'}`,
    visit,
    hose !== undefined && `hose ${hose}`,
    pressureKPaAbs !== undefined && `at ${saidValue(pressureKPaAbs, 'kPa')} abs`,
    holdMinutes !== undefined && `held ${saidValue(holdMinutes, 'min')}`,
    dropKPa !== undefined && `fell by ${saidValue(dropKPa, 'kPa')}`,
    ...items,
  );
}
