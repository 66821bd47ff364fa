import type { Network } from "./network.js";

/** The ways to fill the last two columns from a node, by rising value. */
export interface LastColumns {
  readonly values: Float64Array;
  /** Probability, given the node, of a value at least the one at the same place; one place longer, ending in 0. */
  readonly tails: Float64Array;
  /** For evenly spaced values, the first place whose value is not below. */
  readonly guide: Int32Array;
  /** Guide steps per unit of value. */
  readonly scale: number;
}

/** Values closer than this are one value: far above rounding, far below the tolerance of the test. */
const SAME = 1e-11;

/** Fills the last two columns of nodes: their least and greatest value at once, the sorted ways when asked. */
export interface LastColumnsReader {
  readonly bounds: (node: number) => { readonly shortest: number; readonly longest: number };
  readonly sorted: (node: number) => LastColumns;
}

export function lastColumnsReader(network: Network): LastColumnsReader {
  const values = valuesReader(network);
  const known: (LastColumns | undefined)[] = [];
  return {
    bounds(node) {
      let [shortest, longest] = [Infinity, -Infinity];
      for (const value of values(node)) {
        if (value < shortest) shortest = value;
        if (value > longest) longest = value;
      }
      return { shortest, longest };
    },
    sorted: (node) => (known[node] ??= sortWays(network, node, values(node))),
  };
}

/** The values of all splits of a node between the last two columns, in one reused array. */
function valuesReader(network: Network): (node: number) => Float64Array {
  const { rows, logs, stages, columns } = network;
  const stage = stages[stages.length - 1]!;
  const column = columns[columns.length - 2]!;
  const below = new Int32Array(rows + 1);
  let buffer = new Float64Array(1024);
  return (node) => {
    const left = stage.sums.subarray(node * rows, (node + 1) * rows);
    for (let i = rows - 1; i >= 0; i--) below[i] = below[i + 1]! + left[i]!;
    let count = 0;
    const fill = (row: number, rest: number, value: number): void => {
      const sum = left[row]!;
      const most = sum < rest ? sum : rest;
      let taken = rest - below[row + 1]!;
      if (taken < 0) taken = 0;
      if (row < rows - 2) {
        for (; taken <= most; taken++) fill(row + 1, rest - taken, value + logs[taken]! + logs[sum - taken]!);
        return;
      }
      const last = left[rows - 1]!;
      while (count + most - taken + 1 > buffer.length) buffer = doubled(buffer);
      for (; taken <= most; taken++) {
        const other = rest - taken;
        buffer[count++] = value + (logs[taken]! + logs[sum - taken]!) + (logs[other]! + logs[last - other]!);
      }
    };
    fill(0, column, 0);
    network.work += count;
    return buffer.subarray(0, count);
  };
}

function doubled(array: Float64Array): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(array.length * 2);
  larger.set(array);
  return larger;
}

function sortWays(network: Network, node: number, all: Float64Array): LastColumns {
  all.sort();
  const values = new Float64Array(all.length);
  const shares = new Float64Array(all.length);
  const constant = splitConstant(network, node);
  let count = 0;
  for (let i = 0; i < all.length; count++) {
    const value = all[i]!;
    let end = i + 1;
    while (end < all.length && all[end]! - value < SAME) end++;
    values[count] = value;
    shares[count] = (end - i) * Math.exp(constant - value);
    i = end;
  }
  const tails = new Float64Array(count + 1);
  for (let i = count - 1; i >= 0; i--) tails[i] = tails[i + 1]! + shares[i]!;
  return { values: values.slice(0, count), tails, ...guideTo(values, count) };
}

/** Log of the constant that makes the ways' probabilities sum to 1: a product of two margins' factorials over a third. */
function splitConstant({ rows, logs, stages, columns }: Network, node: number): number {
  const [first, second] = columns.slice(-2) as [number, number];
  const { sums } = stages[stages.length - 1]!;
  let constant = logs[first]! + logs[second]! - logs[first + second]!;
  for (let i = 0; i < rows; i++) constant += logs[sums[node * rows + i]!]!;
  return constant;
}

function guideTo(values: Float64Array, count: number): { readonly guide: Int32Array; readonly scale: number } {
  const steps = Math.max(8, Math.min(4096, 2 * count));
  const range = values[count - 1]! - values[0]!;
  const scale = count > 1 ? (steps - 1) / (range + SAME) : 0;
  const guide = new Int32Array(steps);
  for (let step = 0, at = 0; step < steps; step++) {
    const bound = scale === 0 ? values[0]! : values[0]! + step / scale;
    while (at < count - 1 && values[at]! < bound - SAME) at++;
    guide[step] = at;
  }
  return { guide, scale };
}

/** Probability of a value of at least `bound`. */
export function tailFrom({ values, tails, guide, scale }: LastColumns, bound: number): number {
  const step = (bound - values[0]!) * scale;
  let at = step <= 0 ? 0 : guide[step < guide.length - 1 ? Math.floor(step) : guide.length - 1]!;
  while (values[at]! < bound) at++;
  return tails[at]!;
}
