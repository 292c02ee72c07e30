// The papers that a book can give, by their names: what each is of, and how it is made.
import type { PaperDocument } from '../../papers/index.ts';
import type { Answer } from '../answer.ts';
import type { Desk, Moment, Sight } from '../desk.ts';
import { certificate } from './certificate.ts';
import { holdNotice, holdRelease } from './hold-papers.ts';
import { sampleSheet } from './sample-sheet.ts';
import { trendPaperSheet } from './trend-sheet.ts';

/** What a paper is asked by; each looks at what it knows. */
export interface PaperQuery {
  /** The sample, store, hold or parameter. */
  readonly of: string;
  /** Of a blank sample sheet. */
  readonly tests?: readonly string[];
  /** Where the trend is of. */
  readonly store?: string;
  readonly point?: string;
  readonly grade?: string;
}

type MakePaper = (
  desk: Desk,
  query: PaperQuery,
  sight: Sight,
  moment: Moment,
) => Promise<Answer<PaperDocument>>;

export const PAPERS = {
  'sample-sheet': sampleSheet,
  certificate: (desk, { of: store }, sight, moment) => certificate(desk, { store }, sight, moment),
  'hold-notice': (desk, { of: hold }, sight, moment) => holdNotice(desk, { hold }, sight, moment),
  'hold-release': (desk, { of: hold }, sight, moment) => holdRelease(desk, { hold }, sight, moment),
  'trend-sheet': (desk, { of: parameter, store, point, grade }, sight, moment) =>
    trendPaperSheet(
      desk,
      {
        parameter,
        ...(store !== undefined && { store }),
        ...(point !== undefined && { point }),
        ...(grade !== undefined && { grade }),
      },
      sight,
      moment,
    ),
} as const satisfies Readonly<Record<string, MakePaper>>;

export type PaperName = keyof typeof PAPERS;

export const PAPER_NAMES = Object.keys(PAPERS) as readonly PaperName[];

export function paper(
  desk: Desk,
  name: PaperName,
  { query, sight, moment }: { readonly query: PaperQuery; readonly sight: Sight; readonly moment: Moment },
): Promise<Answer<PaperDocument>> {
  const make: MakePaper = PAPERS[name];
  return make(desk, query, sight, moment);
}
