// How the papers are asked for texts of figures here: with the true signs, as wide as the place that they get.
import type { TextOptions } from '../../../../papers/index.ts';

export const ON_SCREEN: TextOptions = { width: 100, style: 'screen', colour: false, units: 'L' };
