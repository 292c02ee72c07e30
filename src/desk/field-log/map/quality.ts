// Labels, samples, results, holds and the ways out of them as the book's entries about what water is fit for.
import type { Body } from '../../../book/index.ts';
import { nearest } from '../../../ground/units/index.ts';
import type { LineOf } from '../shape/line-shapes.ts';
import type { LineAt, Made } from './line-at.ts';

/** What a field of a result is called in the outpost file, and its unit. */
const PARAMETERS = {
  silver_mg_L: { parameter: 'silver', unit: 'mg/L' },
  plate_count_cfu_mL: { parameter: 'plate count', unit: 'CFU/mL' },
  TOC_mg_L: { parameter: 'TOC', unit: 'mg/L' },
  conductivity_uS_cm: { parameter: 'conductivity', unit: 'µS/cm' },
} as const;

type Values = Body<'result'>['values'];

/** Null says that it was not read, and then nothing is kept of it. */
function values(line: { readonly [Field in keyof typeof PARAMETERS]?: number | null }): Values {
  const fields = Object.keys(PARAMETERS) as (keyof typeof PARAMETERS)[];
  return fields.flatMap((field) => {
    const value = line[field] ?? null;
    return value === null ? [] : [{ ...PARAMETERS[field], value }];
  });
}

export function readSample(line: LineOf<'sample'>, at: LineAt): Made {
  return {
    kind: 'sample',
    body: {
      store: at.store(line.store, 'store'),
      sample: line.sample,
      tests: line.tests,
      ...(line.volume_mL !== null && { volumeMg: at.amounts.mgOfMillilitres(line.volume_mL) }),
      ...(line.drawn_from !== undefined && { drawnFrom: line.drawn_from }),
    },
  };
}

export function readSampleResult(line: LineOf<'sample_result'>, at: LineAt): Made {
  const { store, point } = line;
  if ((store === undefined) === (point === undefined)) {
    at.say('log-one-of', 'store', { fields: ['store', 'point'], has: store === undefined ? 0 : 2 });
  }
  return {
    kind: 'result',
    body: {
      sample: line.sample,
      ...(store !== undefined && { store: at.store(store, 'store') }),
      ...(point !== undefined && { point }),
      values: values(line),
      ...(line.verdict !== undefined && { verdict: line.verdict }),
    },
  };
}

/** The weekly count has no bottle with a number: the line's own id stands for it. */
export function readPlateCount(line: LineOf<'plate_count'>): Made {
  return {
    kind: 'result',
    body: {
      sample: `${line.id} ${line.point}`,
      point: line.point,
      values: values({ plate_count_cfu_mL: line.cfu_mL }),
    },
  };
}

export function readQuarantine(line: LineOf<'quarantine'>, at: LineAt): Made {
  return {
    kind: 'hold',
    body: {
      hold: line.hold,
      stores: at.stores(line.containers, 'containers'),
      conditional: at.stores(line.conditional ?? [], 'conditional'),
      reason: 'quarantine',
      ...(line.also !== undefined && { also: line.also }),
    },
  };
}

export function readRelease(line: LineOf<'release'>, at: LineAt): Made {
  return {
    kind: 'release',
    body: {
      ...(line.hold !== undefined && { hold: line.hold }),
      stores: at.stores(line.containers, 'containers'),
      values: values(line),
    },
  };
}

export function readDowngrade(line: LineOf<'downgrade'>, at: LineAt): Made {
  return {
    kind: 'downgrade',
    body: {
      ...(line.hold !== undefined && { hold: line.hold }),
      store: at.store(line.store, 'store'),
      fromGrade: at.grade(line.from_grade, 'from_grade'),
      toGrade: at.grade(line.to_grade, 'to_grade'),
      values: values(line),
    },
  };
}

export function readRebiocide(line: LineOf<'rebiocide'>, at: LineAt): Made {
  return {
    kind: 'dose',
    body: {
      stores: at.stores(line.containers, 'containers'),
      // The field names the biocide: target_silver_mg_L.
      biocide: at.biocide('silver', 'target_silver_mg_L'),
      doseEach: at.amounts.millilitres(line.dose_mL_each),
      ...(line.target_silver_mg_L !== null && { targetMgPerL: line.target_silver_mg_L }),
    },
  };
}

export function readRelabel(line: LineOf<'relabel'>, at: LineAt): Made {
  return {
    kind: 'relabel',
    body: {
      store: at.store(line.store, 'store'),
      fromLabel: line.from_label,
      toGrade: gradeOfLabel(line.to_label, at),
      twoPersons: line.two_person,
      ...(line.photo !== undefined && { photo: line.photo }),
    },
  };
}

/** A label says a grade by its id or by its sign; capitals do not count, so `WASTE` is waste. */
function gradeOfLabel(label: string, at: LineAt): string {
  const { grades } = at.index.outpost;
  const word = label.toLowerCase();
  const meant = grades.find(({ id, label: sign }) => id.toLowerCase() === word || sign === word);
  if (meant !== undefined) return meant.id;
  const words = grades.map(({ id }) => id);
  at.say('log-name-unknown', 'to_label', { what: 'label', name: label, nearest: nearest(label, words) });
  return label;
}

export function readLabelCheck(line: LineOf<'label_check'>): Made {
  return { kind: 'check', body: { what: 'labels', ok: line.ok, items: line.items } };
}
