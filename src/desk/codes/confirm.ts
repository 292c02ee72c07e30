// Confirming by a code: the second person of an act, and whoever wants to see what only the medic may open.
import type { SecondPerson } from '../../book/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { codeFinding } from './code-finding.ts';
import { TRY_RULE } from './code-rules.ts';

/** The office whose code opens who drank what. */
export const MEDIC = 'medic';

/** A second person as named, with the code where one was given. */
export interface SecondNamed {
  readonly office: string;
  readonly code?: string;
}

/**
 * The moment of an act with a second person. The code is looked at last of all, when nothing else speaks against the entry,
 * and never when it is only tried.
 */
export function momentWithSecond(desk: Desk, moment: Moment, { office, code }: SecondNamed): Moment {
  const second: SecondPerson = { office, confirmation: 'declared, not verified' };
  return code === undefined
    ? { ...moment, second }
    : askedAtLast({ ...moment, second }, () => confirmSecond(desk, { office, code }, moment));
}

/** The same for a door that asks the person when it has come so far. */
export function askedAtLast(moment: Moment, ask: () => Promise<Answer<SecondPerson>>): Moment {
  return {
    ...moment,
    lastWord: async (drafts) => {
      if (drafts.every(({ second }) => second === undefined)) return yes(drafts);
      const confirmed = await ask();
      if (!confirmed.ok) return confirmed;
      const second = confirmed.value;
      return yes(drafts.map((draft) => (draft.second === undefined ? draft : { ...draft, second })));
    },
  };
}

/** Without a code, or of an office that has none, a second person is declared for ever. A wrong code is refused. */
export async function confirmSecond(
  desk: Desk,
  { office, code }: SecondNamed,
  moment: Pick<Moment, 'nowUtcMs'>,
): Promise<Answer<SecondPerson>> {
  if (code === undefined || !(await desk.codes.has(office)))
    return yes({ office, confirmation: 'declared, not verified' });
  const right = await confirmedBy(desk, office, code, moment);
  return right.ok ? yes({ office, confirmation: 'by own code' }) : right;
}

/**
 * Yes where it is the code of this office. The try is counted in the book file, so the book has to be open for writing.
 */
export async function confirmedBy(
  desk: Desk,
  office: string,
  code: string,
  { nowUtcMs }: Pick<Moment, 'nowUtcMs'>,
): Promise<Answer<true>> {
  const check = await desk.codes.check(office, code, { nowMs: nowUtcMs, ...TRY_RULE });
  switch (check.is) {
    case 'right':
      return yes(true);
    case 'none':
      return no('refused', codeFinding('code-none', { office }));
    case 'waits':
      return no(
        'refused',
        codeFinding('code-waits', { office, leftMs: check.leftMs, tries: TRY_RULE.tries }),
      );
    case 'wrong': {
      const data = { office, left: check.left, waitMin: TRY_RULE.waitMs / 60_000 };
      return no('refused', codeFinding('code-wrong', data));
    }
  }
}

/** Who drank what since when is shown only after this said yes. */
export function openedByMedic(
  desk: Desk,
  code: string,
  moment: Pick<Moment, 'nowUtcMs'>,
): Promise<Answer<true>> {
  return confirmedBy(desk, MEDIC, code, moment);
}
