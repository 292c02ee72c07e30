// What the tables of control charts and of counting are held against.
import { atLeastDrawn, type IndividualsChart, individualsChart } from '../../src/ground/maths/index.ts';
import type { Subject } from './subject.ts';

export const CHARTS: Readonly<Record<string, Subject>> = {
  individualsChart: (what = '', values = '') => {
    const chart = individualsChart([values.split(' ').map(Number)]);
    return chart?.[what as keyof IndividualsChart] ?? Number.NaN;
  },
  atLeastDrawn: (total, marked, drawn, atLeast) =>
    atLeastDrawn({ total: Number(total), marked: Number(marked), drawn: Number(drawn) }, Number(atLeast)),
};
