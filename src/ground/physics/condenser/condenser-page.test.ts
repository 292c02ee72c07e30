// Runs every example of docs/methods/condenser.md.
import { type Given, runExamplesOf } from '../../../../tests/docs/page-examples.ts';
import { handbookAir } from '../air/cabin-air.ts';
import { humidityRatio } from '../air/moist-air.ts';
import { bypassAtFlow, bypassCoil } from './bypass.ts';
import { fitBypass } from './bypass-fit.ts';
import { effectiveSurfaceCoil } from './effective-surface.ts';
import { segmentedCoil } from './segmented-coil.ts';

const airOf = (given: Given) => {
  const air = handbookAir(given.number('kPa') * 1000);
  const temperatureC = given.number('celsius');
  return {
    air,
    airIn: { temperatureC, humidityRatio: humidityRatio(air, temperatureC, given.number('humidity')) },
    airFlowKgPerS: given.number('air'),
  };
};
const coilOf = (given: Given) => ({
  ...airOf(given),
  coolantInC: given.number('coolant'),
  coolantFlowKgPerS: given.number('water'),
  outerWPerK: given.number('outer'),
  innerWPerK: given.number('inner'),
});
const gramsAnHour = (kgPerS: number): string => `${(kgPerS * 3.6e6).toFixed(0)} g/h`;

runExamplesOf('condenser.md', 8, {
  cells: (given) => {
    const { condensateKgPerS, heatW, wetShare, airOut } = segmentedCoil(coilOf(given));
    const air = `air leaves at ${airOut.temperatureC.toFixed(1)} °C`;
    return `${gramsAnHour(condensateKgPerS)}, ${heatW.toFixed(0)} W, wet ${(100 * wetShare).toFixed(0)} %, ${air}`;
  },
  surface: (given) => {
    const { condensateKgPerS, heatW, surfaceC } = effectiveSurfaceCoil(coilOf(given));
    return `${gramsAnHour(condensateKgPerS)}, ${heatW.toFixed(0)} W, surface ${surfaceC.toFixed(1)} °C`;
  },
  bypass: (given) => {
    const coil = { ...airOf(given), coilC: given.number('coil'), bypass: given.number('factor') };
    const { condensateKgPerS } = bypassCoil(coil);
    return `${gramsAnHour(condensateKgPerS)}, ${(condensateKgPerS * 86_400).toFixed(1)} kg a day`;
  },
  refit: (given) =>
    bypassAtFlow({
      bypass: given.number('factor'),
      fromKgPerS: given.number('from'),
      toKgPerS: given.number('to'),
    }).toFixed(3),
  fit: (given) => {
    const flow = given.number('air');
    const reading = {
      air: handbookAir(given.number('kPa') * 1000),
      temperatureC: { value: given.number('celsius'), u: 0.25 },
      relativeHumidity: { value: given.number('humidity'), u: 0.015 },
      coilC: { value: given.number('coil'), u: 0.3 },
      airFlowKgPerS: { value: flow, u: 0.03 * flow },
      condensateKgPerS: { value: given.number('perDay') / 86_400, u: 0.07 / 86_400 },
    };
    const { bypass, u, transferUnits } = fitBypass([reading], flow);
    return `${bypass.toFixed(3)} ± ${(2 * u).toFixed(3)}, N ${transferUnits.toFixed(2)}`;
  },
});
