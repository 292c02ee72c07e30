// The certificate of a store: what is in it, who released it on which figures, or every reason why it is not released.

import { formatFigure } from '../../../ground/units/index.ts';
import type { CertificateSheet } from '../../sheets/papers-quality.ts';
import { saidKnown } from '../../text/age.ts';
import { saidLacks } from '../../words/en/holds.ts';
import { saidSamples, saidWho, certificate as words } from '../../words/en/papers-quality.ts';
import type { DocumentPart, PaperDocument } from '../document.ts';
import { figureTable, rowTable } from './figure-parts.ts';

export function certificatePaper(sheet: CertificateSheet): PaperDocument {
  const { head, book, store, rows, figures } = sheet;
  return {
    paper: 'certificate',
    of: store.id,
    language: 'en',
    isWide: false,
    title: words.title(store.id),
    head,
    book,
    parts: [
      ...verdictOf(sheet),
      factsOf(sheet),
      { part: 'heading', text: words.figureHead },
      figureTable(figures, { empty: words.noFigures, withStore: false }),
      { part: 'heading', text: words.rowHead },
      rowTable(rows),
      ...alsoOf(sheet),
      {
        part: 'signatures',
        people: [
          { office: 'medic', says: words.medic },
          { office: 'keeper', says: words.checked },
        ],
      },
    ],
  };
}

/** What the book has against it whatever its release says: open findings that ask somebody to act. */
function speaksAgainst({ findings }: CertificateSheet): readonly string[] {
  return findings.filter(({ severity }) => severity !== 'know').map(({ text }) => text);
}

/** Fail-closed: anything that is no release, waiver or loader's word in force is not released. */
function verdictOf(sheet: CertificateSheet): readonly DocumentPart[] {
  const { store, quality, waived, word } = sheet;
  const say = (head: string, text: string): DocumentPart => ({ part: 'verdict', word: head, text });
  if (store.emptied) return [say(words.empty, words.emptySays)];
  const isClear = quality.word === 'RELEASED' || quality.word === '';
  if (quality.word === 'RELEASED' && word !== null)
    return [say(words.released, words.releasedSays(sheet, speaksAgainst(sheet).length === 0))];
  const reasons = reasonsOf(sheet);
  const why: readonly DocumentPart[] = [
    { part: 'heading', text: words.whyHead },
    { part: 'list', items: reasons },
  ];
  if (quality.word === 'WAIVED') return [say(words.waived, waived.map(words.waivedSays).join(' ')), ...why];
  if (isClear && quality.onWordOf === BY_LOADER)
    return [say(words.onCertificate, words.certificateSays), ...why];
  if (isClear && quality.onWordOf !== 'none') return [say(words.inUseHead, words.inUseSays), ...why];
  return [say(words.notReleased, words.notReleasedSays(reasons.length)), ...why];
}

const BY_LOADER = 'loader\u2019s certificate';

/** Every one, the hold before all. */
function reasonsOf(sheet: CertificateSheet): readonly string[] {
  const { quality, word, cameBy, lacks, isForPeople } = sheet;
  const { holds, conditional, released, onWordOf } = quality;
  const isOver = released?.over === true && released.until !== null;
  return [
    ...holds.map(words.hold),
    ...(conditional === null ? [] : [words.conditional(conditional)]),
    ...(isOver ? [words.over(released.until)] : []),
    ...(word === null ? [words.onWordOf(onWordOf, cameBy)] : []),
    ...(word !== null && !isOver ? [words.releaseAgainst(saidWho(word), word.at)] : []),
    ...groupsOf(lacks).map(words.lack),
    ...(isForPeople ? [] : [words.nobodyDrinks]),
  ];
}

/** One sentence for each way in which something is lacking. */
function groupsOf(lacks: readonly string[]): readonly string[] {
  const codeOf = (lack: string) => lack.slice(lack.indexOf(': ') + 1);
  const codes = [...new Set(lacks.map(codeOf))];
  return codes.map((code) => saidLacks(lacks.filter((lack) => codeOf(lack) === code)));
}

function factsOf({ store, quality, word }: CertificateSheet): DocumentPart {
  const { facts } = words;
  const released = word === null || store.emptied ? null : quality.released;
  return {
    part: 'facts',
    facts: [
      { name: facts.store, said: store.name === store.id ? store.id : `${store.id}, ${store.name}` },
      { name: facts.place, said: store.place },
      { name: facts.content, said: formatFigure(store.volume, { style: 'screen' }) },
      { name: facts.known, said: saidKnown(store) },
      { name: facts.grade, said: store.grade ?? words.noGrade },
      ...(store.mark === '' ? [] : [{ name: facts.mark, said: store.mark }]),
      ...(released === null
        ? []
        : [
            { name: facts.by, said: word === null ? '' : saidWho(word) },
            { name: facts.at, said: released.at },
            { name: facts.until, said: released.until ?? words.noEnd },
            {
              name: facts.samples,
              said: released.samples.length === 0 ? words.none : saidSamples(released.samples),
            },
            ...(word === null ? [] : [{ name: facts.entry, said: word.ref }]),
          ]),
    ].filter(({ said }) => said !== ''),
  };
}

function alsoOf({ findings }: CertificateSheet): readonly DocumentPart[] {
  if (findings.length === 0) return [];
  return [
    { part: 'heading', text: words.alsoHead },
    { part: 'list', items: findings.map(({ text }) => text) },
  ];
}
