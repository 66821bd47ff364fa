const nothing = 1e-9;

/**
 * Whether goal . b can be made positive by some b in the box [-1, 1] with row . b >= 0 for every row: the simplex method
 * from the origin, by Bland's rule, since every corner there is degenerate.
 *
 * @param rows coefficients of size about 1
 * @see Bland 1977, Math Oper Res 2:103-107
 * @example positiveOptimum([new Float64Array([1, 0])], new Float64Array([-1, 0])) // => false
 */
export function positiveOptimum(rows: readonly Float64Array[], goal: Float64Array): boolean {
  const size = goal.length;
  // b = plus - minus, both at least 0 with plus + minus <= 1; one slack a constraint. Last column: right-hand side.
  const table = rows.map((row) => {
    const line = new Float64Array(2 * size + 1);
    row.forEach((value, j) => ([line[j], line[size + j]] = [-value, value]));
    return line;
  });
  for (let j = 0; j < size; j++) {
    const line = new Float64Array(2 * size + 1);
    line[j] = line[size + j] = line[2 * size] = 1;
    table.push(line);
  }
  const gain = new Float64Array(2 * size + 1);
  goal.forEach((value, j) => ([gain[j], gain[size + j]] = [value, -value]));
  const inside = Array.from({ length: 2 * size }, (_, j) => j);
  const outside = table.map((_, i) => 2 * size + i);
  for (let pivots = 0; pivots < 20_000; pivots++) {
    if (-gain[2 * size]! > nothing) return true;
    const column = lowest(inside, (j) => gain[j]! > nothing);
    if (column < 0) return false;
    const row = leaving(table, outside, column, 2 * size);
    pivot(table, gain, row, column);
    [inside[column], outside[row]] = [outside[row]!, inside[column]!];
  }
  throw new RangeError("positiveOptimum: the simplex method must end, got 20000 pivots");
}

/** Position with the smallest label among those that qualify, or -1. */
function lowest(labels: readonly number[], qualifies: (at: number) => boolean): number {
  let best = -1;
  labels.forEach((label, at) => {
    if (qualifies(at) && (best < 0 || label < labels[best]!)) best = at;
  });
  return best;
}

function leaving(table: readonly Float64Array[], labels: readonly number[], column: number, end: number): number {
  let least = Infinity;
  for (const line of table) if (line[column]! > nothing) least = Math.min(least, line[end]! / line[column]!);
  return lowest(labels, (at) => {
    const line = table[at]!;
    return line[column]! > nothing && line[end]! / line[column]! <= least + 1e-12;
  });
}

function pivot(table: readonly Float64Array[], gain: Float64Array, row: number, column: number): void {
  const line = table[row]!;
  const at = line[column]!;
  line[column] = 1;
  for (let j = 0; j < line.length; j++) line[j] = line[j]! / at;
  for (const other of [...table, gain]) {
    const factor = other[column]!;
    if (other === line || factor === 0) continue;
    other[column] = 0;
    for (let j = 0; j < line.length; j++) other[j] = other[j]! - factor * line[j]!;
  }
}
