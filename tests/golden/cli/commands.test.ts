// Golden console records: every command on the practice book, as a keeper would type it.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { expectGolden } from '../record.ts';
import { Console, record } from './console.ts';
import { QUALITY_SESSIONS } from './quality-sessions.ts';

let console: Console;
beforeEach(async () => {
  console = await new Console().withPractice();
});
afterEach(() => console.end());

async function recordOf(...lines: readonly string[]): Promise<string> {
  const parts: string[] = [];
  for (const line of lines) parts.push(record(line, await console.run(line)));
  return parts.join('\n');
}

/** One record a name: the lines are run one after the other on one book. */
const sessions: Readonly<Record<string, readonly string[]>> = {
  today: ['waterwright today', 'waterwright today --units kg --width 60', 'waterwright today --plain'],
  'today-at': [
    'waterwright today --at D13',
    'waterwright today --at D15',
    'waterwright today --as-of D13',
    'waterwright today --at D15 --fail-on act-now -q',
  ],
  'log-drink': [
    'waterwright log drink 8',
    'waterwright log drink 200mL --person second --by second',
    'waterwright log drink 12 --at D45T09:30 --note "forgotten yesterday"',
    'waterwright log drink 8 --dry-run',
    'waterwright log drink 8 --plain',
  ],
  'quality-trend': [
    'waterwright quality trend',
    'waterwright quality trend TOC --point product',
    'waterwright quality trend silver --at D20 --width 100',
    'waterwright quality trend "plate count" --at D20 --plain',
    'waterwright quality trend nitrate',
    'waterwright quality trend TOC --store c05 --point product',
    'waterwright quality trend --svg',
  ],
  'quality-limits': [
    'waterwright quality limits --width 100',
    'waterwright quality limits list',
    'waterwright quality limits show world-guidelines',
    'waterwright quality limits choose national-aesthetic-limits --dry-run',
    'waterwright quality limits choose national-aesthetic-limits --rows "silver most" --at D20T21:00 --late "tried" --dry-run --plain',
    'waterwright quality limits choose crewed-water-standard --reason "for the visit"',
    'waterwright quality limits choose crewed-water-standard --reason "for the visit" --yes',
    'waterwright quality limits choose outpost-policy --only --reason "back to our own" --yes',
    'waterwright quality limits type crewed-water-standard silver-most --at-most 0.4mg/L --copy "edition 2, table 4"',
    'waterwright quality limits type crewed-water-standard silver-most --at-most 0.4mg/L',
    'waterwright quality limits choose short-term --dry-run',
    'waterwright quality limits',
  ],
  reports: [
    'waterwright report list',
    'waterwright report show quirks',
    'waterwright report show quirks --plain',
    'waterwright report show weather',
  ],
  beds: [
    'waterwright bed list',
    'waterwright bed list --at D32 --width 60',
    'waterwright bed show --at D32 --width 100',
    'waterwright bed show lead --at D35',
  ],
  'beds-others': [
    'waterwright bed show lead --at D40 --plain',
    'waterwright bed show lag',
    'waterwright bed forecast lead --at D32',
    'waterwright bed show third',
    'waterwright bed show lead --svg --csv',
  ],
  'reckon-transfer': [
    'waterwright reckon transfer --volume 22L --length 6m --bore 8mm --roughness 1.5um --minor-loss 3 --kv 0.6,0.6 --over 0.5atm --water 25C',
    'waterwright reckon transfer --volume 22L --length 6m --bore 8mm --roughness 1.5um --minor-loss 3 --kv 0.6,0.6 --over 0.5atm --water 25C --json',
    'waterwright reckon transfer --from c02 --to c11 --hose H-1 --explain --width 100',
    'waterwright reckon transfer --volume 20L --length 6m --bore 8mm --over 50kPa --gas 60L --plain',
    'waterwright reckon transfer --volume 20L --over 150kPa --hose H-1 --to R1',
    'waterwright reckon transfer --volume 20L',
    'waterwright reckon transfer --volume 20 --length 6m --bore 8mm --over 50kPa',
  ],
  'reckon-pressure': [
    'waterwright reckon pressure --volume 200L --over 0.5atm --cabin 1atm --cabin-volume 180m3',
    'waterwright reckon pressure --volume 200L --over 0.5atm --cabin 1atm --cabin-volume 180m3 --receiver outside --explain',
    'waterwright reckon pressure --store R2 --over 150kPa',
  ],
  'reckon-gauge': [
    'waterwright reckon gauge --store R2 --tank-before 101.3kPa',
    'waterwright reckon gauge --store R2 --bottle-after 585kPa',
    'waterwright reckon gauge --store R2 --known 173L+-6 --bottle-after 585kPa',
    'waterwright reckon gauge --tank 180L+-3.2 --bottle 5L --bottle-before 400kPa --ullage 160L --known 20L+-6 --rating 400kPa --tank-before 101.3kPa --bottle-gauge-doubt 0.5kPa --tank-gauge-doubt 0.5kPa --thermometer-doubt 0.5',
    'waterwright reckon gauge --tank 180L --bottle 10L --bottle-before 600kPa --tank-before 101.3kPa --ullage 6.4L',
    'waterwright reckon gauge --tank 180L --bottle 10L --bottle-before 600kPa --tank-before 101.3kPa --ullage 6.4L --rating 100kPa',
  ],
  'reckon-air': [
    'waterwright reckon dewpoint --air 22C --humidity 50%+-2 --wall 12C --cabin-volume 180m3',
    'waterwright reckon dewpoint --air 85C --humidity 50%',
    'waterwright reckon condense --air 22C --humidity 50% --air-flow 120m3/h --coolant 6C --bypass 0.1 --people 4',
    'waterwright reckon condense --days 30',
  ],
  'reckon-others': [
    'waterwright reckon weigh --period 1.499s+-0.001 --stiffness 606N/m+-0.6 --carriage 12.5kg',
    'waterwright reckon oxygen --people 4 --share 77%',
    'waterwright reckon heat --volume 2L --begin 20C --end 80C --power 750W --cabin 70kPa',
    'waterwright reckon heat --volume 2L --begin 20C --end 95C --power 750W --cabin 70kPa',
    'waterwright reckon dose --volume 20L --present 0.03mg/L --wanted 0.2mg/L --stock 400mg/L --maximum 0.4mg/L',
    'waterwright reckon dose --volume 20L --wanted 2mg/L --stock 400mg/L --maximum 0.4mg/L',
    'waterwright reckon mix --volume 20L,10L --concentration 0.2mg/L,0.05mg/L --temperature 20C,70C',
    'waterwright reckon thaw --mass 20kg --begin -10C --power 500W --loss 2W/K --around -20C',
    'waterwright reckon thaw --mass 20kg --begin 5C --loss 2W/K --around -20C',
    'waterwright reckon weather',
  ],
  'log-undo': [
    'waterwright log drink 80',
    'waterwright log undo',
    'waterwright log undo --reason "undo of nothing"',
    'waterwright log undo 200 --reason "not ours"',
    'waterwright book show --most 3',
  ],
  'log-movements': [
    'waterwright log fill c11 20.5L+-0.4 --from R1 --by chief',
    'waterwright log fill c12 --from R1 --by chief --dry-run',
    'waterwright log move 2L --from c17 --to c02',
    'waterwright log move 2L --from c17 --to c11',
    'waterwright log use 1.5L --for hygiene',
    'waterwright log make 3L --to KB',
  ],
  'log-readings': [
    'waterwright log weigh c02 20.4kg+-0.1',
    'waterwright log weigh c02 -',
    'waterwright log gauge R1 168L+-4',
    'waterwright log empty c07 --flow-stopped --counter flushes=9',
    'waterwright log full W-02',
  ],
  'log-hookup': [
    'waterwright log hookup c02 "dispenser feed"',
    'waterwright log relabel c19 technical --second second',
    'waterwright store show c19',
  ],
  'log-correct': [
    'waterwright log drink 80',
    'waterwright log correct 204 --value 8 --reason miscounted',
    'waterwright book show --most 2',
  ],
  'log-decide': ['waterwright log decide 35 36 merge', 'waterwright log decide corrie:35 corrie:36 both'],
  'log-day': [
    'waterwright log day --set strokes=430 --set product=6.7 --set condensate=208.4',
    'waterwright log day --set strokes=99999 --set condensate=12 --at D48T21:00',
    'waterwright log day --set strokes=430 --at D47T21:30',
    'waterwright log undo',
    'waterwright log day --set strokes=430L',
    'waterwright log day --set strokes=-',
  ],
  'log-kind': [
    'waterwright log note --text "gurgles at the galley"',
    'waterwright log sample --store R2 --sample S-20 --volume 200mL --tests silver,TOC',
    'waterwright log result --sample S-20 --values silver=0.19mg/L,TOC=<0.2mg/L',
    'waterwright log hold --hold H-1 --stores c02,c19 --reason smell',
    'waterwright log release --hold H-1 --stores c02,c19 --until D60',
    'waterwright log roster --change arrive --people 2',
    'waterwright log meter --readings strokes=120,product=-',
    'waterwright log instrument-calibrated --instrument strokes --calibration-relative 0.4% --litres-per-count 0.0247',
    'waterwright log instrument-replaced --instrument strokes --serial DS-32 --ended-at 120 --starts-at 0',
    'waterwright log instrument-replaced --instrument strokes --serial DS-33',
    'waterwright log sample --store R2',
  ],
  store: [
    'waterwright store list',
    'waterwright store list --plain --units kg',
    'waterwright store show R2',
    'waterwright store add C-20 --kind container --capacity 22L --remainder 0.6L',
    'waterwright store show c20',
  ],
  'store-show': [
    'waterwright store show c07 --width 100 --history 3',
    'waterwright store show W-01 --history 1',
    'waterwright store show PB --units kg --history 1',
    'waterwright store show R2 --at D13 --history 1',
    'waterwright store show R2 --plain',
    'waterwright store show R2 --svg -o .',
    'waterwright store show R2 --csv -o R2.csv',
    'waterwright store show R2 --svg --csv',
    'waterwright store show R2 --history 0',
  ],
  'book-show': [
    'waterwright book show --most 5',
    'waterwright book show --day D9 --width 100',
    'waterwright book show --store c16 --most 4 --plain',
    'waterwright book show --findings',
  ],
  'book-check': ['waterwright book check', 'waterwright book check --plain', 'waterwright book check --json'],
  'book-close': [
    'waterwright book close --dry-run',
    'waterwright book close',
    'waterwright log drink 2 --at D46T20:00',
    'waterwright log drink 2 --at D46T20:00 --late "copied from the galley sheet"',
    'waterwright book show --most 2',
  ],
  'book-copies': [
    'waterwright book backup copy.book',
    'waterwright book backup copy.book',
    'waterwright book export -o whole.jsonl',
    'waterwright import whole.jsonl --book second.book',
    'waterwright import whole.jsonl --book second.book',
    'waterwright book check --book second.book --plain',
    'waterwright book check --plain',
    'waterwright book export --since corrie:202 --book second.book -o last.jsonl',
    'waterwright import last.jsonl',
    'waterwright book outpost -o outpost.yaml',
    'waterwright book outpost outpost.yaml --reason "a second look"',
  ],
  inbox: [
    'waterwright inbox list',
    'waterwright inbox show 192',
    'waterwright inbox show 191',
    'waterwright inbox take 192',
    'waterwright inbox take 192 --unit cups',
    'waterwright inbox take 192 --unit kg --dry-run',
    'waterwright inbox take 192 --unit kg',
    'waterwright inbox list --all',
    'waterwright inbox drop 192 --reason "asked: a request"',
    'waterwright log undo corrie:205',
    'waterwright inbox drop 192',
    'waterwright inbox drop 192 --reason "asked: a request" --plain',
    'waterwright inbox list',
    'waterwright inbox list --all --json',
  ],
  completion: [
    'waterwright completion bash',
    'waterwright completion zsh',
    'waterwright completion fish',
    'waterwright completion tcsh',
  ],
  help: [
    'waterwright',
    'waterwright help',
    'waterwright --version',
    'waterwright help flags',
    'waterwright help log',
    'waterwright log drink --help',
    'waterwright help log sample',
    'waterwright book -h',
    'waterwright help tody',
  ],
};

test.each(Object.entries(sessions))('%s', async (name, lines) => {
  expectGolden(`cli/${name}.txt`, await recordOf(...lines));
});

test('every command stands in a record', async () => {
  const { COMMANDS } = await import('../../../src/doors/cli/index.ts');
  const typed = [sessions, QUALITY_SESSIONS].flatMap((each) => Object.values(each).flat()).join('\n');
  const elsewhere = [
    'start',
    'serve',
    'init',
    'log',
    'count start',
    'count add',
    'count show',
    'count finish',
    'book code set',
    'book code list',
  ];
  const missing = COMMANDS.map(({ path }) => path.join(' ')).filter(
    (path) => !elsewhere.includes(path) && !typed.includes(`waterwright ${path}`),
  );
  expect(missing).toEqual([]);
});
