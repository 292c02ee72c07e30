// Table of what is said about the codes by which a person confirms: what was done, and the finding that came of it.
import { confirmedBy, Desk, log, setCode } from '../../../src/desk/index.ts';
import type { Finding } from '../../../src/ground/units/index.ts';
import type { CodeFindingCode } from '../../../src/papers/index.ts';
import { MemoryCodes } from '../../codes/memory-codes.ts';
import { draftOf, holmBook, keep } from '../../journeys/kept.ts';
import { at } from '../../journeys/told.ts';
import { NOW } from './asked-desk.ts';
import { failure, type Sample, type Samples, sample, writtenOut } from './sample.ts';

type Setting = Parameters<typeof setCode>[2];

async function holm(codes: Readonly<Record<string, string>>): Promise<Desk> {
  let count = 0;
  const chance = () => Uint8Array.from({ length: 10 }, () => ++count % 256);
  return await Desk.open(await holmBook(), { chance, codes: new MemoryCodes(codes) });
}

function of(
  code: CodeFindingCode,
  answer: { readonly ok: boolean; readonly findings?: readonly Finding[] },
): Finding | undefined {
  return answer.findings?.find((each) => each.code === code);
}

/** Wrong codes, one after the other; the last one is what is shown. */
function tried(code: CodeFindingCode, when: string, ...times: readonly [number, ...number[]]): Sample {
  const fail = (count: number) => async () => {
    const desk = await holm({ medic: '7391' });
    for (let k = 1; k < count; k++) await confirmedBy(desk, 'medic', '4821', NOW);
    const answer = await confirmedBy(desk, 'medic', '4821', NOW);
    return failure(
      ['the medic has a code', `${count} wrong ${count === 1 ? 'one' : 'ones in a row'}`],
      of(code, answer),
    );
  };
  const [first, ...others] = times;
  return sample(when, fail(first), ...others.map(fail));
}

interface Told {
  readonly said: string;
  readonly setting: Setting;
  readonly fresh?: string;
  readonly own?: Readonly<Record<string, string>>;
  readonly codes?: Readonly<Record<string, string>>;
}

function set(code: CodeFindingCode, when: string, ...told: readonly [Told, ...Told[]]): Sample {
  const fail =
    ({ said, setting, fresh = '73915', own = {}, codes = {} }: Told) =>
    async () => {
      const desk = await holm(codes);
      const answer = await setCode(desk, NOW, setting, { fresh, own: new Map(Object.entries(own)) });
      return failure([said], of(code, answer));
    };
  const [first, ...others] = told;
  return sample(when, fail(first), ...others.map(fail));
}

const medic = { medic: '7391' };
const unfit = (said: string, fresh: string): Told => ({ said, fresh, setting: { office: 'medic' } });

export const codeSamples: Samples<CodeFindingCode> = {
  'code-wrong': tried('code-wrong', 'It is not the code of that office.', 1, 5),
  'code-waits': tried('code-waits', 'Five wrong codes in a row: then the office waits 15 minutes.', 6),
  'code-none': sample('Something is to be opened by a code that nobody has set.', async () => {
    const answer = await confirmedBy(await holm({}), 'medic', '4821', NOW);
    return failure(
      ['no office has a code; the code of the medic is to open something'],
      of('code-none', answer),
    );
  }),
  'code-unfit': set(
    'code-unfit',
    'A code that is none, or the first that anybody would try.',
    unfit('a new code with a letter in it', '48a1'),
    unfit('a new code of three digits', '482'),
    unfit('a new code of one digit over and over', '0000'),
    unfit('a new code of digits in their order', '1234'),
  ),
  'code-used-before': set('code-used-before', 'The code, or one of the last ones, once more.', {
    said: 'the medic, who has a code, sets the same one',
    setting: { office: 'medic' },
    fresh: '7391',
    own: medic,
    codes: medic,
  }),
  'code-old-missing': set('code-old-missing', 'A new code without the old one.', {
    said: 'the medic has a code, and a new one is given without it',
    setting: { office: 'medic' },
    codes: medic,
  }),
  'code-not-own': set('code-not-own', 'Somebody sets the code of another office.', {
    said: 'the keeper sets the code of the medic',
    setting: { office: 'medic', by: 'keeper' },
  }),
  'code-lost-by': set(
    'code-lost-by',
    'A lost code is to be set anew, and not by those who may.',
    {
      said: 'the medic lost the code; nobody is named as the second person',
      setting: { office: 'medic', lost: { second: undefined } },
      codes: medic,
    },
    {
      said: 'the medic lost the code and is named as the second person',
      setting: { office: 'medic', lost: { second: 'medic' } },
      codes: medic,
    },
  ),
  'code-not-given': set('code-not-given', 'A code is needed, and none came.', {
    said: 'the medic lost the code; the second person gives none',
    setting: { office: 'medic', lost: { second: 'second' } },
    codes: { ...medic, second: '4821' },
  }),
  'code-twice-unlike': writtenOut(
    'The new code and its repetition differ.',
    'Only somebody at a terminal types a code twice; tests/golden/cli/codes.test.ts does.',
    failure(['a new code of the medic, typed twice'], {
      code: 'code-twice-unlike',
      severity: 'error',
      where: {},
      data: { office: 'medic' },
      entries: [],
    }),
  ),
  'code-by-hand': sample('The entry alone, without a code.', async () => {
    const request = {
      what: 'told',
      kind: 'code-set',
      fields: { office: 'medic', because: 'first' },
    } as const;
    return failure([JSON.stringify(request)], of('code-by-hand', await log(await holm({}), NOW, request)));
  }),
  'code-not-undone': sample('The undo of an entry about a code.', async () => {
    const desk = await holm(medic);
    const port = desk.port as Parameters<typeof keep>[0];
    const first = draftOf('code-set', { office: 'medic', because: 'first' }, { atMs: at(1, 9), count: 5 });
    await keep(port, [first]);
    const answer = await log(desk, NOW, { what: 'undo', entry: 'holm 3' });
    return failure(
      ['{"what":"undo","entry":"holm 3"}, which tells of a code'],
      of('code-not-undone', answer),
    );
  }),
  'code-too-often': writtenOut(
    'Codes came to a server faster than people type.',
    'It takes twenty of them over HTTP; tests/server/codes.test.ts sends them.',
    failure(['21 codes in a minute, of several offices'], {
      code: 'code-too-often',
      severity: 'error',
      where: {},
      data: { leftMs: 42_000, most: 20 },
      entries: [],
    }),
  ),
};
