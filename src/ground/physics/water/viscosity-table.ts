// Table 2 of the formulation 2008 for the viscosity of water: H_ij, a row for each power i of 1/T̄ − 1, a column for each power j of ρ̄ − 1.

// biome-ignore format: a table reads by its columns.
export const VISCOSITY_TERMS = Float64Array.of(
   5.20094e-1,  2.22531e-1, -2.81378e-1,  1.61913e-1, -3.25372e-2, 0,           0,
   8.50895e-2,  9.99115e-1, -9.06851e-1,  2.57399e-1,  0,          0,           0,
  -1.08374,     1.88797,    -7.72479e-1,  0,           0,          0,           0,
  -2.89555e-1,  1.26613,    -4.89837e-1,  0,           6.98452e-2, 0,          -4.35673e-3,
   0,           0,          -2.57040e-1,  0,           0,          8.72102e-3,  0,
   0,           1.20573e-1,  0,           0,           0,          0,          -5.93264e-4,
);
