// The certificate of a store: its release with the person and the figures behind it, or all that stands against one.
import { isForPeople, rowsOfGrade, type StorePosition } from '../../account/index.ts';
import { formatShortStamp } from '../../ground/units/index.ts';
import {
  type CertificateSheet,
  certificatePaper,
  type PaperDocument,
  type PaperFigure,
} from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import type { Desk, Moment, Sight } from '../desk.ts';
import { findName } from '../log/context.ts';
import { openFindings } from '../open-findings.ts';
import { lacksOf } from '../quality/lacks.ts';
import { sampleLines } from '../quality/sample-lines.ts';
import { type Seen, seenAt } from '../quality/seen.ts';
import { storeQuality } from '../quality/store-quality.ts';
import { headOf, storeLine, wordOf } from '../today.ts';
import { bookSeal } from './book-seal.ts';
import { paperRows } from './paper-rows.ts';
import { entryOfId, wordOfEntry } from './paper-words.ts';
import { figuresOfWay } from './way-figures.ts';

export async function certificate(
  desk: Desk,
  query: { readonly store: string },
  sight: Sight,
  moment: Moment,
): Promise<Answer<PaperDocument>> {
  const looked = await seenAt(desk, sight, moment);
  if (!looked.ok) return looked;
  const seen = looked.value;
  const { position, fold } = seen;
  const names = position.stores.map(({ facts }) => facts.id);
  const id = findName('store', query.store, names);
  if (!id.ok) return id;
  const store = position.stores.find(({ facts }) => facts.id === id.value) as StorePosition;
  const state = fold.stores.get(id.value);
  const entry = store.released === null ? null : await entryOfId(desk.port, store.released.entry);
  const own = entry?.kind === 'release' ? entry : null;
  const figures = store.emptied ? [] : [...figuresOf(seen, store), ...figuresOfWay(seen, own, [id.value])];
  return yes(
    certificatePaper({
      head: headOf(desk, sight, position),
      book: await bookSeal(desk),
      store: storeLine(position, store),
      quality: storeQuality(seen, store),
      word: own === null ? null : wordOfEntry(own, position.dayRule),
      cameBy: entry === null || own !== null ? null : wordOfEntry(entry, position.dayRule),
      waived: await waivedOf(seen, store),
      lacks: state === undefined ? [] : lacksOf(fold, state, position.atMs),
      isForPeople: isForPeople(fold.index, store.grade),
      rows: paperRows(fold, rowsOfGrade(fold.limits, fold.index, store.grade), {
        stores: [id.value],
        measured: figures.map(({ figure }) => figure.parameter),
      }),
      figures,
      findings: openFindings(position)
        .filter(({ where }) => where.store === id.value)
        .map((finding) => wordOf(position, finding)),
    }),
  );
}

/** Of every sample that speaks of the water that is in it now, the oldest first, and of those that its release names. */
function figuresOf(seen: Seen, { facts, released }: StorePosition): readonly PaperFigure[] {
  const state = seen.fold.stores.get(facts.id);
  const own = new Set([...(state?.results ?? []).map(({ sample }) => sample), ...(released?.samples ?? [])]);
  return sampleLines(seen)
    .filter(({ sample }) => own.has(sample))
    .flatMap(({ sample, taken, figures }) =>
      figures.map((figure) => ({ stores: [facts.id], sample, taken, figure })),
    );
}

async function waivedOf(
  { desk, position }: Seen,
  { waived }: StorePosition,
): Promise<CertificateSheet['waived']> {
  const lines: CertificateSheet['waived'][number][] = [];
  for (const { hold, by, reason, untilMs, entry } of waived) {
    const kept = await entryOfId(desk.port, entry);
    if (kept === null) throw new Error(`the book has no entry ${entry} of a waiver by ${by}`);
    lines.push({
      ...wordOfEntry(kept, position.dayRule),
      ...{ hold: hold.hold, reason },
      until: formatShortStamp(untilMs, position.dayRule),
    });
  }
  return lines;
}
