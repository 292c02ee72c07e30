// What a cell needs in volts and energy, and what of it becomes heat.
import { FARADAY_C_PER_MOL, molarMassKgPerMol } from '../molar.ts';
import { stayWithin } from '../stay-within.ts';
import { checkStack, type Stack } from './rates.ts';

/** Heat and free energy of formation of liquid water at 25 °C. @source codata-key-values, crc-handbook */
const ENTHALPY_J_PER_MOL = 285.83e3;
const FREE_ENERGY_J_PER_MOL = 237.13e3;
const OXYGEN_KG_PER_MOL = molarMassKgPerMol('O2');
const HYDROGEN_KG_PER_MOL = molarMassKgPerMol('H2');
/** A mole of gas at 0 °C and 101.325 kPa. @source crc-handbook */
const NORMAL_M3_PER_MOL = 0.022414;
/** V/K. @source barbir */
const FALL_V_PER_K = 8.5e-4;
/** Below the lower end no water is split; above the upper one somebody gave the voltage of the stack for that of a cell. */
const LOWEST_CELL_V = 1.1;
const HIGHEST_CELL_V = 3;

/** The voltage at which a cell neither warms nor cools: ΔH / 2F, at 25 °C, liquid water in. @source codata-key-values */
export const THERMONEUTRAL_VOLTAGE_V = ENTHALPY_J_PER_MOL / (2 * FARADAY_C_PER_MOL);

/**
 * The least voltage that splits water at 1 bar: ΔG / 2F at 25 °C, falling by 0.85 mV for each degree.
 * @param temperatureC °C, 0 to 100
 * @returns V; good to about 2 mV (from memory)
 * @throws OutsideRange outside that range and for NaN
 * @source codata-key-values (at 25 °C); barbir (its fall, from memory)
 * @example reversibleVoltageV(25) // 1.2288
 */
export function reversibleVoltageV(temperatureC: number): number {
  const given = { quantity: 'temperature of the cell', value: temperatureC, unit: '°C' };
  stayWithin({ ...given, low: 0, high: 100, source: 'barbir' });
  return FREE_ENERGY_J_PER_MOL / (2 * FARADAY_C_PER_MOL) - FALL_V_PER_K * (temperatureC - 25);
}

export interface RunningStack extends Stack {
  readonly currentA: number;
  /** Of one cell, not of the stack. */
  readonly cellVoltageV: number;
}

/**
 * What a stack gives off as heat: Q̇ = N I (V − η V_tn). Below zero it takes heat from around it.
 *
 * The part of the current that makes no gas, 1 − η, leaves all of its work as heat.
 * @param stack `cells` from 1, `currentA` A, `cellVoltageV` V of one cell, 1.1 to 3, `currentEfficiency` above 0 up to 1
 * @returns W
 * @throws OutsideRange outside those ranges and for NaN
 * @source codata-key-values, faraday
 * @example electrolysisHeatW({ cells: 10, currentA: 32, cellVoltageV: 1.9, currentEfficiency: 1 }) // 134.0
 */
export function electrolysisHeatW(stack: RunningStack): number {
  const { cells, currentA, cellVoltageV, currentEfficiency } = stack;
  checkStack(stack);
  checkCellVoltage(cellVoltageV);
  return cells * currentA * (cellVoltageV - currentEfficiency * THERMONEUTRAL_VOLTAGE_V);
}

/**
 * The electric energy in a kilogram of oxygen: 4F V / (η M).
 *
 * The stack alone: pumps, dryers and the supply that feeds it come on top.
 * @param cell `cellVoltageV` V of one cell, 1.1 to 3; `currentEfficiency` above 0 up to 1
 * @returns J/kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source faraday
 * @example electrolysisEnergyJPerKgOxygen({ cellVoltageV: 1.9, currentEfficiency: 0.97 }) / 3.6e6 // 6.563 kWh/kg
 */
export function electrolysisEnergyJPerKgOxygen(cell: {
  readonly cellVoltageV: number;
  readonly currentEfficiency: number;
}): number {
  const { cellVoltageV, currentEfficiency } = cell;
  checkStack({ cells: 1, currentEfficiency });
  checkCellVoltage(cellVoltageV);
  return (4 * FARADAY_C_PER_MOL * cellVoltageV) / (currentEfficiency * OXYGEN_KG_PER_MOL);
}

/** The heat of burning hydrogen to liquid water at 25 °C, J/kg. @source codata-key-values */
export const HYDROGEN_HEAT_J_PER_KG = ENTHALPY_J_PER_MOL / HYDROGEN_KG_PER_MOL;

/** The same for a cubic metre at 0 °C and 101.325 kPa, J/m³. @source codata-key-values, crc-handbook */
export const HYDROGEN_HEAT_J_PER_NORMAL_M3 = ENTHALPY_J_PER_MOL / NORMAL_M3_PER_MOL;

export function checkCellVoltage(cellVoltageV: number): void {
  const given = { quantity: 'voltage of one cell', value: cellVoltageV, unit: 'V' };
  stayWithin({ ...given, low: LOWEST_CELL_V, high: HIGHEST_CELL_V, source: 'barbir' });
}
