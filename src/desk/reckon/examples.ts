// A filled form for each calculator, with values of no real place, to show what it is for.

export const EXAMPLES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  transfer: {
    volume: '22L',
    length: '6m',
    bore: '8mm',
    roughness: '1.5um',
    'minor-loss': '3',
    kv: '0.6,0.6',
    over: '0.5atm',
    water: '25C',
  },
  gauge: {
    tank: '180L+-3.2',
    bottle: '10L',
    'bottle-before': '600kPa',
    'bottle-after': '585kPa',
    'tank-before': '101.3kPa',
    ullage: '6.4L+-3',
    rating: '100kPa',
  },
  weigh: { period: '1.499s+-0.001', stiffness: '606N/m+-0.6', carriage: '12.5kg' },
  condense: {
    air: '22C',
    humidity: '50%',
    'air-flow': '120m3/h',
    coolant: '6C',
    bypass: '0.1',
    people: '4',
  },
  dewpoint: { air: '22C', humidity: '50%+-2', 'cabin-volume': '180m3', wall: '12C' },
  oxygen: { people: '4', share: '77%' },
  heat: { volume: '2L', begin: '20C', end: '80C', power: '750W', cabin: '70kPa' },
  dose: { volume: '20L', present: '0.03mg/L', wanted: '0.2mg/L', stock: '400mg/L', maximum: '0.4mg/L' },
  mix: { volume: '20L,10L', concentration: '0.2mg/L,0.05mg/L' },
  thaw: { mass: '20kg', begin: '-10C', power: '500W', loss: '2W/K', around: '-20C' },
  pressure: { volume: '200L', over: '0.5atm', cabin: '1atm', 'cabin-volume': '180m3' },
};
