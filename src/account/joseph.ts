// Joseph's form of a covariance after a reading, in the rows of the states that were read.

/** One state of a reading, with its row of the covariance before the reading. */
export interface Term {
  readonly place: number;
  readonly weight: number;
  readonly row: Float64Array;
}

/** Innovation of a reading, its variance S, and the part R of that which is the reading's own noise. */
export interface Innovation {
  readonly innovation: number;
  readonly variance: number;
  readonly noise: number;
}

/**
 * Rows of Joseph's form A P Aᵀ + R K Kᵀ, with A = I − K hᵀ and K = g / S, for the states that were read.
 * @param shared g = P h, what each state has in common with what is read
 * @source joseph
 */
export function rowsOfRead(terms: readonly Term[], shared: Float64Array, by: Innovation): Float64Array[] {
  const gains = terms.map(({ place }) => (shared[place] as number) / by.variance);
  const factors = factorsOfRead(terms, shared, by);
  const rows = factors.map((own) => {
    const row = new Float64Array(shared.length);
    terms.forEach((term, k) => {
      addTimes(row, term.row, own[k] as number);
    });
    return row;
  });
  // Between two states that were read both factors count; with one that was not, the second changes nothing.
  const block = rows.map((row, a) =>
    gains.map((gain, b) => {
      let sum = by.noise * (gains[a] as number) * gain;
      terms.forEach(({ place }, k) => {
        sum += (row[place] as number) * ((factors[b] as number[])[k] as number);
      });
      return sum;
    }),
  );
  terms.forEach(({ place }, a) => {
    terms.forEach((other, b) => {
      const value = (block[Math.max(a, b)] as number[])[Math.min(a, b)] as number;
      (rows[a] as Float64Array)[other.place] = place === other.place ? Math.max(0, value) : value;
    });
  });
  return rows;
}

/** The part of A = I − K hᵀ among the states that were read: 1 − K h of a state is what noise and the others have of S. */
function factorsOfRead(terms: readonly Term[], shared: Float64Array, by: Innovation): number[][] {
  return terms.map((own) =>
    terms.map((other) => {
      if (other !== own) return (-(shared[own.place] as number) / by.variance) * other.weight;
      let rest = by.noise;
      for (const each of terms) if (each !== own) rest += each.weight * (shared[each.place] as number);
      return rest / by.variance;
    }),
  );
}

/** sum ← sum + factor × row. */
export function addTimes(sum: Float64Array, row: Float64Array, factor: number): void {
  for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + factor * (row[i] as number);
}
