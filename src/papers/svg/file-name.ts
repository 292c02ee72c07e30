// Names of files for plots, their figures and papers: what it shows, of which day, as of which instant.
import type { SheetHead } from '../sheets/today.ts';

/**
 * Only letters, figures and hyphens of the name are kept, so that every file system takes it.
 * @example plotFileName('store R2', head, 'svg') // 'store-R2_D143_21470721T1410Z.svg'
 */
export function plotFileName(
  what: string,
  { day, at }: Pick<SheetHead, 'day' | 'at'>,
  ending: 'svg' | 'csv' | 'html',
): string {
  const name = what.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '');
  const stamp = at.slice(0, 16).replace(/[-:]/g, '');
  return `${name}_D${day}_${stamp}Z.${ending}`;
}

/** @example paperFileName(document, 'html') // 'certificate-C-05_D46_21470415T2100Z.html' */
export function paperFileName(
  { paper, of, head }: { readonly paper: string; readonly of: string; readonly head: SheetHead },
  ending: 'csv' | 'html',
): string {
  return plotFileName(`${paper} ${of}`, head, ending);
}
