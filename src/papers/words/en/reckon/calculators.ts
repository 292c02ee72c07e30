// English for the calculators: what each is called, what it answers, its formulas.
import type { ReckonFormula } from '../../../sheets/reckon.ts';

export interface CalculatorWords {
  readonly title: string;
  readonly question: string;
  readonly formulas: readonly ReckonFormula[];
}

const HOSE: ReckonFormula = {
  equation: 'Δp = (f L/D + ΣK) ρ v²/2 + ρ/1000 (Q/Kv)² bar + ρ g Δz',
  range:
    'Reynolds number up to 10⁸, wall up to a twentieth of the bore; 2000 to 4000 is joined smoothly and called transitional',
  source: 'Darcy-Weisbach, Colebrook 1939; couplings as IEC 60534-2-1',
};
const CABIN: ReckonFormula = {
  equation:
    'free air = V p_tank/p_cabin; cabin falls by (p_tank − p_cabin) V/V_cabin, receiver outside by p_tank V/V_cabin',
  range: 'constant temperature, all gas conserved',
  source: 'Boyle',
};
const AIR: ReckonFormula = {
  equation: 'p_w = φ f p_s(t); W = ε p_w/(p − p_w); dew point: f p_s(t_d) = p_w',
  range: '−20 to 60 °C, 50 to 110 kPa',
  source: 'IAPWS-IF97 region 4; enhancement factor by Buck 1981',
};

export const calculators: Readonly<Record<string, CalculatorWords>> = {
  transfer: {
    title: 'Transfer',
    question: 'How long does it take to push water through a hose?',
    formulas: [
      HOSE,
      {
        equation: 't = V/Q; blow-down: p V_gasⁿ stays the same, n from 1 (slow) to 1.4 (sudden)',
        range: 'through a line that is full',
        source: 'as above',
      },
      CABIN,
    ],
  },
  gauge: {
    title: 'Gauge',
    question: 'How much water is in a tank, by gas from a bottle, and may the bottle be opened to it?',
    formulas: [
      {
        equation:
          'V_gas = V_b (p_b1/T_b1 − p_b2/T_b2)/((p_2 − p_v)/T_2 − (p_1 − p_v)/T_1); water = tank − V_gas',
        range: 'ideal gas, up to 5 MPa and 200 to 400 K',
        source: 'balance of amounts over bottle and tank',
      },
      {
        equation:
          'p_end = (p_b V_b + p_1 V_gas)/(V_b + V_gas), held against the lowest rating for the least gas that there may be',
        range: 'one temperature',
        source: 'ideal gas',
      },
    ],
  },
  weigh: {
    title: 'Weigh',
    question: 'What is the mass, by how long a swing on a spring takes?',
    formulas: [
      {
        equation: 'm = k T²/4π²; on a floating frame m = μM/(M − μ)',
        range: 'small free swings, hardly damped',
        source: 'textbook; the floating frame by its reduced mass',
      },
    ],
  },
  heat: {
    title: 'Heat',
    question: 'How long does the water take to get hot, and does it boil here?',
    formulas: [
      {
        equation: 't = (C/UA) ln((T_∞ − T_1)/(T_∞ − T_2)), T_∞ = T_a + ηP/UA; without loss t = E/(ηP)',
        range: 'liquid water below boiling at the cabin’s pressure',
        source: 'IAPWS-IF97 for the heat; textbook',
      },
    ],
  },
  thaw: {
    title: 'Thaw',
    question: 'How long does ice take to thaw, or water to freeze?',
    formulas: [
      {
        equation: 't = (m ∫c dT + m L + m c ΔT)/(ηP − UA ΔT_a)',
        range: '−40 to 30 °C',
        source: 'heats of ice and water by IAPWS releases; textbook',
      },
    ],
  },
  pressure: {
    title: 'Pressure',
    question: 'What does gas under pressure take from the cabin, and what does it store?',
    formulas: [
      CABIN,
      {
        equation: 'E = p V/(k − 1) (1 − (p_a/p)^((k−1)/k)), k = 1.4; hoop = p r/t',
        range: 'wall up to an eighth of the radius',
        source: 'textbook, from memory',
      },
    ],
  },
  dewpoint: {
    title: 'Dew point',
    question: 'How much water does the air carry, and which wall sweats?',
    formulas: [
      AIR,
      {
        equation: 'a wall sweats where T_wall < T_dew − 0.5 K',
        range: 'still walls',
        source: 'common practice, no source',
      },
    ],
  },
  condense: {
    title: 'Condense',
    question: 'How much water does the condenser take out of the air?',
    formulas: [
      AIR,
      {
        equation: 'm = m_air (W_in − W_out), W_out by the bypass factor, or by cells along the coil',
        range: 'counterflow, Lewis number 1',
        source: 'textbook; cells of our own, held against published cases',
      },
    ],
  },
  oxygen: {
    title: 'Oxygen',
    question: 'How much water does the crew’s oxygen take?',
    formulas: [
      {
        equation: 'I = 4F ṁ(O₂)/(M η N); water = 1.126 × oxygen',
        range: '0.5 to 1.3 kg of oxygen a person and day, 1.1 to 3 V a cell',
        source: 'Faraday',
      },
    ],
  },
  dose: {
    title: 'Dose',
    question: 'How much stock solution brings the water to a concentration?',
    formulas: [
      {
        equation: 'V_stock = V (c_wanted − c)/(c_stock − c_wanted)',
        range: 'c ≤ c_wanted < c_stock',
        source: 'balance of the dissolved mass',
      },
    ],
  },
  mix: {
    title: 'Mix',
    question: 'What comes of water poured together?',
    formulas: [
      {
        equation: 'c = Σ c V/Σ V; temperature by enthalpy',
        range: 'dilute water, 0 to 100 °C',
        source: 'balance of mass and heat; IAPWS-IF97 region 1',
      },
    ],
  },
};
