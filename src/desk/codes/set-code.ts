// Setting a code: who may, what has to be given for it, and the entry that tells when it was done.
import type { Body } from '../../book/index.ts';
import type { KeptSheet } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { log } from '../log/log.ts';
import { codeFinding } from './code-finding.ts';
import { whyUnfit } from './code-rules.ts';
import { confirmedBy } from './confirm.ts';

/** Sets a lost code anew, where the outpost has this office. */
const CHIEF = 'chief';

export interface CodeSetting {
  readonly office: string;
  /** Who says so, where somebody named an office; else the one that may. */
  readonly by?: string;
  /** The old one is lost: two others set it anew, `second` by its own code. */
  readonly lost?: { readonly second: string | undefined };
}

/** What a setting asks of whom, in this order, before the new code. */
export interface CodePlan {
  readonly because: Body<'code-set'>['because'];
  readonly by: string;
  readonly second: string | null;
  /** Offices whose own codes have to be given. */
  readonly asks: readonly string[];
}

/** Codes that were given, by office: `asks` of the plan. */
export interface CodesGiven {
  readonly fresh: string;
  readonly own: ReadonlyMap<string, string>;
}

/** Who has to give which code, or why nobody may. */
export async function planCode(desk: Desk, setting: CodeSetting): Promise<Answer<CodePlan>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const offices = [...opened.value.fold.index.offices.keys()];
  const { office, by, lost } = setting;
  const unknown = [office, by, lost?.second].find((each) => each !== undefined && !offices.includes(each));
  if (unknown !== undefined)
    return no('bad input', deskFinding('office-unknown', { office: unknown.slice(0, 60), offices }));
  if (lost !== undefined) return planLost(desk, { office, by, second: lost.second }, offices);
  if (by !== undefined && by !== office) return no('refused', codeFinding('code-not-own', { office, by }));
  const has = await desk.codes.has(office);
  const plan = { by: office, second: null };
  return yes(has ? { ...plan, because: 'changed', asks: [office] } : { ...plan, because: 'first', asks: [] });
}

async function planLost(
  desk: Desk,
  named: { readonly office: string; readonly by: string | undefined; readonly second: string | undefined },
  offices: readonly string[],
): Promise<Answer<CodePlan>> {
  const { office, second } = named;
  if (!(await desk.codes.has(office))) return no('refused', codeFinding('code-none', { office }));
  const allowed = offices.includes(CHIEF) ? [CHIEF] : offices.filter((each) => each !== office);
  const by = named.by ?? allowed.find((each) => each !== second) ?? office;
  if (!allowed.includes(by) || second === undefined || second === by || second === office) {
    const data = { office, by, second: second ?? null, allowed };
    return no('refused', codeFinding('code-lost-by', data));
  }
  if (!(await desk.codes.has(second))) return no('refused', codeFinding('code-none', { office: second }));
  // Whoever sets it anew proves who it is too, unless that is the code that was lost.
  const own = by !== office && (await desk.codes.has(by)) ? [by] : [];
  return yes({ because: 'lost', by, second, asks: [...own, second] });
}

/** Sets a code and enters that it was set: both or neither. */
export async function setCode(
  desk: Desk,
  moment: Moment,
  setting: CodeSetting,
  given: CodesGiven,
): Promise<Answer<KeptSheet>> {
  const planned = await planCode(desk, setting);
  if (!planned.ok) return planned;
  const { office } = setting;
  const { because, by, second, asks } = planned.value;
  const why = whyUnfit(given.fresh);
  if (why !== null) return no('bad input', codeFinding('code-unfit', { why }));
  for (const each of asks) {
    const code = given.own.get(each);
    if (code === undefined)
      return because === 'changed'
        ? no('refused', codeFinding('code-old-missing', { office }))
        : no('wrong use', codeFinding('code-not-given', { office: each, what: 'asked' }));
    const right = await confirmedBy(desk, each, code, moment);
    if (!right.ok) return right;
  }
  if (await desk.codes.wasUsed(office, given.fresh))
    return no('bad input', codeFinding('code-used-before', { office }));
  const { nowUtcMs, offsetMin } = moment;
  const kept: Moment = {
    nowUtcMs,
    offsetMin,
    by,
    ...(second !== null && { second: { office: second, confirmation: 'by own code' } }),
    lastWord: async (drafts) => {
      for (const { id } of drafts) await desk.codes.set(office, given.fresh, id);
      return yes(drafts);
    },
  };
  return log(desk, kept, { what: 'kind', kind: 'code-set', body: { office, because } }, { sure: true });
}
