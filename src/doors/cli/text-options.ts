// How text is to look on this terminal: width, signs, colour, units.
import type { TextOptions } from '../../papers/index.ts';
import type { Call } from './call.ts';
import { readWholeNumber } from './whole-number.ts';

/** Where nothing tells how wide the reader's page is. */
const USUAL_WIDTH = 80;

/** @param stream the stream that the text goes to: hints and errors are looked at on another screen than data */
export function textOptions(call: Call, stream: 'stdout' | 'stderr'): TextOptions {
  const style = call.has('plain') ? 'plain' : hasSigns(call.terminal.env) ? 'screen' : 'ascii';
  return {
    width: widthOf(call, stream),
    style,
    colour: style !== 'plain' && mayColour(call, stream),
    units: call.oneOf('units', ['L', 'kg']) ?? 'L',
  };
}

function widthOf(call: Call, stream: 'stdout' | 'stderr'): number {
  const asked = call.wholeNumber('width', { least: 20, most: 1000 });
  if (asked !== undefined) return asked;
  const { env, [stream]: out } = call.terminal;
  if (out.columns !== undefined && out.columns > 0) return out.columns;
  const columns = env['COLUMNS'];
  return columns !== undefined && /^[1-9]\d{1,3}$/.test(columns)
    ? readWholeNumber(columns, { flag: 'COLUMNS', least: 1, most: 9999 })
    : USUAL_WIDTH;
}

/** Whether the locale says that letters beyond ASCII can be shown; Windows has no locale and shows them. */
function hasSigns(env: Call['terminal']['env']): boolean {
  const locale = env['LC_ALL'] || env['LC_CTYPE'] || env['LANG'] || '';
  return /utf-?8/i.test(locale) || (locale === '' && env['OS'] === 'Windows_NT');
}

/** A data stream that goes to a file or a pipe never gets colour. */
function mayColour(call: Call, stream: 'stdout' | 'stderr'): boolean {
  const { env, [stream]: out } = call.terminal;
  if (!out.isTty || call.has('no-color') || (stream === 'stdout' && call.has('output'))) return false;
  return (env['NO_COLOR'] ?? '') === '' && env['TERM'] !== 'dumb';
}
