// Reading the data of a finding: what a room promised is there, or the room is at fault.
import type { FindingData } from '../../../ground/units/index.ts';

/** @throws TypeError if there is no text or number under the key: a room that raises a finding owes its data. */
export function textOf(data: FindingData, key: string): string {
  const value = data[key];
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(value);
  throw missing(key);
}

export function maybeText(data: FindingData, key: string): string | null {
  const value = data[key];
  return value === undefined || value === null ? null : textOf(data, key);
}

export function numberOf(data: FindingData, key: string): number {
  const value = data[key];
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  throw missing(key);
}

export function maybeNumber(data: FindingData, key: string): number | null {
  const value = data[key];
  return value === undefined || value === null ? null : numberOf(data, key);
}

export function listOf(data: FindingData, key: string): readonly string[] {
  const value = data[key];
  return Array.isArray(value) ? value : [];
}

function missing(key: string): TypeError {
  return new TypeError(`the finding has no usable ${key} in its data`);
}
