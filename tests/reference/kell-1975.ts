// The density of water after Kell 1975, on the temperature scale of 1968: an older equation that the product's is held against.

/** kg/m³ at 101.325 kPa and °C of IPTS-68, 0 to 150. The divisor is 16.879850e-3; a reprint with 16.897850e-3 is 0.03 % off. */
export function kell1975KgPerM3(temperatureC: number): number {
  const t = temperatureC;
  const above =
    999.83952 +
    t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))));
  return above / (1 + 16.87985e-3 * t);
}
