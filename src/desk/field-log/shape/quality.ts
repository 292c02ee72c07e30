// Lines about what water is fit for: labels, samples, results, holds and every way out of one.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

function sampleShapes(a: Atoms) {
  return {
    sample: z.strictObject({
      ...a.head,
      kind: z.literal('sample'),
      store: a.name,
      sample: a.name,
      tests: z.array(a.name).max(50),
      volume_mL: a.millilitres.nullable(),
      drawn_from: a.text.exactOptional(),
    }),
    sample_result: z.strictObject({
      ...a.head,
      kind: z.literal('sample_result'),
      sample: a.name,
      store: a.name.exactOptional(),
      point: a.point.exactOptional(),
      silver_mg_L: a.mgPerL.nullable().exactOptional(),
      plate_count_cfu_mL: a.counted.nullable().exactOptional(),
      TOC_mg_L: a.mgPerL.nullable().exactOptional(),
      conductivity_uS_cm: a.microsiemens.nullable().exactOptional(),
      verdict: a.text.exactOptional(),
    }),
    plate_count: z.strictObject({
      ...a.head,
      kind: z.literal('plate_count'),
      point: a.point,
      cfu_mL: a.counted.nullable(),
    }),
  };
}

function holdShapes(a: Atoms) {
  return {
    quarantine: z.strictObject({
      ...a.head,
      kind: z.literal('quarantine'),
      hold: a.name,
      containers: a.someNames,
      conditional: a.names.exactOptional(),
      also: a.text.exactOptional(),
    }),
    release: z.strictObject({
      ...a.head,
      kind: z.literal('release'),
      hold: a.name.exactOptional(),
      containers: a.someNames,
      silver_mg_L: a.mgPerL.nullable(),
      plate_count_cfu_mL: a.counted.nullable(),
    }),
    downgrade: z.strictObject({
      ...a.head,
      kind: z.literal('downgrade'),
      hold: a.name.exactOptional(),
      store: a.name,
      from_grade: a.grade,
      to_grade: a.grade,
      plate_count_cfu_mL: a.counted.nullable(),
    }),
  };
}

function treatmentShapes(a: Atoms) {
  return {
    rebiocide: z.strictObject({
      ...a.head,
      kind: z.literal('rebiocide'),
      containers: a.someNames,
      dose_mL_each: a.millilitres,
      target_silver_mg_L: a.mgPerL.nullable(),
    }),
    relabel: z.strictObject({
      ...a.head,
      kind: z.literal('relabel'),
      store: a.name,
      from_label: a.name,
      to_label: a.name,
      two_person: a.yesNo,
      photo: a.name.exactOptional(),
    }),
    label_check: z.strictObject({
      ...a.head,
      kind: z.literal('label_check'),
      ok: a.yesNo,
      items: z.array(a.text).max(200),
    }),
  };
}

export function qualityShapes(a: Atoms) {
  return { ...sampleShapes(a), ...holdShapes(a), ...treatmentShapes(a) };
}
