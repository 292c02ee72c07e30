// Pieces of English sentences: lists, times, spans of time and amounts of water as a keeper says them.
import {
  convert,
  convertAtDensity,
  type DayRule,
  formatFigure,
  formatIsoUtc,
  formatShortStamp,
  plusMinus,
  roundAtPlace,
  roundFigure,
  styled,
} from '../../../ground/units/index.ts';

const noBreakSpace = '\u00A0';

/** `C-01`, `C-01 and C-02`, `C-01, C-02 and C-03`. */
export function listed(names: readonly string[], last: 'and' | 'or' = 'and'): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} ${last} ${names.at(-1)}`;
}

/** `1 entry`, `8 entries`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count}${noBreakSpace}${count === 1 ? one : many}`;
}

/** `Day 46 21:00 UTC`; ISO 8601 where days are not counted yet. */
export function saidTime(utcMs: number, dayRule: DayRule | null): string {
  return dayRule === null ? formatIsoUtc(utcMs) : formatShortStamp(utcMs, dayRule);
}

/** `45 min`, `5 h 30 min`, `2 d 3 h`: the size of a span of whole minutes. */
export function saidSpan(minutes: number): string {
  const size = Math.abs(Math.round(minutes));
  const days = Math.floor(size / 1440);
  const hours = Math.floor((size % 1440) / 60);
  const rest = size % 60;
  const parts = [part(days, 'd'), part(hours, 'h'), days === 0 ? part(rest, 'min') : ''];
  const said = parts.filter((each) => each !== '').join(' ');
  return said === '' ? `0${noBreakSpace}min` : said;
}

function part(count: number, unit: string): string {
  return count === 0 ? '' : `${count}${noBreakSpace}${unit}`;
}

/** `+5:30`: by how much one clock is ahead of another. */
export function saidClockDifference(minutes: number): string {
  const size = Math.abs(Math.round(minutes));
  return `${minutes < 0 ? '\u2212' : '+'}${Math.floor(size / 60)}:${String(size % 60).padStart(2, '0')}`;
}

/** A value with its unit and no ±, which stands elsewhere or was not given. */
export function saidValue(value: number, unit: string): string {
  const digits = styled(roundFigure({ value, u95: null }).value, 'screen');
  return unit === '' ? digits : `${digits}${noBreakSpace}${unit}`;
}

/** A value that came out of a conversion, to the last digit that means something. */
export function saidValueAt(value: number, place: number, unit: string): string {
  const digits = styled(roundAtPlace(value, place), 'screen');
  return unit === '' ? digits : `${digits}${noBreakSpace}${unit}`;
}

/** Litres of an amount in milligrams. */
export function litresOf(massMg: number, mgPerL: number): number {
  return convertAtDensity(massMg, { from: 'mg', to: 'L', densityKgPerM3: mgPerL / 1000 });
}

/** An amount to a tenth of a litre, `41.0 L`; in kilograms where the density is not known. */
export function saidMass(massMg: number, mgPerL: number | null): string {
  const value = mgPerL === null ? convert(massMg, 'mg', 'kg') : litresOf(massMg, mgPerL);
  return saidValueAt(value, -1, mgPerL === null ? 'kg' : 'L');
}

/** An amount with its ± at 95 %: `20.3 ± 0.4 L`. */
export function saidMassWithin(
  amount: { readonly massMg: number; readonly u95Mg: number },
  mgPerL: number | null,
): string {
  const { massMg, u95Mg } = amount;
  if (mgPerL === null) {
    return formatFigure(
      { value: convert(massMg, 'mg', 'kg'), u95: convert(u95Mg, 'mg', 'kg'), unit: 'kg' },
      { style: 'screen' },
    );
  }
  const figure = { value: litresOf(massMg, mgPerL), u95: litresOf(u95Mg, mgPerL), unit: 'L' };
  return formatFigure(figure, { style: 'screen' });
}

/** A ± alone: `± 5 L`. */
export function saidDoubt(u95Mg: number, mgPerL: number | null): string {
  const u95 = mgPerL === null ? convert(u95Mg, 'mg', 'kg') : litresOf(u95Mg, mgPerL);
  const digits = styled(roundFigure({ value: 0, u95 }).u95 ?? '0', 'screen');
  return [plusMinus('screen'), digits, mgPerL === null ? 'kg' : 'L'].join(noBreakSpace);
}
