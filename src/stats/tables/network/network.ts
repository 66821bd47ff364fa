import { columnSums, rowSums, transposed, type Contingency } from "../contingency.js";
import { logFactorials, slopeFor, tiltedLogFactorials } from "../log-factorials.js";
import { primeHashes } from "./prime-hashes.js";

/**
 * The network of Mehta and Patel: a node is what the columns filled so far have left of each row, in rising order; a
 * path through it is a table with the observed margins. Values of paths are sums of log x! over the cells (less a line,
 * see `tiltedLogFactorials`): the larger the sum, the less likely the table.
 */
export interface Network {
  /** Number of rows, at least 2 and at most the number of columns. */
  readonly rows: number;
  /** Column sums, largest first. */
  readonly columns: readonly number[];
  readonly total: number;
  readonly logs: Float64Array;
  readonly hashes: Int32Array;
  /** Value of a node's row in its key; the last row is known from the others. */
  readonly places: Int32Array;
  /** One stage before each column but the last, whose content is known. */
  readonly stages: readonly Stage[];
  /** For each stage, the log of the margins' constant once its column is filled. */
  readonly constants: readonly number[];
  /** The observed table's value, less the tolerance. */
  readonly threshold: number;
  /** Steps so far: columns tried, paths passed on and looked up. */
  work: number;
}

/** All nodes before one column. Arrays grow as nodes are met. */
export interface Stage {
  /** Number of this column; those from here on are still to fill. */
  readonly column: number;
  /** Cases left. */
  readonly left: number;
  count: number;
  /** Node number by key, of sorted and unsorted rows alike; -1 where not met. */
  readonly index: Int32Array;
  /** What is left of the rows of node i, from i * rows on. */
  sums: Int32Array;
  /** Bounds of the value that the columns still to fill can add. */
  shortest: Float64Array;
  longest: Float64Array;
  /** 1 where the bounds are attained. */
  attained: Uint8Array;
}

/** Tables up to this much likelier, relatively, count as equally likely. */
export const TOLERANCE = 1e-7;

/** Lays the network of a table without empty rows or columns, at least 2 x 2. */
export function layNetwork(table: Contingency): Network {
  const margins = oriented(table);
  const sums = margins.rows.toSorted((x, y) => x - y);
  const columns = margins.columns.toSorted((x, y) => y - x);
  const total = sums.reduce((sum, row) => sum + row, 0);
  const exact = logFactorials(total);
  const slope = slopeFor(total / (sums.length * columns.length));
  const logs = tiltedLogFactorials(exact, slope);

  const places = new Int32Array(sums.length);
  let keys = 1;
  for (let i = 0; i < sums.length - 1; i++) {
    places[i] = keys;
    keys *= sums[i]! + 1;
  }
  const stages = columns.slice(0, -1).map((_, column) => newStage(column, columns, sums.length, keys));
  const first = stages[0]!;
  first.sums.set(sums);
  first.count = 1;
  let value = 0;
  for (const row of table) for (const count of row) value += logs[count]!;
  return {
    rows: sums.length,
    columns,
    total,
    logs,
    hashes: primeHashes(total),
    places,
    stages,
    constants: stageConstants(sums, columns, exact).map((constant) => constant - slope * total),
    threshold: value - TOLERANCE,
    work: 0,
  };
}

/** Row and column sums with the fewer of them as rows: the wrong way round costs up to 60 times more. */
function oriented(table: Contingency): { readonly rows: number[]; readonly columns: number[] } {
  const upright = table.length > table[0]!.length ? transposed(table) : table;
  return { rows: rowSums(upright), columns: columnSums(upright) };
}

function newStage(column: number, columns: readonly number[], rows: number, keys: number): Stage {
  return {
    column,
    left: columns.slice(column).reduce((sum, count) => sum + count, 0),
    count: 0,
    index: new Int32Array(keys).fill(-1),
    sums: new Int32Array(64 * rows),
    shortest: new Float64Array(64),
    longest: new Float64Array(64),
    attained: new Uint8Array(64),
  };
}

/** For each column: log of (product of row sums! / total!) x (product of column sums! so far) x (cases left)!. */
function stageConstants(
  rows: readonly number[],
  columns: readonly number[],
  { high, low }: { readonly high: Float64Array; readonly low: Float64Array },
): number[] {
  const total = high.length - 1;
  const terms = [-high[total]!, -low[total]!, ...rows.flatMap((sum) => [high[sum]!, low[sum]!])];
  let left = total;
  return columns.map((sum) => {
    terms.push(high[sum]!, low[sum]!);
    left -= sum;
    return compensatedSum([...terms, high[left]!, low[left]!]);
  });
}

/** Neumaier's sum. */
function compensatedSum(terms: readonly number[]): number {
  let [sum, rest] = [0, 0];
  for (const term of terms) {
    const next = sum + term;
    rest += Math.abs(sum) >= Math.abs(term) ? sum - next + term : term - next + sum;
    sum = next;
  }
  return sum + rest;
}
