// A range that was left is named with its ends and its source.
import { expect, it } from 'vitest';
import { OPEN_END, OutsideRange } from './outside-range.ts';

const left = {
  quantity: 'temperature of the water',
  value: 41,
  unit: '°C',
  low: 0,
  high: 40,
  source: 'tanaka-2001',
};

it('says what, where, the range and the source', () => {
  const fault = new OutsideRange(left);
  expect(fault).toBeInstanceOf(RangeError);
  expect(fault.message).toBe('temperature of the water: known here from 0 to 40 °C, not at 41 (tanaka-2001)');
  expect(fault.left).toEqual(left);
});

it('says of an open end that it is open', () => {
  expect(new OutsideRange({ ...left, high: OPEN_END }).message).toContain('from 0 °C on');
});

it('says of a lower end that is outside itself that only above it is known', () => {
  const fault = new OutsideRange({ ...left, lowIsOpen: true, value: 0, high: OPEN_END });
  expect(fault.message).toBe('temperature of the water: known here above 0 °C, not at 0 (tanaka-2001)');
});
