// The whole outpost file as one strict schema, built when the first file is read.
import * as z from 'zod';
import { makeAtoms } from './atoms.ts';
import { couplingSchema, gaugingBottleSchema, hoseSchema, pushSchema } from './hoses-and-push.ts';
import { instrumentSchema } from './instruments.ts';
import { evaporationSchema, normFlowSchema, normsSchema } from './norms.ts';
import { officeSchema, SECOND_PERSON_ACTS, visitSchema } from './people-and-visits.ts';
import { biocideSchema, gradeSchema, outpostSectionSchema, placeSchema } from './place-and-grades.ts';
import { limitSchema, policySchema, treatmentSchema } from './policy.ts';
import { samplingPointSchema } from './sampling-points.ts';
import { portSchema, storeSchema } from './stores-and-ports.ts';
import { unitSchema } from './units.ts';
import {
  bottledOxygenSchema,
  costsSchema,
  hazardFiguresSchema,
  leversSchema,
  partSchema,
  serviceSchema,
  taskSchema,
} from './work-and-prices.ts';

export const FILE_FORMAT = 'waterwright outpost';
export const FILE_VERSION = 1;

function makeFileSchema() {
  const a = makeAtoms();
  return z.strictObject({
    format: z.literal(FILE_FORMAT),
    version: z.literal(FILE_VERSION),
    outpost: outpostSectionSchema(a),
    places: z.array(placeSchema(a)).min(1),
    grades: z.array(gradeSchema(a)).min(1),
    biocides: z.array(biocideSchema(a)).default([]),
    stores: z.array(storeSchema(a)).min(1),
    ports: z.array(portSchema(a)).default([]),
    instruments: z.array(instrumentSchema(a)).default([]),
    units: z.array(unitSchema(a)).default([]),
    samplingPoints: z.array(samplingPointSchema(a)).default([]),
    norms: normsSchema(a),
    normFlows: z.array(normFlowSchema(a)).default([]),
    evaporation: evaporationSchema(a).exactOptional(),
    hoses: z.array(hoseSchema(a)).default([]),
    couplings: z.array(couplingSchema(a)).default([]),
    push: pushSchema(a).exactOptional(),
    gaugingBottle: gaugingBottleSchema(a).exactOptional(),
    people: z.array(officeSchema(a)).min(1),
    secondPersonActs: z.array(z.enum(SECOND_PERSON_ACTS)).default([]),
    visits: z.array(visitSchema(a)).default([]),
    limits: z.array(limitSchema(a)).default([]),
    policy: policySchema(a),
    treatments: z.array(treatmentSchema(a)).default([]),
    parts: z.array(partSchema(a)).default([]),
    bottledOxygen: bottledOxygenSchema(a).exactOptional(),
    service: z.array(serviceSchema(a)).default([]),
    taskMinutes: z.array(taskSchema(a)).default([]),
    levers: leversSchema(a).exactOptional(),
    costs: costsSchema(a).exactOptional(),
    hazardFigures: hazardFiguresSchema(a).exactOptional(),
  });
}

let made: ReturnType<typeof makeFileSchema> | undefined;

/** Built once, on first use: a program that reads no outpost file pays nothing for it. */
export function fileSchema(): ReturnType<typeof makeFileSchema> {
  made ??= makeFileSchema();
  return made;
}

/** The file as written, defaults filled in, groups of stores not yet taken apart. */
export type OutpostFile = z.output<ReturnType<typeof makeFileSchema>>;
