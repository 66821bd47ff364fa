import type { PooledCoefficient } from "./pooled-coefficient.js";

/** Two columns of readings, by place. */
export type ColumnPair = readonly [number, number];

/** Kappa pooled over pairs of columns, with the parts that its report names. */
export interface PairsCoefficient extends PooledCoefficient {
  readonly parts: (times: Float64Array) => { readonly observed: number; readonly chance: number };
}

/**
 * Kappa pooled over pairs of columns: mean observed agreement of the pairs against their mean chance agreement.
 *
 * With complete readings and every pair it is Conger's kappa; with gaps each pair uses the radiographs both graded.
 *
 * @param readings places in the scale, null where not read
 * @param weights agreement weights, 1 on the diagonal
 * @see Conger 1980, Psychol Bull 88:322-328
 */
export function pairsCoefficient(
  readings: readonly (readonly (number | null)[])[],
  pairs: readonly ColumnPair[],
  weights: readonly (readonly number[])[],
): PairsCoefficient {
  const size = weights.length;
  const { cells, kindOf, times } = patternsOf(readings, pairs, size);
  const tables = pairs.map(() => new Float64Array(size * size));
  const parts = (given: Float64Array): { observed: number; chance: number } => {
    for (const table of tables) table.fill(0);
    for (let kind = 0; kind < cells.length; kind++) {
      if (given[kind] === 0) continue;
      const row = cells[kind]!;
      for (let pair = 0; pair < row.length; pair++) if (row[pair]! >= 0) tables[pair]![row[pair]!]! += given[kind]!;
    }
    let observed = 0;
    let chance = 0;
    let used = 0;
    for (const table of tables) {
      const n = table.reduce((sum, count) => sum + count, 0);
      if (n === 0) continue;
      used++;
      observed += agreementOf(table, weights) / n;
      chance += chanceOf(table, weights) / n / n;
    }
    return { observed: observed / used, chance: chance / used };
  };
  const value = (given: Float64Array): number => {
    const { observed, chance } = parts(given);
    return 1 - chance > 1e-12 ? (observed - chance) / (1 - chance) : NaN;
  };
  return { kindOf, times, value, parts };
}

/** Groups equal rows; each keeps its cell in every pair's table, -1 where a reading is missing. */
function patternsOf(readings: readonly (readonly (number | null)[])[], pairs: readonly ColumnPair[], size: number) {
  const places = new Map<string, number>();
  const cells: Int32Array[] = [];
  const counts: number[] = [];
  const kindOf = Int32Array.from(readings, (row) => {
    const key = row.join();
    let place = places.get(key);
    if (place === undefined) {
      place = cells.length;
      places.set(key, place);
      counts.push(0);
      cells.push(Int32Array.from(pairs, ([g, h]) => cellOf(row[g]!, row[h]!, size)));
    }
    counts[place]!++;
    return place;
  });
  return { cells, kindOf, times: Float64Array.from(counts) };
}

function cellOf(a: number | null, b: number | null, size: number): number {
  return a === null || b === null ? -1 : a * size + b;
}

function agreementOf(table: Float64Array, weights: readonly (readonly number[])[]): number {
  const size = weights.length;
  let sum = 0;
  for (let a = 0; a < size; a++) for (let b = 0; b < size; b++) sum += weights[a]![b]! * table[a * size + b]!;
  return sum;
}

function chanceOf(table: Float64Array, weights: readonly (readonly number[])[]): number {
  const size = weights.length;
  let sum = 0;
  for (let a = 0; a < size; a++) {
    let row = 0;
    for (let b = 0; b < size; b++) row += table[a * size + b]!;
    if (row === 0) continue;
    for (let b = 0; b < size; b++) {
      let column = 0;
      for (let c = 0; c < size; c++) column += table[c * size + b]!;
      sum += weights[a]![b]! * row * column;
    }
  }
  return sum;
}
