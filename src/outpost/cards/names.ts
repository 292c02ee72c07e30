// Table of the names that formulas may use: what a chosen store, hose or unit has, and what the outpost has once.
import { type CardUnit, typeOfUnit } from './card-units.ts';
import type { QuantityType } from './formula/quantity-type.ts';

/** Of what somebody chooses when a card begins. */
export const CHOICES = ['store', 'hose', 'unit', 'port', 'quantity', 'word'] as const;
export type ChoiceOf = (typeof CHOICES)[number];

interface NameLine {
  readonly unit: CardUnit;
  /** From the book; absent: from the outpost file. */
  readonly book?: true;
  readonly what: string;
}

type Names = Readonly<Record<string, NameLine>>;

const file = (unit: CardUnit, what: string): NameLine => ({ unit, what });
const book = (unit: CardUnit, what: string): NameLine => ({ unit, what, book: true });

/** Said of a chosen thing: `to.content` of the choice `to`. */
export const NAMES_OF_CHOICES = {
  store: {
    content: book('L', 'what is believed to be in it'),
    biocide: book('mg/L', 'biocide by the last result'),
    biocide_wanted: book('mg/L', 'biocide that its grade is dosed to'),
    warmth: book('°C', 'temperature of its content'),
    gas_pressure: book('kPa abs', 'pressure of its gas side'),
    capacity: file('L', 'capacity'),
    fill: file('L', 'what a keeper fills it to'),
    full_at: file('L', 'content at which it counts as full'),
    remainder: file('L', 'usable remainder'),
    waste_limit: file('L', 'most waste that it may take'),
    rating: file('kPa over cabin', 'rating'),
    tank_volume: file('L', 'volume of water and gas together'),
    gauge_doubt: file('L', 'doubt of a reading by its own gauge'),
  },
  hose: {
    factor: book('plain', 'taken over predicted minutes, learned from its runs'),
    length: file('m', 'length'),
    bore: file('mm', 'bore'),
    roughness: file('um', 'roughness of its wall'),
    loss: file('plain', 'sum of the loss coefficients'),
    kv: file('m3/h', 'its couplings in series'),
    content: file('L', 'water that stands in it'),
    flow: file('L/min', 'flow of a hose with a pump'),
    rating: file('kPa over cabin', 'lowest rating of hose and couplings'),
    meter_doubt: file('L', 'random doubt of the meter in it'),
    meter_calibration: file('plain', 'doubt of the calibration of the meter in it'),
  },
  unit: {
    through: book('L', 'water through its lead bed'),
    stroke: file('mL/stroke', 'water of a stroke'),
    hot: file('°C', 'temperature of its hot water'),
    heater: file('W', 'power of its heater'),
    hot_tank: file('L', 'content of its hot tank'),
    bed_life: file('L', 'litres that a bed is good for'),
    bed_life_doubt: file('L', 'doubt of the life of a bed'),
  },
  port: {},
  quantity: {},
  word: {},
} as const satisfies Readonly<Record<ChoiceOf, Names>>;

/** Said of the outpost, without a choice. */
export const NAMES_OF_OUTPOST = {
  'cabin.pressure': file('kPa abs', 'pressure of the cabin'),
  'cabin.warmth': file('°C', 'temperature of the cabin'),
  'cabin.volume': file('m3', 'volume of the cabin'),
  'water.density': file('kg/m3', 'density of the water'),
  'push.set': file('kPa over cabin', 'set pressure of the push'),
  'push.relief': file('kPa over cabin', 'pressure at which the relief opens'),
  'push.leak_pressure': file('kPa abs', 'pressure of the leak check'),
  'push.leak_hold': file('min', 'hold time of the leak check'),
  'push.leak_drop': file('kPa', 'most that the leak check may fall'),
  'push.free_flow': file('L/min', 'free air that the compressor gives'),
  'bottle.volume': file('L', 'volume of the gauging bottle'),
  'bottle.full': file('kPa abs', 'pressure of a full gauging bottle'),
  'bottle.rating': file('kPa abs', 'rating of the gauging bottle'),
  'bottle.wait': file('min', 'wait before a gauging is read'),
  'balance.doubt': file('L', 'doubt of the balance'),
  'dose.most': file('mg/L', 'most biocide that a dose may lead to'),
  'reserve.floor': file('L', 'floor of the reserve'),
  'hazard.hot_water': file('°C', 'hot water of the hazard figures'),
  'hazard.hot_surface': file('°C', 'hot surface of the hazard figures'),
  'hazard.oxygen_most': file('%', 'most oxygen of the hazard figures'),
  'hazard.hydrogen_most': file('%', 'most hydrogen of the hazard figures'),
  'hazard.push_most': file('kPa over cabin', 'highest push of the hazard figures'),
  'hazard.bottle_most': file('kPa abs', 'highest bottle of the hazard figures'),
} as const satisfies Names;

/** Known only while a card runs. */
export const MOVED_SO_FAR = 'run.moved';
export const FOUND = 'found.';

/** The line of a name such as `to.content`, given what the choices are of; null for a name that is not there. */
export function nameLine(name: string, choices: ReadonlyMap<string, ChoiceOf>): NameLine | null {
  if (Object.hasOwn(NAMES_OF_OUTPOST, name)) return (NAMES_OF_OUTPOST as Names)[name] ?? null;
  const [choice = '', key = '', ...more] = name.split('.');
  const of = choices.get(choice);
  if (of === undefined || more.length > 0) return null;
  const lines: Names = NAMES_OF_CHOICES[of];
  return Object.hasOwn(lines, key) ? (lines[key] ?? null) : null;
}

export function typeOfName(name: string, choices: ReadonlyMap<string, ChoiceOf>): QuantityType | null {
  const line = nameLine(name, choices);
  return line === null ? null : typeOfUnit(line.unit);
}

/** Every name that these choices bring. */
export function namesInReach(choices: ReadonlyMap<string, ChoiceOf>): readonly string[] {
  const chosen = [...choices].flatMap(([id, of]) =>
    Object.keys(NAMES_OF_CHOICES[of]).map((key) => `${id}.${key}`),
  );
  return [...chosen, ...Object.keys(NAMES_OF_OUTPOST)];
}
