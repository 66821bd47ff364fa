import { logisticLikelihood } from "./likelihood.js";
import type { Design } from "./logistic-data.js";
import { maximise } from "./maximise.js";
import { orthonormal, withLast } from "./orthonormal.js";
import { positiveOptimum } from "./positive-optimum.js";

export interface Separation {
  readonly kind: "none" | "quasi-complete" | "complete";
  /** Columns whose maximum likelihood estimate is infinite. */
  readonly columns: readonly string[];
}

/**
 * Whether some combination of the columns separates successes from failures, so that no finite maximum likelihood
 * estimate exists, and the columns concerned: by linear programs over the directions in which the likelihood never falls.
 *
 * @see Albert and Anderson 1984, Biometrika 71:1-10; linear programs as in Silvapulle and Burridge 1986, J R Stat Soc B
 *   48:100-106
 */
export function findSeparation(design: Design): Separation {
  const { columns, names } = design;
  const main = orthonormal(design);
  const all = main.design;
  if (hasFiniteMaximum(all)) return { kind: "none", columns: [] };
  const rows = signedRows(all);
  const sum = new Float64Array(columns);
  for (const row of rows) row.forEach((value, j) => (sum[j]! += value));
  if (!positiveOptimum(rows, sum)) return { kind: "none", columns: [] };
  const infinite = names.filter((_, j) => {
    const own = signedRows(withLast(main, main.readings[j]!).design);
    const last = new Float64Array(columns);
    last[columns - 1] = 1;
    return (
      positiveOptimum(own, last) ||
      positiveOptimum(
        own,
        last.map((value) => -value),
      )
    );
  });
  // Complete: every row clears a common margin, kept in an extra column.
  const withMargin = rows.map((row) => Float64Array.from([...row, -1]));
  const margin = new Float64Array(columns + 1);
  margin[columns] = 1;
  return { kind: positiveOptimum(withMargin, margin) ? "complete" : "quasi-complete", columns: infinite };
}

/**
 * A point where the score vanishes and the information does not is the maximum, and there is no separation. Along a
 * separating direction each step adds about 1 to the linear predictor, and this few steps do not make the score vanish.
 */
function hasFiniteMaximum(design: Design): boolean {
  const likelihood = logisticLikelihood(design, { penalised: false });
  const top = maximise(likelihood, { start: new Float64Array(design.columns), mostIterations: 15 });
  return top !== null;
}

/** Each distinct row once, its sign turned where a case failed; a row with both outcomes enters both ways. */
function signedRows({ rows, columns, x, successes, trials }: Design): Float64Array[] {
  const distinct = new Map<string, Float64Array>();
  for (let row = 0; row < rows; row++) {
    const values = x.slice(row * columns, (row + 1) * columns);
    if (successes[row]! > 0) distinct.set(`+${values.join()}`, values);
    if (successes[row]! < trials[row]!)
      distinct.set(
        `-${values.join()}`,
        values.map((value) => -value),
      );
  }
  return [...distinct.values()];
}
